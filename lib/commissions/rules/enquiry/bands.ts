import { divideRounded } from '@/lib/money/rules/decimal';
import type { Cents } from '@/lib/money/rules';

/** A band of prices that is offered when somebody is asked what they think of. */
export type Band = { readonly fromCents: Cents; readonly toCents: Cents };

/** One square metre, in square micrometres. */
const squareMetre = 1_000_000_000_000n;

/**
 * Three bands of what pieces of this size have been, by the gallery's own rates for shallow, middle
 * and deep relief; they are offered, not promised.
 *
 * @param areaCentsPerM2 the gallery's rates for one square metre, before tax
 * @param size null while a side is not known: then for a piece of one square metre
 * @returns cents, each band going on where the one before ends, rounded to what one would say aloud;
 *   fewer where two rates come to the same
 * @source the gallery's own rates; three bands and not a blank are common practice
 * @example 2,000.00, 3,000.00 and 4,500.00 on one square metre: 2,000 to 3,000, 3,000 to 4,500, 4,500
 *   to 6,750
 */
export function budgetBands(
  areaCentsPerM2: readonly Cents[],
  size: { readonly widthUm: number; readonly heightUm: number } | null,
): Band[] {
  const area = size ? BigInt(size.widthUm) * BigInt(size.heightUm) : squareMetre;
  const rates = [...areaCentsPerM2].sort((one, other) => (one < other ? -1 : 1));
  const deepest = rates.at(-1);
  if (deepest === undefined) return [];
  const edges = [...rates, divideRounded(deepest * 3n, 2n, 'half-up')].map((rate) =>
    saidAloud(divideRounded(rate * area, squareMetre, 'half-up')),
  );
  return edges
    .slice(1)
    .map((toCents, at) => ({ fromCents: edges[at] ?? 0n, toCents }))
    .filter(({ fromCents, toCents }) => fromCents < toCents);
}

/** Rounded to a quarter of its largest decimal place, and to 25.00 at least. */
function saidAloud(cents: Cents): Cents {
  const digits = (cents / 100n).toString().length;
  const step = (10n ** BigInt(Math.max(digits, 3) - 1) * 100n) / 4n;
  return divideRounded(cents, step, 'half-up') * step;
}

/** A band as a form sends it: '300000-500000'. */
export function bandText({ fromCents, toCents }: Band): string {
  return `${fromCents}-${toCents}`;
}

/** A band read back from a form; null for anything else. */
export function bandOf(text: string): Band | null {
  const [, from, to] = /^(\d{1,12})-(\d{1,12})$/.exec(text) ?? [];
  if (from === undefined || to === undefined) return null;
  const band = { fromCents: BigInt(from), toCents: BigInt(to) };
  return band.fromCents < band.toCents ? band : null;
}
