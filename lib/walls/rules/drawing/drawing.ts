import { formatLength, type LengthSystem } from '@/lib/units/rules';
import type { FixingPlan } from '../plan/plan';
import { rightOf, topOf, type Rectangle } from '../plan/place';
import { obstacleNamed, type Obstacle, type WallFacts } from '../plan/wall';

/** What a shape of the drawing is, so that each place can draw it in its own ink. */
export type ShapeRole =
  'wall' | 'stud' | 'furniture' | 'obstacle' | 'inTheWall' | 'piece' | 'cleat' | 'spacer' | 'hole';

/** A shape in micrometres from the lower left of the wall. */
export type Shape = { readonly role: ShapeRole; readonly name: string } & Rectangle;

/** A measurement: from one place to another, along the wall or up it, with its words. */
export type Measure = {
  readonly along: 'wall' | 'height';
  readonly fromUm: number;
  readonly untilUm: number;
  /** How far out it stands: 0 next to what is measured. */
  readonly rank: number;
  readonly words: string;
};

/** A wall with a piece on it, ready to be drawn to scale. */
export type WallDrawing = {
  readonly widthUm: number;
  readonly heightUm: number;
  readonly shapes: readonly Shape[];
  readonly measures: readonly Measure[];
  /** What the drawing shows, in words. */
  readonly label: string;
};

/** The width of a stud where it was not measured: 1 1/2 in. */
const studWideUm = 38_100;
/** A hole is drawn so large that it is seen. */
const holeUm = 16_000;
const spacerUm = 40_000;
/** How much wall is drawn beside the piece where nobody measured its width. */
const besideUm = 600_000;

/** What a drawing is made of besides its plan. */
export type ToDraw = {
  readonly wall: WallFacts & { readonly studWidthUm: number | null };
  readonly plan: FixingPlan;
};

/**
 * A wall, what is on it and in it, the piece with its cleat and its holes, and the measurements that
 * whoever hangs it needs.
 *
 * @param system in which the measurements are told
 */
export function drawWall({ wall, plan }: ToDraw, system: LengthSystem): WallDrawing {
  const { piece } = plan.place;
  const widthUm = wall.wallWidthUm ?? rightOf(piece) + besideUm;
  const heightUm = wall.ceilingUm ?? topOf(piece) + besideUm;
  return {
    ...{ widthUm, heightUm },
    shapes: [
      shape('wall', 'the wall', { leftUm: 0, bottomUm: 0, widthUm, heightUm }),
      ...studShapes(wall, plan, widthUm, heightUm),
      ...furnitureShape(wall, piece),
      ...wall.obstacles.map(obstacleShape),
      shape('piece', 'the piece', piece),
      shape('cleat', 'the cleat', plan.place.cleat),
      shape('spacer', 'the spacer bar', spacerOf(piece)),
      ...plan.holes.map(({ xUm, yUm }) => shape('hole', 'a hole', around(xUm, yUm))),
    ],
    measures: [...heightMeasures(plan, heightUm, system), ...lengthMeasures(plan, system)],
    label: `The piece on the wall, to scale: its lower edge ${formatLength(piece.bottomUm, system)} above the floor, the cleat at ${formatLength(plan.place.cleatUm, system)}, ${plan.holes.length} holes.`,
  };
}

function shape(role: ShapeRole, name: string, place: Rectangle): Shape {
  return { role, name, ...place };
}

function studShapes(
  wall: ToDraw['wall'],
  { atUms, studsUm }: FixingPlan,
  widthUm: number,
  heightUm: number,
): Shape[] {
  const wideUm = wall.studWidthUm ?? studWideUm;
  const { studSpacingUm } = wall;
  if (studSpacingUm === null) return [];
  const first = studsUm[0] ?? atUms[0] ?? 0;
  const many = Math.min(Math.floor((widthUm - first) / studSpacingUm) + 1, 200);
  return Array.from({ length: Math.max(many, 0) }, (_, at) =>
    shape('stud', 'a stud', {
      leftUm: first + at * studSpacingUm - wideUm / 2,
      ...{ bottomUm: 0, widthUm: wideUm, heightUm },
    }),
  );
}

function furnitureShape({ furnitureUm }: WallFacts, piece: Rectangle): Shape[] {
  if (furnitureUm === null || furnitureUm === 0) return [];
  const { leftUm, widthUm } = piece;
  return [shape('furniture', 'furniture', { leftUm, bottomUm: 0, widthUm, heightUm: furnitureUm })];
}

function obstacleShape(one: Obstacle): Shape {
  const isHidden = one.kind === 'wire' || one.kind === 'pipe';
  const { leftUm, bottomUm, widthUm, heightUm } = one;
  const place = { leftUm, bottomUm, widthUm, heightUm };
  return shape(isHidden ? 'inTheWall' : 'obstacle', obstacleNamed(one), place);
}

function spacerOf({ leftUm, bottomUm, widthUm }: Rectangle): Rectangle {
  const inset = Math.min(widthUm / 10, 50_000);
  return { leftUm: leftUm + inset, bottomUm, widthUm: widthUm - 2 * inset, heightUm: spacerUm };
}

function around(xUm: number, yUm: number): Rectangle {
  return {
    leftUm: xUm - holeUm / 2,
    bottomUm: yUm - holeUm / 2,
    widthUm: holeUm,
    heightUm: holeUm,
  };
}

function heightMeasures(plan: FixingPlan, ceilingUm: number, system: LengthSystem): Measure[] {
  const { piece, cleatUm } = plan.place;
  const up = (untilUm: number, rank: number, fromUm = 0): Measure => ({
    ...{ along: 'height', fromUm, untilUm, rank },
    words: formatLength(untilUm - fromUm, system),
  });
  return [
    up(topOf(piece), 0, piece.bottomUm),
    up(piece.bottomUm, 1),
    up(cleatUm, 2),
    up(topOf(piece), 3),
    up(ceilingUm, 4),
  ];
}

function lengthMeasures(plan: FixingPlan, system: LengthSystem): Measure[] {
  const { piece } = plan.place;
  const along = (fromUm: number, untilUm: number, rank: number): Measure => ({
    ...{ along: 'wall', fromUm, untilUm, rank },
    words: formatLength(untilUm - fromUm, system),
  });
  const middleUm = Math.round(piece.leftUm + piece.widthUm / 2);
  return [
    along(piece.leftUm, rightOf(piece), 0),
    along(0, piece.leftUm, 0),
    ...spans([0, ...plan.atUms]).map(([from, until]) => along(from, until, 1)),
    along(0, middleUm, 2),
  ];
}

function spans(at: readonly number[]): [number, number][] {
  return at.slice(1).map((until, place) => [at[place] ?? 0, until]);
}
