import type { Peg, RouteStep, StepKind, Technique } from '@/lib/studio/rules/routes';

const boneDry =
  'Only bone-dry pieces go in: cold to the cheek is still wet, and trapped moisture turns to steam that bursts the piece and its neighbours. Climb slowly. The room is ventilated, the wiring is a licensed electrician’s, and the lid stays shut above the maker’s limit.';
const glazing =
  'Raw glazes may hold barium, manganese or copper: gloves, and a respirator for dry mixing. Nothing is sold for food before a laboratory’s leach test says so.';
const kiln =
  'Keep the room ventilated and nothing that burns near the kiln. Its wiring is a licensed electrician’s. Nobody opens it above the maker’s limit: early air cracks the glaze.';
const dust =
  'Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, and wear a respirator that fits when anything is sanded dry.';
const sharp = 'Fired edges are sharp. Look for glaze drips with gloved fingers.';

type Days = readonly [shortest: number, likely: number, longest: number];
type More = Partial<
  Pick<RouteStep, 'benchId' | 'cone' | 'isTogether' | 'lossPercent' | 'minutesEach' | 'caution'>
>;

type What = readonly [name: string, peg: Peg, kind: StepKind];

function step([name, peg, kind]: What, days: Days, more: More): RouteStep {
  const [shortestDays, likelyDays, longestDays] = days;
  return {
    ...{ name, peg, kind, shortestDays, likelyDays, longestDays, benchId: null, cone: '' },
    ...{ isTogether: false, lossPercent: '0', minutesEach: '0', caution: '', ...more },
  };
}

/**
 * The routes that every studio begins with, as the migration writes them; a step's bench is told
 * by its name here. tests/database/studio/routes.test.ts holds the two together.
 */
