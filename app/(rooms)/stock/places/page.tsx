import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listMoves, type MoveListed } from '@/lib/stock/reads/moves/papers';
import { listPlaces, type PlaceListed } from '@/lib/stock/reads/moves/places';
import { placeKindWords } from '@/lib/stock/rules/moves/place';
import { AddPlace } from './place-forms';

export const metadata: Metadata = { title: 'Places and moves' };

/** The places where pieces stand, what stands there, and the latest moves between them. */
export default async function PlacesPage() {
  const actor = await requireActor('stock.move');
  const [places, moves] = await Promise.all([listPlaces(actor), listMoves(actor)]);
  const pieces = places.reduce((sum, place) => sum + place.pieces, 0);
  return (
    <>
      <PageHead title="Places and moves" lead={leadOf(pieces, places)}>
        <ButtonLink href="/stock/places/move" size="counter">
          Move pieces
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="places" roles={actor.roles} />
      <Columns
        wide={<PlaceTable places={places} />}
        beside={
          <Slab>
            <AddPlace />
          </Slab>
        }
      />
      <Section title="The latest moves">
        <MoveTable moves={moves} />
      </Section>
    </>
  );
}

function leadOf(pieces: number, places: readonly PlaceListed[]): string {
  const filled = places.filter((place) => place.pieces > 0).length;
  if (pieces === 0) return 'Nothing stands anywhere yet. What the studio makes comes here first.';
  const where = filled === 1 ? 'at one place' : `at ${filled} places`;
  return `${pieces.toLocaleString('en-US')} ${pieces === 1 ? 'piece' : 'pieces'} ${where}.`;
}

function PlaceTable({ places }: Readonly<{ places: readonly PlaceListed[] }>) {
  return (
    <Table
      caption="The places"
      captionHeardOnly
      columns={[
        { name: 'Place' },
        { name: 'What it is', wideOnly: true },
        { name: 'Pieces', figure: true },
        { name: 'Held', figure: true, wideOnly: true },
        { name: 'At retail', figure: true },
      ]}
      rows={places.map((place) => ({
        key: place.id,
        cells: [
          <Link key="name" href={`/stock/places/${place.id}`}>
            {place.name}
          </Link>,
          placeWords(place),
          place.pieces.toLocaleString('en-US'),
          place.held === 0 ? '' : place.held,
          <Money key="retail" cents={place.retailCents} />,
        ],
      }))}
    />
  );
}

function placeWords({ kind, isClosed, isCounter, openCount }: PlaceListed): string {
  if (isClosed) return 'closed';
  const words = isCounter ? 'the counter sells from here' : placeKindWords(kind);
  return openCount === null ? words : `${words}; count ${openCount} is open`;
}

/** Moves, each led to by its number. */
function MoveTable({ moves }: Readonly<{ moves: readonly MoveListed[] }>) {
  if (moves.length === 0) {
    return <p>Nothing was moved yet. Touch “Move pieces”, scan them, and say where they go.</p>;
  }
  return (
    <Table
      caption="The latest moves"
      captionHeardOnly
      columns={[
        { name: 'Move' },
        { name: 'Day' },
        { name: 'From and to' },
        { name: 'Who', wideOnly: true },
        { name: 'Pieces', figure: true },
      ]}
      rows={moves.map((move) => ({
        key: String(move.number),
        cells: [
          <Link key="number" href={`/stock/places/moves/${move.number}`}>
            {move.number}
          </Link>,
          <DayText key="day" day={move.movedOn} />,
          `${move.from} to ${move.to}`,
          move.by,
          move.pieces,
        ],
      }))}
    />
  );
}
