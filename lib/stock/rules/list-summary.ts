import { kindWords, isPieceKind } from '@/lib/catalogue/rules';
import { makings } from '@/lib/catalogue/rules/making';
import { formatCents } from '@/lib/money/rules';
import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import type { FactChange, FactName, FactValue, PlannedRow } from './list-plan';

/** How many lines of a list would do what. */
export type ListCounts = {
  newRows: number;
  changedRows: number;
  sameRows: number;
  refusedRows: number;
};

/** Counts the lines of a plan by what they would do. */
export function countPlan(plan: readonly PlannedRow[]): ListCounts {
  const countOf = (verdict: PlannedRow['verdict']) =>
    plan.reduce((sum, row) => sum + (row.verdict === verdict ? 1 : 0), 0);
  return {
    newRows: countOf('new'),
    changedRows: countOf('changed'),
    sameRows: countOf('same'),
    refusedRows: countOf('refused'),
  };
}

const verdictOrder = ['refused', 'changed', 'new', 'same'] as const;

/**
 * The lines of a plan as they are shown: what was refused first, then what changes, what is new,
 * and what stays the same; within these in the order of the file.
 */
export function planAsShown(plan: readonly PlannedRow[]): PlannedRow[] {
  return verdictOrder.flatMap((verdict) => plan.filter((row) => row.verdict === verdict));
}

const factWords: Readonly<Record<FactName, string>> = {
  title: 'title',
  kind: 'kind',
  widthUm: 'width',
  heightUm: 'height',
  depthUm: 'depth',
  colourway: 'colourway',
  priceCents: 'price',
  costCents: 'cost',
  weightG: 'weight',
  gtin: 'barcode',
  making: 'making',
  here: 'here',
};

/**
 * A change in words: `price from $138.00 to $142.00`.
 *
 * @example changeWords({ fact: 'here', from: 3, to: 5 }, 'in') // 'here from 3 to 5'
 */
export function changeWords(change: FactChange, system: LengthSystem): string {
  const { fact, from, to } = change;
  const was = factText(fact, from, system);
  return `${factWords[fact]} from ${was} to ${factText(fact, to, system)}`;
}

function factText(fact: FactName, value: FactValue, system: LengthSystem): string {
  if (value === null) return 'nothing';
  if (typeof value === 'bigint') return formatCents(value);
  if (typeof value === 'string') return wordOf(fact, value);
  if (fact === 'weightG') return formatWeight(value, system === 'in' ? 'lb' : 'kg');
  return fact === 'here' ? String(value) : formatLength(value, system);
}

function wordOf(fact: FactName, value: string): string {
  if (fact === 'kind' && isPieceKind(value)) return kindWords(value);
  return makings.find((each) => each.making === value)?.words ?? value;
}

/** The counts as one sentence: `2 new, 3 changed, 40 the same, 1 refused.` */
export function countsWords(counts: ListCounts): string {
  const parts = [
    `${counts.newRows} new`,
    `${counts.changedRows} changed`,
    `${counts.sameRows} the same`,
    `${counts.refusedRows} refused`,
  ];
  return `${parts.join(', ')}.`;
}
