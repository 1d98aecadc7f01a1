import { formatDay, type Day } from '@/lib/dates/rules';
import { formatWeight, type LengthSystem } from '@/lib/units/rules';

/** What a piece weighs, and from what that is known. */
export type WeightToTell = {
  readonly weightG: number;
  readonly from: 'scale' | 'proposal' | 'estimate';
  readonly on: Day | null;
};

/**
 * What a piece weighs, with what that rests on.
 *
 * @example '98 lb, from the scale on 12 May 2026'
 */
export function weightWords(weight: WeightToTell, system: LengthSystem): string {
  const told = formatWeight(weight.weightG, system === 'in' ? 'lb' : 'kg');
  if (weight.from === 'scale') {
    return `${told}, from the scale${weight.on ? ` on ${formatDay(weight.on, 'short')}` : ''}`;
  }
  return weight.from === 'proposal'
    ? `about ${told}, as it was proposed: weigh it before anything is drilled`
    : `about ${told}, reckoned from its size: weigh it before anything is drilled`;
}

/**
 * Whether a piece on the scale is heavier than its plan was worked out for.
 *
 * @example a plan for 90 lb and a scale that says 98 // true; the other way round is no harm
 */
export function isHeavierThanPlanned(plannedG: number, weight: WeightToTell | null): boolean {
  return weight?.from === 'scale' && weight.weightG > plannedG;
}

/**
 * What a plan was reckoned with, and whether the scale says so.
 *
 * @example '98 lb, from the scale on 12 May 2026'; '100 lb as planned; the scale said 98 lb'
 */
export function plannedWeightWords(
  plannedG: number,
  weight: WeightToTell | null,
  system: LengthSystem,
): string {
  if (weight?.weightG === plannedG) return weightWords(weight, system);
  const planned = `${formatWeight(plannedG, system === 'in' ? 'lb' : 'kg')} as planned`;
  return weight?.from === 'scale'
    ? `${planned}; known: ${weightWords(weight, system)}`
    : `${planned}: weigh it before anything is drilled`;
}
