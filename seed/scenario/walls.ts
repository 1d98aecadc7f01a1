import type { SurveySaid } from '@/lib/installation/input/survey/survey';
import { lengthOf } from '@/seed/catalogue';
import type { Obstacle } from '@/lib/walls/rules/plan/wall';

/** What somebody found at a wall; what is left out is not known yet. */
export type WallFound = {
  said: Partial<Omit<SurveySaid, 'surveyedOn'>>;
  obstacles: readonly Obstacle[];
};

const nothing: Omit<SurveySaid, 'surveyedOn'> = {
  ...{ wall: null, provedHow: '', studWood: null, studSpacingUm: null, firstStudUm: null },
  ...{ studWidthUm: null, studDepthUm: null, steelGauge: null, coverUm: null },
  ...{ isPlasterSound: null, hasBacking: null, backing: '', wallWidthUm: null, ceilingUm: null },
  ...{ outOfPlumbUm: null, furnitureUm: null, servicesSought: null, services: '' },
  ...{ isOutdoors: null, freezes: null, isOverPeople: null, quakes: null, heat: '', access: '' },
  ...{ steps: null, narrowWidthUm: null, narrowHeightUm: null, lift: '', floor: '' },
  ...{ hasOutlet: null, people: '', building: '', note: '', agreedMiddleUm: null },
};

/** A survey whole, from what was found. */
export function surveyOf({ said }: WallFound): Omit<SurveySaid, 'surveyedOn'> {
  return { ...nothing, ...said };
}

function onWall(kind: Obstacle['kind'], words: string, at: readonly string[]): Obstacle {
  const [leftUm, bottomUm, widthUm, heightUm] = at.map((text) => lengthOf(text));
  return {
    ...{ kind, words, leftUm: leftUm ?? 0, bottomUm: bottomUm ?? 0 },
    ...{ widthUm: widthUm ?? 1, heightUm: heightUm ?? 1 },
  };
}

/** The walls of the demo, by the title of their commission. */
export const wallsFound: Readonly<Record<string, WallFound>> = {
  'Tide pools, three in a row': {
    said: {
      ...{
        wall: 'wood_studs',
        provedHow: 'Magnet on the screws, and an inspection hole low down.',
      },
      ...{ studWood: 'douglas_fir_larch', studSpacingUm: lengthOf('16 in') },
      ...{ firstStudUm: lengthOf('12 in'), studWidthUm: lengthOf('1 1/2 in') },
      ...{ studDepthUm: lengthOf('3 1/2 in'), coverUm: lengthOf('1/2 in') },
      ...{ wallWidthUm: lengthOf('120 in'), ceilingUm: lengthOf('96 in'), servicesSought: true },
      ...{ services: 'One wire, straight up from the outlet.', isOutdoors: false },
      ...{ isOverPeople: false, quakes: false, hasOutlet: true, steps: 14 },
      access: 'Park in the slip; gate latch on the left. One turn on the stair.',
      ...{ narrowWidthUm: lengthOf('34 in'), narrowHeightUm: lengthOf('80 in') },
      ...{ floor: 'Oak, waxed: blankets.', people: 'Ana lets us in. A cat; keep the door shut.' },
      agreedMiddleUm: lengthOf('58 in'),
    },
    obstacles: [
      onWall('outlet', 'double', ['4 in', '12 in', '3 in', '5 in']),
      onWall('moulding', 'crown', ['1/16 in', '92 in', '119 in', '4 in']),
    ],
  },
  'Cedars at the ford': {
    said: {
      ...{ wall: 'wood_studs', provedHow: 'The builder’s drawing, and a magnet.' },
      ...{ studWood: 'hem_fir', studSpacingUm: lengthOf('16 in'), firstStudUm: lengthOf('8 in') },
      ...{ studDepthUm: lengthOf('5 1/2 in'), coverUm: lengthOf('5/8 in') },
      ...{ wallWidthUm: lengthOf('168 in'), ceilingUm: lengthOf('108 in'), servicesSought: true },
      ...{ furnitureUm: lengthOf('34 in'), isOutdoors: false, steps: 3 },
      agreedMiddleUm: lengthOf('62 in'),
    },
    obstacles: [onWall('furniture', 'sideboard', ['40 in', '1/16 in', '72 in', '34 in'])],
  },
  'Salmonberry hedge': {
    said: {
      ...{ wall: 'plaster_on_lath', provedHow: 'Drill dust and a fine nail to either side.' },
      ...{ studSpacingUm: lengthOf('16 in'), firstStudUm: lengthOf('10 in') },
      ...{ coverUm: lengthOf('7/8 in'), isPlasterSound: true, ceilingUm: lengthOf('102 in') },
      ...{ servicesSought: true, isOutdoors: false, quakes: false },
    },
    obstacles: [],
  },
  'Hemlock screen': {
    said: {
      ...{ wall: 'steel_studs', provedHow: 'The hotel’s own drawing.' },
      ...{ steelGauge: 20, studSpacingUm: lengthOf('24 in'), hasBacking: true },
      ...{ backing: '3/4 in plywood behind the board, fitted by the contractor; pictures kept.' },
      ...{ coverUm: lengthOf('5/8 in'), ceilingUm: lengthOf('98 in'), servicesSought: true },
      ...{ isOverPeople: true, building: 'Insurance paper to the manager; service lift, 8 to 10.' },
    },
    obstacles: [],
  },
};
