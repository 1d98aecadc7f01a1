import { planEvents, type PlanEvent } from '@/lib/commissions/rules/facts';
import type { Cents } from '@/lib/money/rules';
import { workKinds, type WorkKind } from './build-up';
import type { PlanWish } from './plan';

/** The rates and starting values of every price; hours are for one square metre. */
export type PriceBasis = {
  readonly hourCents: Cents;
  readonly hoursPerM2: Readonly<Record<WorkKind, string>>;
  readonly clayCentsPerKg: Cents;
  readonly glazeCentsPerM2: Cents;
  readonly firingCents: Cents;
  readonly boardCentsPerM2: Cents;
  readonly frameCentsPerM: Cents;
  readonly lossPercent: string;
  readonly overheadPercent: string;
  readonly contingencyPercent: string;
  readonly marginPercent: string;
  /** The rate by area, by mean depth of clay: up to 15 mm, up to 30 mm, deeper. */
  readonly areaCentsPerM2: readonly [Cents, Cents, Cents];
};

/** How the gallery prices and agrees. */
export type CommissionTerms = {
  readonly basis: PriceBasis;
  readonly plan: readonly PlanWish[];
  readonly designFeePercent: string;
  readonly designFeeCredited: boolean;
  readonly roundsIncluded: number;
  readonly extraRoundCents: Cents;
  readonly validDays: number;
  readonly terms: string;
  readonly notIncluded: string;
  readonly cancelMakingPercent: string;
  readonly cancelFinishedPercent: string;
  /** CIEDE2000; beyond it a fired colour is told to be off its tile. */
  readonly colourLimit: string;
  readonly answerDays: number;
};

/**
 * What a gallery begins with before it writes its own figures.
 *
 * @source common practice; every studio replaces these by its own history
 */
export const startingBasis: PriceBasis = {
  hourCents: 4_500n,
  hoursPerM2: {
    design: '10',
    making: '43',
    glazing: '18.6',
    kiln: '8.6',
    assembly: '11.5',
    office: '7.2',
  },
  clayCentsPerKg: 220n,
  glazeCentsPerM2: 1_400n,
  firingCents: 3_000n,
  boardCentsPerM2: 9_000n,
  frameCentsPerM: 2_500n,
  lossPercent: '12',
  overheadPercent: '20',
  contingencyPercent: '8',
  marginPercent: '15',
  areaCentsPerM2: [485_000n, 645_000n, 860_000n],
};

/** The plan that most galleries begin with: half down, a quarter on the way, the rest before it leaves. */
export const startingPlan: readonly PlanWish[] = [
  { name: 'Deposit', event: 'agreed', percent: '50', amountCents: null },
  { name: 'Second part', event: 'out_of_bisque', percent: '25', amountCents: null },
  { name: 'Balance', event: 'before_hand_over', percent: '25', amountCents: null },
];

/** Terms in plain words to begin with; an adviser looks at the gallery's own. */
export const startingTerms = [
  'Fired clay moves: sizes hold to about two in a hundred. Hand work, crazing and tone vary within the range of the approved tiles.',
  'Changes are written down with their price and days, and signed, before anything is done. After the clay is cut a change costs the new parts and their drying.',
  'If an answer takes longer than ten days, the day moves with it. If clay, kiln or illness delay us, we say so at once, with the new day.',
  'What breaks before it is handed over is made again at our cost.',
  'If it is ended before the making, the design fee stays. After that the work done stays, as written in the agreement.',
  'The wall, the power and the way to it are the owner’s to prepare. What is in the wall is not ours to know.',
  'The design stays the artist’s; pictures of it may be shown, without name or address.',
].join('\n');

/** What proposals commonly leave out. */
export const startingNotIncluded =
  'Electric work, backing in the wall, painting, permits, tile setting, lift fees.';

/**
 * The rate by area for a mean depth of clay.
 *
 * @param depthUm in micrometres
 * @returns cents for one square metre
 * @example a depth of 15 mm still takes the first rate
 */
export function areaRate(basis: PriceBasis, depthUm: number): Cents {
  const [shallow, middle, deep] = basis.areaCentsPerM2;
  if (depthUm <= 15_000) return shallow;
  return depthUm <= 30_000 ? middle : deep;
}

/** The hours a piece of this area begins with, to a tenth. */
export function startingHours(
  basis: PriceBasis,
  size: { readonly widthUm: number; readonly heightUm: number },
): Record<WorkKind, string> {
  const squareMetres = (size.widthUm / 1_000_000) * (size.heightUm / 1_000_000);
  const of = (kind: WorkKind) =>
    String(Math.round(Number(basis.hoursPerM2[kind]) * squareMetres * 10) / 10);
  return {
    design: of('design'),
    making: of('making'),
    glazing: of('glazing'),
    kiln: of('kiln'),
    assembly: of('assembly'),
    office: of('office'),
  };
}

/** Whether a word is one of the events. */
export function isPlanEvent(word: string): word is PlanEvent {
  return planEvents.some((event) => event === word);
}

/** Whether a word is one of the kinds of work. */
export function isWorkKind(word: string): word is WorkKind {
  return workKinds.some((kind) => kind === word);
}
