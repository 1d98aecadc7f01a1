/** How clay becomes a piece here. */
export type Technique = 'slab_relief' | 'slip_cast' | 'press_moulded' | 'thrown';

/** The states of the making, from wet clay to a piece that can hang, in their order. */
export const pegs = ['clay', 'dry', 'bisque', 'glaze', 'assembled', 'finished'] as const;
/** One of {@link pegs}: what a step fills on a commission's band. */
export type Peg = (typeof pegs)[number];

/** One step of a route: where pieces stand, and for how many days they commonly do. */
export type RouteStep = {
  /** Reads after "moved to": `drying`, `the bisque kiln`. */
  name: string;
  peg: Peg;
  shortestDays: number;
  likelyDays: number;
  longestDays: number;
  /** What to mind while pieces stand there; empty when nothing is. */
  caution: string;
};

/** A technique in words, for lists and headings. */
export const techniqueWords: Readonly<Record<Technique, string>> = {
  slab_relief: 'hand-built slab relief',
  slip_cast: 'slip-cast',
  press_moulded: 'press-moulded',
  thrown: 'thrown',
};

/** A peg by the name that is kept in a row; a name that is no longer used counts as clay. */
export function pegOf(name: string): Peg {
  return pegs.find((peg) => peg === name) ?? 'clay';
}

const dust =
  'Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, ' +
  'and wear a respirator that fits when anything is sanded dry.';
const boneDry =
  'Only bone-dry pieces go in: cold to the cheek is still wet, and trapped moisture turns to ' +
  'steam that bursts the piece and its neighbours. Climb slowly. The room is ventilated, the ' +
  'wiring is a licensed electrician’s, and the lid stays shut above the maker’s limit.';
const glazeKiln =
  'Keep the room ventilated and nothing that burns near the kiln. Its wiring is a licensed ' +
  'electrician’s. Nobody opens it above the maker’s limit: early air cracks the glaze.';
const glazing =
  'Raw glazes may hold barium, manganese or copper: gloves, and a respirator for dry mixing. ' +
  'Nothing is sold for food before a laboratory’s leach test says so.';
const slowDrying = 'Dry slowly, covered at the edges, so that both sides dry alike.';
const sharpEdges = 'Fired edges are sharp. Look for glaze drips with gloved fingers.';

function step(name: string, peg: Peg, days: readonly [number, number, number], caution = '') {
  const [shortestDays, likelyDays, longestDays] = days;
  return { name, peg, shortestDays, likelyDays, longestDays, caution };
}

/** Cast or pressed, a piece goes the same way once it is out of the mould. */
const outOfTheMould = [
  step('fettling', 'clay', [1, 1, 2], dust),
  step('drying', 'dry', [5, 10, 14], `${slowDrying} Flat, on grids.`),
  step('the bisque kiln', 'bisque', [2, 5, 10], boneDry),
  step('glazing', 'glaze', [1, 3, 6], glazing),
  step('the glaze kiln', 'glaze', [2, 5, 10], glazeKiln),
  step('sorting', 'finished', [1, 1, 3], sharpEdges),
];

/**
 * The way through the studio by technique: steps in order, the shortest, likely and longest days
 * at each, the peg it fills and the caution that belongs there. A job keeps the route it began
 * with, so a change here touches only jobs that are opened later.
 *
 * Days are whole days at the step, its waiting for a full kiln included.
 *
 * @source common practice; starting values that a studio replaces by its own
 */
export const routes: Readonly<Record<Technique, readonly RouteStep[]>> = {
  slab_relief: [
    step('modelling', 'clay', [7, 14, 21], dust),
    step(
      'cutting and hollowing',
      'clay',
      [1, 2, 4],
      'Hollow or rib every back over an inch, leave no sealed hollow, and put its number on it.',
    ),
    step('drying', 'dry', [14, 21, 35], `${slowDrying} Boards above and below, turned daily.`),
    step('the bisque kiln', 'bisque', [3, 7, 14], boneDry),
    step('glazing', 'glaze', [4, 6, 12], glazing),
    step('the glaze kiln', 'glaze', [3, 10, 20], glazeKiln),
    step('laying out', 'assembled', [1, 1, 3], sharpEdges),
    step(
      'assembly on the board',
      'assembled',
      [2, 3, 5],
      'Two lift from about 50 lb. Adhesives want gloves, moving air and no open flame.',
    ),
    step('curing', 'assembled', [7, 8, 14], 'Nothing stands upright before day seven.'),
    step(
      'frame and cleat',
      'finished',
      [1, 3, 6],
      'Weigh it and write the weight on the label before anyone books a wall.',
    ),
  ],
  slip_cast: [
    step('casting', 'clay', [1, 3, 7], 'Let plaster moulds dry between casts. Mop spilt slip wet.'),
    ...outOfTheMould,
  ],
  press_moulded: [step('pressing', 'clay', [1, 2, 5], dust), ...outOfTheMould],
  thrown: [
    step('throwing', 'clay', [1, 2, 3], 'Mop the splash pan and the floor wet, the same day.'),
    step('trimming', 'clay', [1, 1, 2], dust),
    step('drying', 'dry', [5, 12, 21], `${slowDrying} Platters longest of all.`),
    step('the bisque kiln', 'bisque', [2, 5, 10], boneDry),
    step('glazing', 'glaze', [1, 2, 5], glazing),
    step('the glaze kiln', 'glaze', [2, 4, 9], glazeKiln),
    step(
      'finishing',
      'finished',
      [1, 2, 7],
      'Lamps are wired from listed parts by a qualified person. Planters stand a day with water.',
    ),
  ],
};

const namesInOrder = [
  ...['modelling', 'casting', 'pressing', 'throwing'],
  ...['cutting and hollowing', 'fettling', 'trimming'],
  ...['drying', 'the bisque kiln', 'glazing', 'the glaze kiln'],
  ...['laying out', 'assembly on the board', 'curing', 'frame and cleat', 'sorting', 'finishing'],
];

/**
 * Where a step stands along the bench, for putting rows from clay to finished.
 *
 * @returns lower is nearer the clay; a step whose name is no longer used follows the others of
 *   its peg
 */
export function benchPlace(stepAt: { name: string; peg: string }): number {
  const peg = pegs.findIndex((name) => name === stepAt.peg);
  const name = namesInOrder.indexOf(stepAt.name);
  return (peg < 0 ? pegs.length : peg) * 100 + (name < 0 ? 99 : name);
}

/**
 * What to mind while pieces stand at a step: its own caution, and before a kiln also the kiln's,
 * because wet clay is found out before the door is shut, not after.
 *
 * @param position from 1; a position outside the route has nothing to mind
 */
export function cautionsAt(steps: readonly RouteStep[], position: number): string[] {
  const here = steps[position - 1];
  if (!here) return [];
  const next = steps[position];
  const ahead = next?.peg === 'bisque' && here.peg !== 'bisque' ? next.caution : '';
  return [here.caution, ahead].filter((caution) => caution !== '');
}
