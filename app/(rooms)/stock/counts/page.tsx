import type { Metadata } from 'next';
import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { listCounts, type CountListed } from '@/lib/stock/reads/moves/counts';
import { listPlaces, type PlaceListed } from '@/lib/stock/reads/moves/places';
import { begin } from './actions';

export const metadata: Metadata = { title: 'Counts' };

/** The counts: those still open, those that were booked or left, and a new one. */
export default async function CountsPage() {
  const actor = await requireActor('stock.move');
  const [counts, places, { timeZone }] = await Promise.all([
    listCounts(actor),
    listPlaces(actor),
    getGallery(),
  ]);
  return (
    <>
      <PageHead
        title="Counts"
        lead="Scan what stands at a place; what differs is shown before the books are put right."
      />
      <InThisRoom room="stock" here="counts" roles={actor.roles} />
      <Columns
        wide={<CountTable counts={counts} timeZone={timeZone} />}
        beside={
          <Slab>
            <BeginCount places={places.filter((place) => !place.isClosed)} />
          </Slab>
        }
      />
    </>
  );
}

function BeginCount({ places }: Readonly<{ places: readonly PlaceListed[] }>) {
  const options = places.map((place) => ({
    value: place.id,
    label: `${place.name} (${place.pieces.toLocaleString('en-US')})`,
  }));
  return (
    <FormFrame action={begin} label="Begin a count">
      <h2>Begin a count</h2>
      <RequestKey />
      <Field
        name="placeId"
        label="Which place"
        kind="select"
        size="counter"
        options={options}
        defaultValue={places[0]?.id}
      />
      <Choice
        name="how"
        legend="How much of it"
        size="counter"
        layout="down"
        defaultValue="all"
        options={[
          { value: 'all', label: 'All of it', hint: 'What is not scanned counts as not there.' },
          { value: 'part', label: 'A part of it', hint: 'Only what is scanned is looked at.' },
        ]}
      />
      <SubmitButton size="counter">Begin</SubmitButton>
    </FormFrame>
  );
}

type CountTableProps = Readonly<{ counts: readonly CountListed[]; timeZone: string }>;

function CountTable({ counts, timeZone }: CountTableProps) {
  if (counts.length === 0) {
    return (
      <Empty title="Nothing was counted yet">
        Choose a place, begin, and scan every piece that stands there. Several of you may scan at
        once, each with their own device.
      </Empty>
    );
  }
  return (
    <Table
      caption="The counts"
      captionHeardOnly
      columns={[
        { name: 'Count' },
        { name: 'Place' },
        { name: 'Begun' },
        { name: 'By', wideOnly: true },
        { name: 'Pieces', figure: true },
        { name: 'Where it is' },
      ]}
      rows={counts.map((count) => ({
        key: String(count.number),
        cells: [
          <Link key="number" href={`/stock/counts/${count.number}`}>
            {count.number}
          </Link>,
          count.partOnly ? `${count.place}, a part` : count.place,
          <InstantText key="begun" at={count.startedAt} zone={timeZone} />,
          count.startedBy,
          count.pieces,
          stateWords[count.state],
        ],
      }))}
    />
  );
}

const stateWords = { open: 'being counted', booked: 'booked', left: 'left, not booked' } as const;
