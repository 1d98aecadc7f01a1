import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import { countsWords, coverWords } from '@/lib/sending/rules/carriers';
import { leftWords, limitsOf } from '@/lib/sending/rules/limits';
import { howWords } from '@/lib/sending/rules/words';
import css from '../sending.module.css';

type WhereFactsProps = Readonly<{ shipment: ShipmentTold; open: boolean; today: Day }>;

/** How and where to a shipment goes, who insures it, and by when damage must be told. */
export function WhereFacts({ shipment, open, today }: WhereFactsProps) {
  const { how, carrier, terms, toName, toAddress, toPhone, insuredCents, insuredBy } = shipment;
  const carried = [
    { name: 'Carrier', value: carrier || null },
    { name: 'Reckons', value: terms && `${terms.name}: ${countsWords(terms)}` },
    { name: 'Its number', value: shipment.tracking || null, notKnown: 'none yet' },
    { name: 'Stands for', value: terms && coverWords(terms.coverCents) },
  ];
  return (
    <Section
      title="How and where to"
      act={
        open ? (
          <ButtonLink href={`/sending/${shipment.number}/change`} variant="quiet">
            Change it
          </ButtonLink>
        ) : null
      }
    >
      <Facts
        facts={[
          { name: 'How', value: howWords[how] },
          ...(how === 'carrier' ? carried : []),
          { name: 'To', value: toName },
          {
            name: 'Where',
            value: toAddress === '' ? null : <span className={css['said']}>{toAddress}</span>,
          },
          { name: 'Telephone', value: toPhone || null },
          { name: 'Worth', value: insuredCents === 0n ? null : <Money cents={insuredCents} /> },
          { name: 'Insured by', value: insuredBy || null, notKnown: 'nobody yet' },
          ...(shipment.note === '' ? [] : [{ name: 'To note', value: shipment.note }]),
        ]}
      />
      <TellBy shipment={shipment} today={today} />
    </Section>
  );
}

function TellBy({ shipment, today }: Readonly<{ shipment: ShipmentTold; today: Day }>) {
  const { events, terms, stage } = shipment;
  if (stage !== 'arrived' && stage !== 'on_the_way') return null;
  const { reportBy, claimBy } = limitsOf(events, terms, { foundOn: today, today });
  return (
    <p>
      {stage === 'arrived' ? (
        <>
          Damage must be told by <DayText day={reportBy.byOn} style="long" /> ({leftWords(reportBy)}
          ), and{' '}
        </>
      ) : (
        'Once it came, it is looked at within a day; what is broken must be '
      )}
      {stage === 'arrived' ? '' : 'told in time and '}
      claimed by <DayText day={claimBy.byOn} style="long" />.
    </p>
  );
}
