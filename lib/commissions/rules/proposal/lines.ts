import { divideRounded } from '@/lib/money/rules/decimal';
import { shareCents, sumCents, type Cents } from '@/lib/money/rules';
import type { BuildUp } from './build-up';

/** What a line of a proposal, an agreement or a change is for. */
export const lineKinds = [
  'work',
  'design_fee',
  'frame',
  'crate',
  'freight',
  'travel',
  'installation',
] as const;

/** One of the {@link lineKinds}. */
export type CommissionLineKind = (typeof lineKinds)[number];

/** The lines as the collector reads them. */
export const lineWords: Record<CommissionLineKind, string> = {
  work: 'The work, at the studio',
  design_fee: 'Design: sketches and colour tiles',
  frame: 'Frame',
  crate: 'Crate',
  freight: 'Freight',
  travel: 'Travel',
  installation: 'Hanging',
};

/** A line as the collector sees it, before tax. */
export type CommissionLine = {
  readonly kind: CommissionLineKind;
  readonly words: string;
  readonly amountCents: Cents;
};

/** What the owner decides about the lines that go out. */
export type LinesWanted = {
  /** Which stand apart; the rest is within the work. */
  readonly apart: readonly CommissionLineKind[];
  /** The price she asks for; null for the built-up one. */
  readonly priceCents: Cents | null;
  readonly designFeePercent: string;
  /** Whether the design fee is a part of the price, or is added to it. */
  readonly designFeeCredited: boolean;
};

/** The charges that are passed on as they are. */
export type Extras = Readonly<Record<'crate' | 'freight' | 'travel' | 'installation', Cents>>;

/** The lines that go out, the design fee in them, and what the owner's own figure changed. */
export type LinesDecided = {
  readonly lines: readonly CommissionLine[];
  readonly designFeeCents: Cents;
  readonly priceCents: Cents;
  /** The price asked for, less the built-up one; below zero she gives something away. */
  readonly roundedCents: Cents;
};

/**
 * The lines that the collector sees. They always come to the price: what does not stand apart, and
 * what the owner rounded, is within the work.
 *
 * @returns no line of nothing; the work first, even where it is nothing
 * @example a frame that stands apart carries its share of losses, overhead and margin
 */
export function linesOf(built: BuildUp, extras: Extras, wanted: LinesWanted): LinesDecided {
  const designFeeCents = shareCents(built.workCents, wanted.designFeePercent, 'half-up');
  const added = wanted.designFeeCredited ? 0n : designFeeCents;
  const builtCents = built.totalCents + added;
  const priceCents = wanted.priceCents ?? builtCents;
  const standing = wanted.apart.flatMap((kind) => {
    const amountCents = amountOf(kind, { built, extras, designFeeCents });
    return amountCents > 0n ? [{ kind, words: lineWords[kind], amountCents }] : [];
  });
  const apartCents = sumCents(standing.map((line) => line.amountCents));
  const work = {
    kind: 'work',
    words: lineWords.work,
    amountCents: priceCents - apartCents,
  } as const;
  return {
    lines: [work, ...standing],
    ...{ designFeeCents, priceCents, roundedCents: priceCents - builtCents },
  };
}

type Amounts = { built: BuildUp; extras: Extras; designFeeCents: Cents };

function amountOf(kind: CommissionLineKind, { built, extras, designFeeCents }: Amounts): Cents {
  switch (kind) {
    case 'work':
      return 0n;
    case 'design_fee':
      return designFeeCents;
    case 'frame':
      return frameCents(built);
    case 'crate':
    case 'freight':
    case 'travel':
    case 'installation':
      return extras[kind];
  }
}

/** The frame's share of the whole work, as its direct cost is of all direct cost. */
function frameCents(built: BuildUp): Cents {
  const frame = built.direct.find((step) => step.key === 'frame')?.cents ?? 0n;
  if (built.directCents === 0n) return 0n;
  return divideRounded(frame * built.workCents, built.directCents, 'half-up');
}

/**
 * What the area figure says beside the cost figure.
 *
 * @example work of 9,845.00 cost and 6,750.00 by area: 'By area alone it would lose 3,095.00.'
 */
export function areaBesideCost(
  built: BuildUp,
  money: (cents: Cents) => string,
): { words: string; loses: boolean } {
  const { areaCents, costCents, workCents } = built;
  if (areaCents === 0n) return { words: 'No rate by area is kept.', loses: false };
  if (areaCents < costCents) {
    return { words: `By area alone it would lose ${money(costCents - areaCents)}.`, loses: true };
  }
  const apart = areaCents - workCents;
  if (apart === 0n) return { words: 'By area it comes to the same.', loses: false };
  const size = money(apart < 0n ? -apart : apart);
  return {
    words: `By area it would be ${size} ${apart < 0n ? 'less' : 'more'}.`,
    loses: false,
  };
}
