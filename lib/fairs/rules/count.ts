import { ok, refuse, type Result } from '@/lib/platform/result';
import type { FairRefusal } from '../rules';

/** What stands at a fair: a SKU, or one number of an edition. */
export type StandingRow = {
  /** The SKU's id, with `#n` behind it for a number of an edition. */
  key: string;
  skuId: string;
  editionNumber: number | null;
  title: string;
  /** Size and SKU, to tell two of one design apart. */
  what: string;
  there: number;
};

/** What became of the pieces of one row; what is named nowhere still stands there. */
export type CountedRow = {
  key: string;
  /** How many the page said stood there, so that a sale in between is noticed. */
  seen: number;
  back: number;
  broken: number;
  missing: number;
  /** Sold, and no slip was written yet: they stay until it is rung up. */
  soldUnwritten: number;
};

/** A piece that moves or is lost; of an edition, by its number. */
export type CountedPiece = { skuId: string; quantity: number; editionNumber?: number };

/** What a count writes. */
export type FairCount = {
  back: CountedPiece[];
  broken: CountedPiece[];
  missing: CountedPiece[];
  /** Still to be rung up at the counter, for this fair. */
  soldUnwritten: number;
  /** Neither back nor lost: sold without a slip, or still there. */
  stillThere: number;
};

/**
 * Counts a fair back in: each row's pieces are back, broken, missing, sold without a slip, or still
 * there. The parts of a row add up to what stood there.
 *
 * @returns what moves and what is lost; refuses, in this order and row by row: a row that is not
 *   there any more or has another number than the page saw, more accounted for than stand there
 * @source common practice: out = sold + back + broken + missing + still there
 * @example five there, three back, one broken: one still stands there, and the fair stays open
 */
export function decideFairCount(
  standing: readonly StandingRow[],
  counted: readonly CountedRow[],
): Result<FairCount, FairRefusal> {
  const rowOf = new Map(standing.map((row) => [row.key, row]));
  const count: FairCount = { back: [], broken: [], missing: [], soldUnwritten: 0, stillThere: 0 };
  for (const { key, seen, back, broken, missing, soldUnwritten } of counted) {
    const row = rowOf.get(key);
    if (row?.there !== seen) return refuse({ code: 'fair_has_changed' });
    rowOf.delete(key);
    const all = back + broken + missing + soldUnwritten;
    const { title, there } = row;
    if (all > there) return refuse({ code: 'counted_more', row: key, title, there, counted: all });
    count.back.push(...piecesOf(row, back));
    count.broken.push(...piecesOf(row, broken));
    count.missing.push(...piecesOf(row, missing));
    count.soldUnwritten += soldUnwritten;
    count.stillThere += there - back - broken - missing;
  }
  for (const { there } of rowOf.values()) count.stillThere += there;
  return ok(count);
}

function piecesOf({ skuId, editionNumber }: StandingRow, quantity: number): CountedPiece[] {
  if (quantity === 0) return [];
  return [{ skuId, quantity, ...(editionNumber === null ? {} : { editionNumber }) }];
}

/**
 * Says what a count did, as one would say it while unpacking the van.
 *
 * @example '12 are back, 1 is broken. Nothing stands there any more, and the fair is closed.'
 */
export function fairCountWords(count: FairCount): string {
  const sum = (pieces: readonly CountedPiece[]) =>
    pieces.reduce((all, piece) => all + piece.quantity, 0);
  const parts = [
    areWords(sum(count.back), 'back'),
    areWords(sum(count.broken), 'broken'),
    areWords(sum(count.missing), 'missing'),
  ].filter((part) => part !== '');
  const said = parts.length === 0 ? 'Nothing moved.' : `${parts.join(', ')}.`;
  if (count.stillThere === 0) {
    return `${said} Nothing stands there any more, and the fair is closed.`;
  }
  const unwritten =
    count.soldUnwritten === 0
      ? ''
      : ` Ring up the ${count.soldUnwritten} sold without a slip at the counter, for this fair.`;
  return `${said} ${areWords(count.stillThere, 'still there')}.${unwritten}`;
}

function areWords(count: number, how: string): string {
  if (count === 0) return '';
  return `${count} ${count === 1 ? 'is' : 'are'} ${how}`;
}
