import { formatCents, type Cents } from '@/lib/money/rules';
import { addDays, formatDay, type Day } from '@/lib/dates/rules';
import type { SizeTerms } from '@/lib/freight/rules/billable';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** How a carrier reckons and by when it wants to be told, from a day on. */
export type CarrierTerms = SizeTerms & {
  readonly id: string;
  readonly name: string;
  /** By freight class instead of by size. */
  readonly isFreight: boolean;
  /** Days after it came within which damage must be told. */
  readonly reportDays: number;
  /** Days after it was sent within which a claim must be made. */
  readonly claimDays: number;
  /** What the carrier stands for without anything more. */
  readonly coverCents: Cents;
  readonly holdsFromOn: Day;
  readonly source: string;
};

/** Days for what no carrier has: our own van, and what was fetched. Common practice. */
export const ownTerms = { reportDays: 5, claimDays: 30 } as const;

/**
 * The terms that hold on a day: of each name the newest that has begun, by name.
 *
 * @example two of one name, from January and from August: on a day in March the first
 */
export function termsOn<Terms extends Pick<CarrierTerms, 'name' | 'holdsFromOn'>>(
  all: readonly Terms[],
  on: Day,
): Terms[] {
  const newest = new Map<string, Terms>();
  for (const terms of all) {
    const known = newest.get(terms.name);
    if (terms.holdsFromOn > on || (known && known.holdsFromOn >= terms.holdsFromOn)) continue;
    newest.set(terms.name, terms);
  }
  return [...newest.values()].toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
}

/** Why terms of a carrier were not written down. */
export type CarrierRefusal =
  { code: 'holds_already'; name: string; holdsFromOn: Day } | { code: 'size_without_divisor' };

/**
 * Decides whether terms can be written down.
 *
 * @returns refuses, in this order: terms of that name from that very day are there, by size without
 *   what counts as a pound
 */
export function decideTerms(
  terms: Pick<CarrierTerms, 'name' | 'holdsFromOn' | 'divisorIn3'> & { isBySize: boolean },
  known: readonly Pick<CarrierTerms, 'name' | 'holdsFromOn'>[],
): Result<true, CarrierRefusal> {
  const { name, holdsFromOn, divisorIn3, isBySize } = terms;
  const isThere = known.some((each) => each.name === name && each.holdsFromOn === holdsFromOn);
  if (isThere) return refuse({ code: 'holds_already', name, holdsFromOn });
  return isBySize && divisorIn3 === null ? refuse({ code: 'size_without_divisor' }) : ok(true);
}

/** Says in a full sentence why terms of a carrier were not written down. */
export function carrierRefusalMessage(refusal: CarrierRefusal): string {
  switch (refusal.code) {
    case 'holds_already':
      return (
        `Terms of “${refusal.name}” from ${formatDay(refusal.holdsFromOn, 'short')} are written ` +
        'down already. What was written stays; write the day from which the new ones hold.'
      );
    case 'size_without_divisor':
      return 'By size it needs a divisor. Write the cubic inches that count as a pound.';
  }
}

/** How a carrier counts, in a few words: `size ÷ 139, sides rounded up`. */
export function countsWords(
  terms: Pick<CarrierTerms, 'isFreight' | 'divisorIn3' | 'sides' | 'overIn3'>,
): string {
  if (terms.isFreight) return 'by freight class';
  if (terms.divisorIn3 === null) return 'by the scale';
  const over = terms.overIn3 > 0 ? `, only above ${terms.overIn3.toLocaleString('en-US')} in³` : '';
  return `by size ÷ ${terms.divisorIn3}, ${sidesWords[terms.sides]}${over}, or the scale`;
}

/** How sides are taken, in words. */
export const sidesWords: Readonly<Record<SizeTerms['sides'], string>> = {
  up: 'sides rounded up to an inch',
  nearest: 'sides to the nearest inch',
  as_measured: 'sides as measured',
};

/** What a carrier stands for by itself, and that it is no insurance. */
export function coverWords(coverCents: Cents): string {
  return coverCents === 0n
    ? 'The carrier stands for nothing unless it is insured.'
    : `Without more the carrier stands for ${formatCents(coverCents)} at most.`;
}

/** The last day for something that may take so many days from a day on. */
export function lastDay(from: Day, days: number): Day {
  return addDays(from, days);
}
