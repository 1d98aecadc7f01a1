import Link from 'next/link';
import { Empty } from '@/app/ui/page/empty';
import { Notice } from '@/app/ui/page/notice';
import type { Actor } from '@/lib/access/rules';
import {
  explainShortage,
  listOftenAsked,
  type AtPlace,
  type Found,
} from '@/lib/counter/reads/find';
import { saleRefusalMessage } from '@/lib/sales/rules/refusals';
import { findByCode } from '@/lib/stock/reads';
import type { LengthSystem } from '@/lib/units/rules';
import css from './counter.module.css';
import { Results, SetResult, type Onto } from './results';

type SearchSideProps = Readonly<{
  actor: Actor;
  found: Found;
  find: string;
  onto: Onto;
  lengthUnit: LengthSystem;
  where: AtPlace;
}>;

/** What was found, or why it was not; with nothing typed, what is often asked for. */
export function SearchSide({ actor, found, find, onto, lengthUnit, where }: SearchSideProps) {
  const shared = { onto, lengthUnit };
  switch (found.kind) {
    case 'exactly':
      return <Results label="Found" pieces={[found.piece]} {...shared} />;
    case 'set':
      return <SetResult set={found.set} onto={onto} />;
    case 'some':
      return <Results label="Found" pieces={found.pieces} {...shared} />;
    case 'misread_code':
      return (
        <Notice kind="refused">
          {find} was misread: its last digit does not fit the others. Scan it once more, or type the
          number on the tag.
        </Notice>
      );
    case 'unknown_code':
      return <Notice kind="refused">No piece here has the code {find}. Is it one of ours?</Notice>;
    case 'none':
      return (
        <Notice kind="refused">
          Nothing here is called “{find}”. Try three letters of its name.
        </Notice>
      );
    case 'nothing_typed':
      return <OftenAsked actor={actor} where={where} {...shared} />;
  }
}

type OftenProps = Pick<SearchSideProps, 'actor' | 'where' | 'onto' | 'lengthUnit'>;

async function OftenAsked({ actor, where, onto, lengthUnit }: OftenProps) {
  const pieces = await listOftenAsked(actor, where);
  if (pieces.length === 0) {
    return (
      <Empty title="Nothing stands at the counter yet">
        Bring in a stock list, or count what is here, in Stock. Then a piece is sold by its tag or
        by three letters of its name.
      </Empty>
    );
  }
  return (
    <section className={css['often']}>
      <h2>Often asked for</h2>
      <Results label="Often asked for" pieces={pieces} onto={onto} lengthUnit={lengthUnit} />
    </section>
  );
}

type ShortOfProps = Readonly<{
  actor: Actor;
  code: string | null;
  taken: ReadonlyMap<string, number>;
  at: Date;
}>;

/** Why a piece that was touched or scanned did not go onto the slip. */
export async function ShortOf({ actor, code, taken, at }: ShortOfProps) {
  const piece = code === null ? null : await findByCode(actor, code);
  if (!piece) return null;
  if (piece.onHand > (taken.get(piece.id) ?? 0)) return null;
  if (piece.onHand > 0) {
    return (
      <Notice kind="caution">
        {piece.onHand === 1 ? 'The only one' : `All ${piece.onHand}`} of {piece.title} here{' '}
        {piece.onHand === 1 ? 'is' : 'are'} on the slip already.
      </Notice>
    );
  }
  const why = saleRefusalMessage(await explainShortage(actor, piece, 1, at));
  const where = piece.elsewhere > 0 ? ` ${piece.elsewhere} stand elsewhere.` : '';
  return (
    <Notice kind="refused">
      {why}
      {where} If you hold one in your hand, put the count right in Stock first. Otherwise{' '}
      <Link href={`/holds/new?find=${encodeURIComponent(piece.code)}`}>
        note who is to be told when it is back
      </Link>
      , or <Link href={`/orders/new?sku=${encodeURIComponent(piece.code)}`}>order one</Link>.
    </Notice>
  );
}
