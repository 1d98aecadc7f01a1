import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import type { Actor } from '@/lib/access/rules';
import { isAllowed } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { formatDay } from '@/lib/dates/rules';
import { listShipmentsOf } from '@/lib/sending/reads/shipments';
import { stageWords } from '@/lib/sending/rules/words';
import css from '../commissions.module.css';

/** What of a commission is packed and sent; nothing for whoever does not send. */
export async function SendingLines({ sheet, actor }: Readonly<{ sheet: Sheet; actor: Actor }>) {
  if (!isAllowed(actor.roles, 'sending.do')) return null;
  const { id, number, telling, ending } = sheet;
  const shipments = await listShipmentsOf(actor, { commissionId: id }, telling.today);
  if (shipments.length === 0 && ending) return null;
  return (
    <Section
      title="Packed and sent"
      id="sending"
      act={
        ending ? null : (
          <ButtonLink href={`/sending/new?commission=${number}`} variant="quiet">
            Pack and send it
          </ButtonLink>
        )
      }
    >
      {shipments.length === 0 ? <p className={css['quiet']}>Nothing is packed yet.</p> : null}
      <ul className={css['lines']}>
        {shipments.map((shipment) => (
          <li key={shipment.number} data-off={shipment.stage === 'called_off' ? true : undefined}>
            <Link href={`/sending/${shipment.number}`}>Shipment {shipment.number}</Link>, to{' '}
            {shipment.toName}: {stageWords[shipment.stage]}
            {shipment.lastOn ? ` ${formatDay(shipment.lastOn, 'short')}` : ''}
            {shipment.tracking === '' ? '' : `, number ${shipment.tracking}`}
          </li>
        ))}
      </ul>
    </Section>
  );
}
