import { ok, refuse, type Result } from '@/lib/platform/result';

/** Pyrometric cones from the coolest to the hottest: 022 comes first, and 06 before 6. */
export const cones = [
  ...([
    '022',
    '021',
    '020',
    '019',
    '018',
    '017',
    '016',
    '015',
    '014',
    '013',
    '012',
    '011',
  ] as const),
  ...(['010', '09', '08', '07', '06', '05', '04', '03', '02', '01'] as const),
  ...(['1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11', '12', '13', '14'] as const),
] as const;

/** One of {@link cones}. */
export type Cone = (typeof cones)[number];

/** How fast a kiln climbs over its last 100 °C for a column of the table to hold, in °C an hour. */
export const coneRates = [15, 60, 150] as const;

/** One of {@link coneRates}. */
export type ConeRate = (typeof coneRates)[number];

/** Why the temperature of a cone was not told. */
export type ConeRefusal =
  | { code: 'no_such_cone'; cone: string }
  | { code: 'rate_not_in_table'; rateCPerHour: number }
  | { code: 'not_in_table'; cone: Cone; rateCPerHour: ConeRate };

/** Says in a full sentence why the temperature of a cone was not told. */
export function coneRefusalMessage(refusal: ConeRefusal): string {
  switch (refusal.code) {
    case 'no_such_cone':
      return 'Cones go from 022 to 01 and from 1 to 14. Mind the nought: 06 is far cooler than 6.';
    case 'rate_not_in_table':
      return 'The table has three climbs: 15, 60 and 150 °C an hour over the last 100 °C.';
    case 'not_in_table':
      return `The table has no temperature for cone ${refusal.cone} at ${refusal.rateCPerHour} °C an hour.`;
  }
}

/** At what temperature each cone is down, in °C, at the three climbs of {@link coneRates}. */
const table: Readonly<Record<Cone, readonly [number | null, number, number]>> = {
  '022': [null, 586, 590],
  '021': [null, 600, 617],
  '020': [null, 626, 638],
  '019': [656, 678, 695],
  '018': [686, 715, 734],
  '017': [705, 738, 763],
  '016': [742, 772, 796],
  '015': [750, 791, 818],
  '014': [757, 807, 838],
  '013': [807, 837, 861],
  '012': [843, 861, 882],
  '011': [857, 875, 894],
  '010': [891, 903, 915],
  '09': [907, 920, 930],
  '08': [922, 942, 956],
  '07': [962, 976, 987],
  '06': [981, 998, 1_013],
  '05': [1_021, 1_031, 1_044],
  '04': [1_046, 1_063, 1_077],
  '03': [1_071, 1_086, 1_104],
  '02': [1_078, 1_102, 1_122],
  '01': [1_093, 1_119, 1_138],
  '1': [1_109, 1_137, 1_154],
  '2': [1_112, 1_142, 1_164],
  '3': [1_115, 1_152, 1_170],
  '4': [1_141, 1_162, 1_183],
  '5': [1_159, 1_186, 1_207],
  '6': [1_185, 1_222, 1_243],
  '7': [1_201, 1_239, 1_257],
  '8': [1_211, 1_249, 1_271],
  '9': [1_224, 1_260, 1_280],
  '10': [1_251, 1_285, 1_305],
  '11': [1_272, 1_294, 1_315],
  '12': [1_285, 1_306, 1_326],
  '13': [1_310, 1_331, 1_348],
  '14': [1_351, 1_365, 1_384],
};

/**
 * At about what temperature a cone is down.
 *
 * A cone measures heat and time together, so it goes before any thermometer: the figure is where to
 * expect it, for large regular cones that stand by themselves.
 *
 * @param rateCPerHour how fast the kiln climbs over the last 100 °C, one of {@link coneRates}
 * @returns whole °C; refuses, in this order: no such cone, a climb the table has not, a cell that is
 *   empty
 * @source temperature equivalents of the Orton Ceramic Foundation for self-supporting regular cones,
 *   022 to 14 (chart of 2016), read in copies of it. Fifteen cones agree in two copies at 60 and 150;
 *   the column of 15, and 13 and 14, were read in one. The half cones are left out
 * @example coneTemperatureC('06', 60) // 998; cone '6' is 1222
 */
export function coneTemperatureC(cone: string, rateCPerHour: number): Result<number, ConeRefusal> {
  const known = coneNamed(cone);
  if (!known) return refuse({ code: 'no_such_cone', cone });
  const column = coneRates.findIndex((rate) => rate === rateCPerHour);
  const rate = coneRates[column];
  if (rate === undefined) return refuse({ code: 'rate_not_in_table', rateCPerHour });
  const celsius = table[known][column] ?? null;
  if (celsius === null) return refuse({ code: 'not_in_table', cone: known, rateCPerHour: rate });
  return ok(celsius);
}

/**
 * A cone by its name, as it is typed: `06`, `cone 6`, `^6`.
 *
 * @returns undefined for a name that no cone has; `6` and `06` are two cones
 */
export function coneNamed(typed: string): Cone | undefined {
  const plain = typed
    .trim()
    .toLowerCase()
    .replace(/^(?:cone\s*|\^)/, '');
  return cones.find((cone) => cone === plain);
}

/**
 * Which of two cones is the hotter, for putting them in order.
 *
 * @returns below zero when the first is the cooler, zero for the same
 * @example compareCones('06', '6') // below zero, and so is compareCones('06', '05')
 */
export function compareCones(one: Cone, other: Cone): number {
  return cones.indexOf(one) - cones.indexOf(other);
}

/**
 * The cone that comes next.
 *
 * @param by how many cones hotter; below zero for cooler, as a second firing often is
 * @returns null beyond either end
 * @example coneBeside('01', 1) // '1'
 */
export function coneBeside(cone: Cone, by: number): Cone | null {
  return cones[cones.indexOf(cone) + by] ?? null;
}
