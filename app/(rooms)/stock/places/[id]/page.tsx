import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { FindForm } from '@/app/ui/form/find-form';
import { Empty } from '@/app/ui/page/empty';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { Hung, PieceHanging, Wall } from '@/app/ui/piece/piece-hanging';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { listMoves } from '@/lib/stock/reads/moves/papers';
import { listPlaces, listStanding, type PlaceListed } from '@/lib/stock/reads/moves/places';
import { placeKindWords } from '@/lib/stock/rules/moves/place';
import { formatSize } from '@/lib/units/rules';
import { Leaves } from '../../leaves';
import { ChangePlace } from '../place-forms';
import { idOf, textOf, type Query } from '../ready/address';

export const metadata: Metadata = { title: 'A place' };

type PlacePageProps = Readonly<{
  params: Promise<{ id: string }>;
  searchParams: Promise<Query>;
}>;

/** One place: what stands there, on the wall, and what came and went lately. */
export default async function PlacePage({ params, searchParams }: PlacePageProps) {
  const actor = await requireActor('stock.move');
  const id = idOf({ id: (await params).id }, 'id');
  const query = await searchParams;
  const [place] = id === '' ? [] : await listPlaces(actor, { id });
  if (!place) notFound();
  const letters = textOf(query, 'find').slice(0, 80);
  const page = Number(/^[1-9]\d{0,3}$/.exec(textOf(query, 'page'))?.[0] ?? '1');
  const [standing, moves, { lengthUnit }] = await Promise.all([
    listStanding(actor, id, { letters, page }),
    listMoves(actor, { placeId: id }),
    getGallery(),
  ]);
  return (
    <>
      <PageHead
        title={place.name}
        back={{ href: '/stock/places', name: 'Places and moves' }}
        lead={place.isCounter ? 'The counter sells from here.' : `${placeKindWords(place.kind)}.`}
      >
        <Acts place={place} />
      </PageHead>
      <InThisRoom room="stock" here="places" roles={actor.roles} />
      <Columns
        wide={
          <>
            <FindForm action={`/stock/places/${id}`} label="Find a piece here" letters={letters} />
            {standing.pieces.length === 0 ? <Bare letters={letters} /> : null}
            <Wall label={`What stands at ${place.name}`} spacing="close">
              {standing.pieces.map((piece) => (
                <Hung key={piece.id}>
                  <PieceHanging
                    picture={piece.picture}
                    title={piece.title}
                    href={`/stock/${piece.code}`}
                    what={piece.what}
                    size={formatSize(piece, lengthUnit)}
                    code={piece.code}
                    priceCents={piece.priceCents}
                    count={piece.there}
                  />
                </Hung>
              ))}
            </Wall>
            <Leaves
              page={standing.page}
              pages={standing.pages}
              hrefOf={(leaf) =>
                `/stock/places/${id}?${new URLSearchParams({ find: letters, page: String(leaf) })}`
              }
            />
          </>
        }
        beside={
          <Slab>
            <PlaceFacts place={place} />
            {place.isClosed ? null : <ChangePlace place={place} />}
          </Slab>
        }
      />
      {moves.length === 0 ? null : (
        <Section title="Moves from here and to here">
          <ul>
            {moves.map((move) => (
              <li key={move.number}>
                <Link href={`/stock/places/moves/${move.number}`}>Move {move.number}</Link>:{' '}
                {move.pieces} from {move.from} to {move.to}
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}

function Acts({ place }: Readonly<{ place: PlaceListed }>) {
  if (place.isClosed) return null;
  return (
    <>
      <ButtonLink href={`/stock/places/move?from=${place.id}`} size="counter">
        Move from here
      </ButtonLink>
      <ButtonLink
        href={place.openCount === null ? `/stock/counts` : `/stock/counts/${place.openCount}`}
        variant="quiet"
        size="counter"
      >
        {place.openCount === null ? 'Count it' : `Go on with count ${place.openCount}`}
      </ButtonLink>
    </>
  );
}

function Bare({ letters }: Readonly<{ letters: string }>) {
  if (letters !== '') return <p>Nothing here is called “{letters}”.</p>;
  return (
    <Empty title="Nothing stands here">
      Pieces come here by a move: scan them at the place where they are and send them here.
    </Empty>
  );
}

function PlaceFacts({ place }: Readonly<{ place: PlaceListed }>) {
  return (
    <Facts
      facts={[
        { name: 'Pieces', value: place.pieces.toLocaleString('en-US') },
        { name: 'Different ones', value: place.skus.toLocaleString('en-US') },
        { name: 'Held', value: place.held },
        { name: 'At retail', value: <Money cents={place.retailCents} /> },
      ]}
    />
  );
}