export const routes: Readonly<Record<Technique, readonly RouteStep[]>> = {
  slab_relief: [
    step(['transferring the sketch', 'clay', 'work'], [1, 2, 4], {
      benchId: 'modelling bench',
      minutesEach: '4',
      caution: 'Draw it at wet size, and write the wet and the fired size on the template.',
    }),
    step(['rolling the slab', 'clay', 'work'], [1, 1, 3], {
      benchId: 'modelling bench',
      minutesEach: '6',
    }),
    step(['cutting and modelling', 'clay', 'work'], [7, 14, 21], {
      benchId: 'modelling bench',
      lossPercent: '1',
      minutesEach: '90',
      caution:
        'Hollow or rib every back over an inch, leave no sealed hollow, and put its number on it. Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, and wear a respirator that fits when anything is sanded dry.',
    }),
    step(['drying', 'dry', 'dry'], [14, 21, 35], {
      lossPercent: '5',
      caution:
        'Dry slowly, covered at the edges, so that both sides dry alike. Boards above and below, turned daily.',
    }),
    step(['the bisque kiln', 'bisque', 'fire'], [2, 3, 4], {
      cone: '04',
      lossPercent: '3',
      minutesEach: '2',
      caution: boneDry,
    }),
    step(['glazing', 'glaze', 'work'], [3, 5, 10], {
      benchId: 'glazing bench',
      minutesEach: '20',
      caution: glazing,
    }),
    step(['the glaze kiln', 'glaze', 'fire'], [2, 3, 4], {
      cone: '6',
      lossPercent: '3',
      minutesEach: '2',
      caution: kiln,
    }),
    step(['the second glazing', 'glaze', 'work'], [2, 3, 6], {
      benchId: 'glazing bench',
      minutesEach: '10',
      caution: glazing,
    }),
    step(['the second glaze kiln', 'glaze', 'fire'], [2, 3, 4], {
      cone: '05',
      lossPercent: '2',
      minutesEach: '2',
      caution: kiln,
    }),
    step(['assembly on the board', 'assembled', 'work'], [2, 4, 6], {
      benchId: 'assembly table',
      isTogether: true,
      minutesEach: '8',
      caution:
        'Fired edges are sharp. Look for glaze drips with gloved fingers. Two lift from about 50 lb. Adhesives want gloves, moving air and no open flame.',
    }),
    step(['curing', 'assembled', 'wait'], [7, 8, 14], {
      isTogether: true,
      caution: 'Nothing stands upright before day seven.',
    }),
    step(['frame and cleat', 'finished', 'work'], [1, 3, 6], {
      benchId: 'assembly table',
      isTogether: true,
      minutesEach: '4',
      caution: 'Weigh it and write the weight on the label before anyone books a wall.',
    }),
    step(['checking', 'finished', 'work'], [1, 1, 2], {
      benchId: 'assembly table',
      isTogether: true,
      minutesEach: '1',
      caution: 'Look at it in the light it will hang in, and pull at every part with gloved hands.',
    }),
  ],
  slip_cast: [
    step(['casting', 'clay', 'work'], [1, 3, 7], {
      benchId: 'casting table',
      lossPercent: '8',
      minutesEach: '8',
      caution: 'Let plaster moulds dry between casts. Mop spilt slip wet.',
    }),
    step(['fettling', 'clay', 'work'], [1, 1, 2], {
      benchId: 'modelling bench',
      minutesEach: '6',
      caution: dust,
    }),
    step(['drying', 'dry', 'dry'], [5, 10, 14], {
      lossPercent: '4',
      caution: 'Dry slowly, covered at the edges, so that both sides dry alike. Flat, on grids.',
    }),
    step(['the bisque kiln', 'bisque', 'fire'], [2, 3, 4], {
      cone: '04',
      lossPercent: '2',
      minutesEach: '2',
      caution: boneDry,
    }),
    step(['glazing', 'glaze', 'work'], [1, 3, 6], {
      benchId: 'glazing bench',
      minutesEach: '10',
      caution: glazing,
    }),
    step(['the glaze kiln', 'glaze', 'fire'], [2, 3, 4], {
      cone: '6',
      lossPercent: '4.5',
      minutesEach: '2',
      caution: kiln,
    }),
    step(['sorting', 'finished', 'work'], [1, 1, 3], {
      benchId: 'assembly table',
      minutesEach: '5',
      caution: sharp,
    }),
  ],
  press_moulded: [
    step(['pressing', 'clay', 'work'], [1, 2, 5], {
      benchId: 'casting table',
      lossPercent: '4',
      minutesEach: '6',
      caution: dust,
    }),
    step(['fettling', 'clay', 'work'], [1, 1, 2], {
      benchId: 'modelling bench',
      minutesEach: '6',
      caution: dust,
    }),
    step(['drying', 'dry', 'dry'], [5, 10, 14], {
      lossPercent: '4',
      caution: 'Dry slowly, covered at the edges, so that both sides dry alike. Flat, on grids.',
    }),
    step(['the bisque kiln', 'bisque', 'fire'], [2, 3, 4], {
      cone: '04',
      lossPercent: '1.5',
      minutesEach: '2',
      caution: boneDry,
    }),
    step(['glazing', 'glaze', 'work'], [1, 3, 6], {
      benchId: 'glazing bench',
      minutesEach: '10',
      caution: glazing,
    }),
    step(['the glaze kiln', 'glaze', 'fire'], [2, 3, 4], {
      cone: '6',
      lossPercent: '4.5',
      minutesEach: '2',
      caution: kiln,
    }),
    step(['sorting', 'finished', 'work'], [1, 1, 3], {
      benchId: 'assembly table',
      minutesEach: '9',
      caution: sharp,
    }),
  ],
  thrown: [
    step(['throwing', 'clay', 'work'], [1, 2, 3], {
      benchId: 'wheel',
      lossPercent: '2',
      minutesEach: '8',
      caution: 'Mop the splash pan and the floor wet, the same day.',
    }),
    step(['trimming', 'clay', 'work'], [1, 1, 2], {
      benchId: 'wheel',
      lossPercent: '3',
      minutesEach: '8',
      caution: dust,
    }),
    step(['drying', 'dry', 'dry'], [5, 12, 21], {
      lossPercent: '6',
      caution:
        'Dry slowly, covered at the edges, so that both sides dry alike. Platters longest of all.',
    }),
    step(['the bisque kiln', 'bisque', 'fire'], [2, 3, 4], {
      cone: '04',
      lossPercent: '1.5',
      minutesEach: '2',
      caution: boneDry,
    }),
    step(['glazing', 'glaze', 'work'], [1, 2, 5], {
      benchId: 'glazing bench',
      minutesEach: '10',
      caution: glazing,
    }),
    step(['the glaze kiln', 'glaze', 'fire'], [2, 3, 4], {
      cone: '6',
      lossPercent: '6',
      minutesEach: '2',
      caution: kiln,
    }),
    step(['finishing', 'finished', 'work'], [1, 2, 7], {
      benchId: 'assembly table',
      lossPercent: '1',
      minutesEach: '8',
      caution:
        'Lamps are wired from listed parts by a qualified person. Planters stand a day with water.',
    }),
  ],
};
