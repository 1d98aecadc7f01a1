import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { CountRefusal } from './count-refusals';

/** What a difference may come from: what was found, or what became of what is not there. */
export const differenceWhys = [
  { why: 'counted', words: 'counted again, it is so' },
  { why: 'missing', words: 'missing' },
  { why: 'broken', words: 'broken' },
  { why: 'found', words: 'found again' },
] as const;

/** One of the {@link differenceWhys}. */
export type DifferenceWhy = (typeof differenceWhys)[number]['why'];

/** A difference in words, as it is told afterwards. */
export function whyWords(why: string): string {
  return differenceWhys.find((each) => each.why === why)?.words ?? why;
}

/** What was counted of a SKU, against what the books say at this moment. */
export type CountedSku = {
  skuId: string;
  sku: string;
  title: string;
  /** Null when it was not counted at all. */
  counted: number | null;
  expected: number;
  held: number;
  heldFor: readonly string[];
  unitCostCents: bigint | null;
  /** For an edition, which numbers were seen; null for everything else. */
  numbers: EditionSeen | null;
};

/** The numbers of an edition: seen in the count, standing there by the books, held there. */
export type EditionSeen = {
  seen: readonly number[];
  expected: readonly number[];
  held: readonly number[];
  /** Numbers that by the books stand at another place: they cannot be here too. */
  elsewhere: readonly { number: number; place: string }[];
};

/** What the books say too little (above zero) or too much (below) of a SKU. */
export type CountDifference = CountedSku & { counted: number; difference: number };

/**
 * Where a count and the books differ at this moment. In a count of the whole place, what was not
 * counted counts as none; in a part of it, it is passed over.
 *
 * @example one tern was sold since the count began: both sides went down, and nothing differs
 */
export function differencesOf(
  skus: readonly CountedSku[],
  { partOnly }: { partOnly: boolean },
): CountDifference[] {
  return skus.flatMap((sku) => {
    if (sku.counted === null && partOnly) return [];
    const counted = sku.counted ?? 0;
    const sameNumbers = sku.numbers === null || isSame(sku.numbers.seen, sku.numbers.expected);
    if (counted === sku.expected && sameNumbers) return [];
    return [{ ...sku, counted, difference: counted - sku.expected }];
  });
}

function isSame(some: readonly number[], others: readonly number[]): boolean {
  return some.length === others.length && some.every((number) => others.includes(number));
}

/** One movement that puts the books right. */
export type CountMovement = {
  skuId: string;
  quantity: number;
  reason: 'counted' | 'missing' | 'broken';
  why: DifferenceWhy;
  unitCostCents: bigint | null;
  editionNumber?: number;
};

/**
 * Decides how the books are put right: one movement for each difference, or one for each number.
 *
 * @param whys by SKU id; each difference needs one that fits it: nothing is missing or broken
 *   where more were counted, and nothing is found where fewer were
 * @returns refuses, for the first difference in the order given: held pieces counted away, a number
 *   that stands elsewhere, no why, one that does not fit
 */
export function decideBooking(
  differences: readonly CountDifference[],
  whys: ReadonlyMap<string, DifferenceWhy>,
): Result<CountMovement[], CountRefusal> {
  const movements: CountMovement[] = [];
  for (const each of differences) {
    const why = whys.get(each.skuId);
    const no = heldRefusal(each) ?? elsewhereRefusal(each) ?? whyRefusal(each, why);
    if (no) return refuse(no);
    invariant(why, 'A difference that is booked has its why.');
    movements.push(...movementsOf(each, why));
  }
  // What is found comes first, so that nothing stands below zero on the way.
  return ok(movements.toSorted((one, other) => other.quantity - one.quantity));
}

function heldRefusal(each: CountDifference): CountRefusal | null {
  const { title, counted, held, heldFor, numbers } = each;
  const heldAway = numbers?.held.some((number) => !numbers.seen.includes(number)) ?? false;
  if (counted >= held && !heldAway) return null;
  return { code: 'held_pieces', title, held, heldFor };
}

function elsewhereRefusal({ title, numbers }: CountDifference): CountRefusal | null {
  const other = numbers?.elsewhere.find(({ number }) => numbers.seen.includes(number));
  return other ? { code: 'number_is_elsewhere', title, ...other } : null;
}

function whyRefusal(each: CountDifference, why: DifferenceWhy | undefined): CountRefusal | null {
  const { sku, title, difference } = each;
  if (!why) return { code: 'why_needed', sku, title };
  const fits = difference > 0 ? why === 'found' || why === 'counted' : why !== 'found';
  return fits || difference === 0 ? null : { code: 'why_does_not_fit', sku, title };
}

function movementsOf(each: CountDifference, why: DifferenceWhy): CountMovement[] {
  const { skuId, difference, unitCostCents, numbers } = each;
  const put = { skuId, why, unitCostCents };
  if (numbers === null) return [{ ...put, quantity: difference, reason: reasonOf(why) }];
  const gone = numbers.expected.filter((number) => !numbers.seen.includes(number));
  const come = numbers.seen.filter((number) => !numbers.expected.includes(number));
  return [
    ...come.map((editionNumber) => ({
      ...{ ...put, editionNumber, quantity: 1 },
      reason: why === 'found' ? ('missing' as const) : ('counted' as const),
    })),
    ...gone.map((editionNumber) => ({
      ...{ ...put, editionNumber, quantity: -1, reason: reasonOf(why) },
    })),
  ];
}

function reasonOf(why: DifferenceWhy): CountMovement['reason'] {
  if (why === 'counted') return 'counted';
  return why === 'broken' ? 'broken' : 'missing';
}
