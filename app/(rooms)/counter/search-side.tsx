import { Notice } from '@/app/ui/page/notice';
import { Empty } from '@/app/ui/page/empty';
import type { Actor } from '@/lib/access/rules';
import { explainShortage, listOftenAsked, type Found } from '@/lib/sales/reads/counter';
import { saleRefusalMessage } from '@/lib/sales/rules/refusals';
import { findByCode } from '@/lib/stock/reads';
import type { LengthSystem } from '@/lib/units/rules';
import type { CounterPlace } from './address';
import css from './counter.module.css';
import { Results } from './results';

type SearchSideProps = Readonly<{
  actor: Actor;
  found: Found;
  place: CounterPlace;
  lengthUnit: LengthSystem;
  at: Date;
}>;

/** What was found, or why it was not; with nothing typed, what is often asked for. */
export function SearchSide({ actor, found, place, lengthUnit, at }: SearchSideProps) {
  const shared = { place, lengthUnit };
  switch (found.kind) {
    case 'exactly':
      return place.typing ? (
        <Results label="Found" pieces={[found.piece]} {...shared} />
      ) : (
        <OftenAsked actor={actor} at={at} {...shared} />
      );
    case 'some':
      return <Results label="Found" pieces={found.pieces} {...shared} />;
    case 'misread_code':
      return (
        <Notice kind="refused">
          {place.find} was misread: its last digit does not fit the others. Scan it once more, or
          type the number on the tag.
        </Notice>
      );
    case 'unknown_code':
      return (
        <Notice kind="refused">No piece here has the code {place.find}. Is it one of ours?</Notice>
      );
    case 'none':
      return (
        <Notice kind="refused">
          Nothing here is called “{place.find}”. Try three letters of its name.
        </Notice>
      );
    case 'nothing_typed':
      return <OftenAsked actor={actor} at={at} {...shared} />;
  }
}

async function OftenAsked({ actor, at, place, lengthUnit }: Omit<SearchSideProps, 'found'>) {
  const pieces = await listOftenAsked(actor, at);
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
      <Results label="Often asked for" pieces={pieces} place={place} lengthUnit={lengthUnit} />
    </section>
  );
}

/** Why a piece that was touched or scanned did not go onto the slip. */
export async function ShortOf({ actor, place, at }: Omit<SearchSideProps, 'found' | 'lengthUnit'>) {
  const piece = place.shortOf === null ? null : await findByCode(actor, place.shortOf);
  if (!piece) return null;
  const taken = place.slip.find((entry) => entry.sku === piece.code)?.quantity ?? 0;
  if (piece.onHand > 0 && piece.onHand > taken) return null;
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
      {where} If you hold one in your hand, put the count right in Stock first.
    </Notice>
  );
}
