import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents, type Currency } from '@/lib/money/rules';
import { formatSize, formatWeight, type LengthSystem } from '@/lib/units/rules';
import type { CommissionLine } from './lines';
import { eventWords, type PlanStep } from './plan';

/** All that a proposal tells the collector. */
export type ProposalTold = {
  readonly commissionNumber: number;
  readonly version: number;
  readonly title: string;
  readonly collector: string;
  readonly understanding: string;
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm: number;
  readonly pieces: number;
  readonly weightG: number;
  readonly lines: readonly CommissionLine[];
  readonly taxWords: string;
  readonly taxCents: Cents;
  readonly steps: readonly PlanStep[];
  readonly designFeeCents: Cents;
  readonly designFeeCredited: boolean;
  readonly roundsIncluded: number;
  readonly extraRoundCents: Cents;
  readonly readyFromOn: Day | null;
  readonly readyToOn: Day | null;
  readonly validUntilOn: Day;
  readonly notIncluded: string;
  readonly terms: string;
};

/** How figures are told on a paper. */
export type PaperTelling = { readonly currency: Currency; readonly lengthUnit: LengthSystem };

/**
 * All that the collector is shown of a proposal, word for word, one thing a line: what a yes to it
 * binds to.
 */
export function proposalBody(told: ProposalTold, telling: PaperTelling): string {
  const money = (cents: Cents) => formatCents(cents, telling);
  return [
    `Proposal ${told.version} for commission ${told.commissionNumber}: ${told.title}`,
    `For ${told.collector}`,
    ...sectionOf('What is wished for', told.understanding),
    sizeSentence(told, telling),
    ...told.lines.map(({ words, amountCents }) => `${words}: ${money(amountCents)}`),
    `${told.taxWords}: ${money(told.taxCents)}`,
    ...told.steps.map((step) => stepSentence(step, money)),
    ...feeSentences(told, money),
    ...readySentences(told),
    `It holds until ${formatDay(told.validUntilOn, 'long')}.`,
    ...sectionOf('Not included', told.notIncluded),
    ...sectionOf('Terms', told.terms),
  ].join('\n');
}

/** Size, depth, parts and weight in one sentence. */
export function sizeSentence(
  told: Pick<ProposalTold, 'widthUm' | 'heightUm' | 'depthUm' | 'pieces' | 'weightG'>,
  { lengthUnit }: Pick<PaperTelling, 'lengthUnit'>,
): string {
  const { widthUm, heightUm, depthUm, pieces, weightG } = told;
  const size = formatSize({ widthUm, heightUm, depthUm }, lengthUnit);
  const weight = formatWeight(weightG, lengthUnit === 'in' ? 'lb' : 'kg');
  const parts = pieces === 1 ? 'in one piece' : `in ${pieces} pieces`;
  return `${size}, ${parts}, about ${weight}`;
}

/** One step of the plan, as one sentence. */
export function stepSentence(step: PlanStep, money: (cents: Cents) => string): string {
  return `${step.name}: ${money(step.amountCents)}${shareWords(step)}, ${eventWords[step.event]}`;
}

/**
 * One step of the plan where its amount stands beside it.
 *
 * @example 'Deposit (50 %), when it is agreed'
 */
export function stepWords(step: PlanStep): string {
  return `${step.name}${shareWords(step)}, ${eventWords[step.event]}`;
}

function shareWords({ percent }: PlanStep): string {
  return percent === null ? '' : ` (${trimmed(percent)} %)`;
}

function trimmed(percent: string): string {
  return percent.includes('.') ? percent.replace(/\.?0+$/, '') : percent;
}

/** What the design costs, and the rounds that are in it. */
export function feeSentences(
  told: Pick<
    ProposalTold,
    'designFeeCents' | 'designFeeCredited' | 'roundsIncluded' | 'extraRoundCents'
  >,
  money: (cents: Cents) => string,
): string[] {
  const { designFeeCents, designFeeCredited, roundsIncluded, extraRoundCents } = told;
  const rounds = roundsIncluded === 1 ? 'One round' : `${roundsIncluded} rounds`;
  const fee = designFeeCredited
    ? 'It is part of the price, and stays if the work is not begun.'
    : 'It comes on top of the work.';
  return [
    ...(designFeeCents > 0n ? [`The design fee is ${money(designFeeCents)}. ${fee}`] : []),
    `${rounds} of changes to the sketch are included; each further one is ${money(extraRoundCents)}.`,
  ];
}

function readySentences({ readyFromOn, readyToOn }: ProposalTold): string[] {
  if (readyToOn === null) return ['No day is promised.'];
  if (readyFromOn === null) return [`Ready by about ${formatDay(readyToOn, 'long')}.`];
  return [`Ready between ${formatDay(readyFromOn, 'long')} and ${formatDay(readyToOn, 'long')}.`];
}

function sectionOf(head: string, words: string): string[] {
  return words.trim() === '' ? [] : [`${head}: ${words.trim()}`];
}
