import type { Metadata } from 'next';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listCarrierTerms } from '@/lib/sending/reads/carriers';
import { countsWords, termsOn, type CarrierTerms } from '@/lib/sending/rules/carriers';
import { TermsForm } from './terms-form';

export const metadata: Metadata = { title: 'Carriers' };

/** How carriers reckon and by when they want to be told, from which day on. */
export default async function CarriersPage() {
  const actor = await requireActor('settings.keep');
  const [terms, gallery] = await Promise.all([listCarrierTerms(actor), getGallery()]);
  const today = dayOf(now(), gallery.timeZone);
  const holding = new Set(termsOn(terms, today).map(({ id }) => id));
  return (
    <>
      <PageHead
        title="Carriers"
        lead="How each reckons, and by when it wants to be told of damage. New terms take the place of those of the same name from their day on."
      />
      <InThisRoom room="settings" here="carriers" roles={actor.roles} />
      <Caution>
        what came with the gallery is common practice. Read each carrier’s own current terms, above
        all what they say of art and ceramics, and write them down here.
      </Caution>
      <Columns
        wide={
          <Section title="Written down">
            <Terms terms={terms} holding={holding} />
          </Section>
        }
        beside={<TermsForm today={today} />}
      />
    </>
  );
}

type TermsProps = Readonly<{ terms: readonly CarrierTerms[]; holding: ReadonlySet<string> }>;

function Terms({ terms, holding }: TermsProps) {
  if (terms.length === 0) {
    return <Empty title="No carrier is written down">The first one is written down here.</Empty>;
  }
  return (
    <Table
      caption="Terms of carriers"
      captionHeardOnly
      columns={[
        { name: 'Carrier' },
        { name: 'Counts' },
        { name: 'Damage told within', figure: true },
        { name: 'Claimed within', figure: true, wideOnly: true },
        { name: 'Stands for', figure: true, wideOnly: true },
        { name: 'From' },
      ]}
      rows={terms.map((each) => ({
        key: each.id,
        cells: [
          each.name,
          countsWords(each),
          daysWords(each.reportDays),
          daysWords(each.claimDays),
          each.coverCents === 0n ? 'nothing' : <Money key="cover" cents={each.coverCents} />,
          <Holds key="from" terms={each} isHolding={holding.has(each.id)} />,
        ],
      }))}
    />
  );
}

function Holds({ terms, isHolding }: Readonly<{ terms: CarrierTerms; isHolding: boolean }>) {
  return (
    <>
      <DayText day={terms.holdsFromOn} />
      {isHolding ? '' : ', does not hold today'}
    </>
  );
}

function daysWords(days: number): string {
  return days === 1 ? 'a day' : `${days} days`;
}
