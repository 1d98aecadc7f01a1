import { divideRounded, parseDecimal } from '@/lib/money/rules/decimal';
import { shareCents, sumCents, type Cents } from '@/lib/money/rules';
import { invariant } from '@/lib/platform/invariant';

/** The kinds of work whose hours are reckoned, in the order in which they are done. */
export const workKinds = ['design', 'making', 'glazing', 'kiln', 'assembly', 'office'] as const;

/** One of the {@link workKinds}. */
export type WorkKind = (typeof workKinds)[number];

/** The kinds of work as they are said. */
export const workWords: Record<WorkKind, string> = {
  design: 'Design: sketches, rounds, colour tiles',
  making: 'Template, slab, modelling, cutting, numbering',
  glazing: 'Glazing, coat by coat',
  kiln: 'Loading and unloading the kiln',
  assembly: 'Laying out, adhering, framing',
  office: 'Pictures, packing, letters',
};

/** What a price is built up from: the piece, the hours, and the gallery's own rates. */
export type BuildUpInput = {
  /** In micrometres; the depth is the mean depth of clay in the relief. */
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm: number;
  readonly pieces: number;
  /** Fired, in grams. */
  readonly weightG: number;
  readonly coats: number;
  readonly firings: number;
  /** Decimal hours by kind of work. */
  readonly hours: Readonly<Record<WorkKind, string>>;
  readonly hourCents: Cents;
  readonly clayCentsPerKg: Cents;
  /** For one coat on one square metre. */
  readonly glazeCentsPerM2: Cents;
  readonly firingCents: Cents;
  readonly boardCentsPerM2: Cents;
  /** For one metre of frame around the piece; nothing for no frame. */
  readonly frameCentsPerM: Cents;
  readonly otherCents: Cents;
  readonly lossPercent: string;
  readonly overheadPercent: string;
  readonly contingencyPercent: string;
  readonly marginPercent: string;
  /** By the gallery's own rate for this depth. */
  readonly areaCentsPerM2: Cents;
  readonly crateCents: Cents;
  readonly freightCents: Cents;
  readonly travelCents: Cents;
  readonly installationCents: Cents;
};

/** A step of the build-up: what it is, how it came about, and its cents. */
export type BuildUpStep = {
  readonly key: string;
  readonly words: string;
  readonly basis: string;
  readonly cents: Cents;
};

/** A price built up from the piece itself; all in cents, before tax. */
export type BuildUp = {
  /** The direct cost, step by step. */
  readonly direct: readonly BuildUpStep[];
  readonly directCents: Cents;
  readonly lossCents: Cents;
  readonly overheadCents: Cents;
  readonly contingencyCents: Cents;
  readonly costCents: Cents;
  readonly marginCents: Cents;
  /** The work at the studio: cost and margin. */
  readonly workCents: Cents;
  /** Crate, freight, travel and installation, as they are charged. */
  readonly extrasCents: Cents;
  readonly totalCents: Cents;
  /** What the work would be by area alone, to be held against it. */
  readonly areaCents: Cents;
};

/**
 * Builds a price up from the piece itself.
 *
 * Losses are taken on making, glazing, kiln, materials and firings; overhead on all direct cost;
 * contingency on the three together; the margin on the cost. Each is rounded once, half up.
 *
 * @returns cents before tax; the parts add up to the whole
 * @source common practice; the percentages and rates are each studio's own
 * @example direct 7,070.00, losses of 12 % on 5,270.00, overhead 20 %, contingency 8 %, margin 15 %:
 *   11,322.57
 */
export function buildUpPrice(input: BuildUpInput): BuildUp {
  const direct = [...workSteps(input), ...materialSteps(input)].filter((step) => step.cents > 0n);
  const directCents = sumCents(direct.map((step) => step.cents));
  const atRisk = direct.filter((step) => !safeFromLoss.includes(step.key));
  const lossCents = share(sumCents(atRisk.map((step) => step.cents)), input.lossPercent);
  const overheadCents = share(directCents, input.overheadPercent);
  const before = directCents + lossCents + overheadCents;
  const contingencyCents = share(before, input.contingencyPercent);
  const costCents = before + contingencyCents;
  const marginCents = share(costCents, input.marginPercent);
  const workCents = costCents + marginCents;
  const { crateCents, freightCents, travelCents, installationCents } = input;
  const extrasCents = sumCents([crateCents, freightCents, travelCents, installationCents]);
  return {
    ...{ direct, directCents, lossCents, overheadCents, contingencyCents, costCents },
    ...{ marginCents, workCents, extrasCents, totalCents: workCents + extrasCents },
    areaCents: perArea(input.areaCentsPerM2, input),
  };
}

/** What a crack in the kiln does not cost again. */
const safeFromLoss = ['design', 'assembly', 'office', 'frame'];

function share(cents: Cents, percent: string): Cents {
  return shareCents(cents, percent, 'half-up');
}

function workSteps(input: BuildUpInput): BuildUpStep[] {
  return workKinds.map((kind) => ({
    key: kind,
    words: workWords[kind],
    basis: `${input.hours[kind]} hours`,
    cents: hoursCents(input.hours[kind], input.hourCents),
  }));
}

function hoursCents(hours: string, hourCents: Cents): Cents {
  const read = parseDecimal(hours);
  invariant(read, 'Hours were read before.');
  return divideRounded(read.units * hourCents, 10n ** BigInt(read.scale), 'half-up');
}

function materialSteps(input: BuildUpInput): BuildUpStep[] {
  const { weightG, coats, firings, frameCentsPerM } = input;
  const clay = divideRounded(input.clayCentsPerKg * BigInt(weightG), 1_000n, 'half-up');
  const around = 2n * BigInt(input.widthUm + input.heightUm);
  return [
    { key: 'clay', words: 'Clay', basis: 'by its fired weight', cents: clay },
    {
      key: 'glaze',
      words: 'Glaze',
      basis: `${coats} coats`,
      cents: perArea(input.glazeCentsPerM2, input) * BigInt(coats),
    },
    {
      key: 'firings',
      words: 'Firings',
      basis: `${firings} turns of the kiln`,
      cents: input.firingCents * BigInt(firings),
    },
    {
      key: 'board',
      words: 'Backing board and adhesive',
      basis: 'by area',
      cents: perArea(input.boardCentsPerM2, input),
    },
    {
      key: 'frame',
      words: 'Frame',
      basis: 'all round',
      cents: divideRounded(frameCentsPerM * around, 1_000_000n, 'half-up'),
    },
    { key: 'other', words: 'Other materials', basis: 'as written', cents: input.otherCents },
  ];
}

function perArea(centsPerM2: Cents, size: Pick<BuildUpInput, 'widthUm' | 'heightUm'>): Cents {
  const squareUm = BigInt(size.widthUm) * BigInt(size.heightUm);
  return divideRounded(centsPerM2 * squareUm, 1_000_000_000_000n, 'half-up');
}
