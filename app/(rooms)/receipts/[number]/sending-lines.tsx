import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import type { Receipt } from '@/lib/sales/reads/receipts';
import { listShipmentsOf } from '@/lib/sending/reads/shipments';
import { stageWords } from '@/lib/sending/rules/words';

type SendingLinesProps = Readonly<{ receipt: Receipt; actor: Actor; zone: string }>;

/** The shipments of a sale that is sent, and the way to begin one. */
export async function SendingLines({ receipt, actor, zone }: SendingLinesProps) {
  if (receipt.delivery === 'taken' || !isAllowed(actor.roles, 'sending.do')) return null;
  const today = dayOf(now(), zone);
  const shipments = await listShipmentsOf(actor, { saleId: receipt.id }, today);
  return (
    <div className="not-on-paper">
      <Section
        title="Packed and sent"
        act={
          <ButtonLink href={`/sending/new?receipt=${receipt.number}`} variant="quiet">
            Pack and send it
          </ButtonLink>
        }
      >
        {shipments.length === 0 ? <p>Nothing is packed yet.</p> : null}
        <ul>
          {shipments.map(({ number, stage, lastOn }) => (
            <li key={number}>
              <Link href={`/sending/${number}`}>Shipment {number}</Link>: {stageWords[stage]}
              {lastOn ? ` ${formatDay(lastOn, 'short')}` : ''}
            </li>
          ))}
        </ul>
      </Section>
    </div>
  );
}
