import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import type { Cents } from '@/lib/money/rules';

/** How many rounds of changes are included, and what each further one costs. */
export type RoundTerms = { readonly included: number; readonly extraCents: Cents };

/** The rounds of sketches as they stand. */
export type Rounds = {
  readonly used: number;
  readonly included: number;
  /** The round that asking for changes to this sketch belongs to. */
  readonly next: number;
  /** What it costs; nothing while it is included, or when it was opened before. */
  readonly feeCents: Cents;
};

/**
 * The rounds of changes to the sketch: a round is a sketch to which changes were asked.
 *
 * @param label the sketch to which changes would be asked now
 * @source common practice: two rounds included, a further one has its price
 * @example two included, changes asked to A and B: changes to C are round 3 and cost
 */
export function roundsOf(
  { sketches }: Pick<CommissionFacts, 'sketches'>,
  label: string,
  { included, extraCents }: RoundTerms,
): Rounds {
  const asked = sketches.filter((sketch) => sketch.changesOn !== null);
  const isOpen = asked.some((sketch) => sketch.label === label);
  const next = isOpen ? asked.length : asked.length + 1;
  return {
    ...{ used: asked.length, included, next },
    feeCents: !isOpen && next > included ? extraCents : 0n,
  };
}

/** The sketch that was shown after this one, if any: the later one is to be looked at. */
export function shownSince(
  { sketches }: Pick<CommissionFacts, 'sketches'>,
  label: string,
): string | null {
  const last = sketches.at(-1);
  return last && last.label !== label ? last.label : null;
}
