import { chancesFromNone, type CountOdds } from './demand';

/**
 * How many people, on average, would go home without a piece before the next lot is ready.
 *
 * @param odds of what is asked for until then
 * @param free pieces that nobody was promised; below zero counts as none
 * @source expected shortage, E[(demand − free)⁺] = mean − Σ P(demand > n) for n below free
 * @example expectedLost({ mean: 3, size: null }, 0) // 3: everyone does
 */
export function expectedLost(odds: CountOdds, free: number): number {
  const chances = chancesFromNone(odds);
  let lost = odds.mean;
  let more = 1;
  for (let count = 0; count < free && lost > 1e-9; count += 1) {
    more -= chances.next().value;
    lost -= Math.max(0, more);
  }
  return Math.max(0, lost);
}
