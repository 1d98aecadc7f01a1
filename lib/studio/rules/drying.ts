import type { RouteStep, Technique } from './routes';

const inch = 25_400;

/** Days that clay dries by its thickness in inches: shortest, likely, longest. */
const byThickness = [
  { inches: 0.5, days: [7, 10, 14] },
  { inches: 1, days: [21, 24, 28] },
  { inches: 2, days: [35, 45, 56] },
] as const;

/**
 * How many days a piece of a thickness dries, slowly and covered, in a month of middling weather.
 *
 * Between the thicknesses that are known, in proportion; thinner than half an inch as half an inch,
 * thicker than two as two inches are, in proportion to the thickness.
 *
 * @param thicknessUm whole micrometres, above nought
 * @returns whole days
 * @source common practice: a thin tile one to two weeks, an inch three to four, two inches five to
 *   eight
 * @example dryingDays(25_400) // [21, 24, 28]
 */
export function dryingDays(thicknessUm: number): readonly [number, number, number] {
  const inches = Math.max(byThickness[0].inches, thicknessUm / inch);
  const [thin, middle, thick] = byThickness;
  if (inches > thick.inches) {
    const grown = thick.days.map((days) => Math.round((days * inches) / thick.inches));
    return [grown[0] ?? 0, grown[1] ?? 0, grown[2] ?? 0];
  }
  const [from, to] = inches <= middle.inches ? [thin, middle] : [middle, thick];
  const share = (inches - from.inches) / (to.inches - from.inches);
  const between = (at: 0 | 1 | 2) =>
    Math.round(from.days[at] + share * (to.days[at] - from.days[at]));
  return [between(0), between(1), between(2)];
}

/** What is deeper than this is hollow: its walls, which nobody measured, decide how it dries. */
const hollowFromUm = 2 * inch;

/**
 * How thick the clay of a piece is, as far as its depth tells.
 *
 * A relief is as thick as it is deep, and is hollowed behind beyond two inches; a cast or pressed
 * tile is as thick as it is deep, anything deeper is a vessel; what is thrown has walls.
 *
 * @param depthUm whole micrometres; null while nobody knows
 * @returns whole micrometres; null where the depth tells nothing
 */
export function thicknessOf(technique: Technique, depthUm: number | null): number | null {
  if (depthUm === null || technique === 'thrown') return null;
  if (technique === 'slab_relief') return Math.min(depthUm, hollowFromUm);
  return depthUm <= hollowFromUm ? depthUm : null;
}

/**
 * A route as it is for pieces of a thickness: where they are thicker than the route's drying allows
 * for, they dry for longer. Thinner ones keep the route's days.
 *
 * @param thicknessUm null while nobody knows: then the route stays as it is
 */
export function routeForThickness<Step extends RouteStep>(
  steps: readonly Step[],
  thicknessUm: number | null,
): Step[] {
  if (thicknessUm === null) return [...steps];
  const [shortestDays, likelyDays, longestDays] = dryingDays(thicknessUm);
  return steps.map((step) =>
    step.kind === 'dry' && likelyDays > step.likelyDays
      ? {
          ...step,
          shortestDays: Math.max(step.shortestDays, shortestDays),
          likelyDays,
          longestDays: Math.max(step.longestDays, longestDays),
        }
      : step,
  );
}
