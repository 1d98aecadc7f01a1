import { course, from, type Level, type Pen, type Spot } from '../pen';

/** A leaf's place and shape: from its stalk, in a direction in degrees, so long and so wide. */
export type Leaf = Readonly<{
  at: Spot;
  turn: number;
  long: number;
  wide: number;
  height: number;
  zone?: number;
  /** How far it bends to its side, in degrees over its length. */
  bend?: number;
}>;

/** Below this length a leaf is too small to show how its halves lean. */
const small = 45;

/** A leaf of two halves that lean away from its midrib. */
export function leaf(pen: Pen, { at, turn, long, wide, height, zone = 1, bend = 0 }: Leaf): void {
  const spine = [0, 0.25, 0.5, 0.75, 1].map((along) =>
    from(at, turn + bend * along * 0.5, long * along),
  );
  const swell = [0.06, 0.82, 1, 0.66, 0];
  const side = (way: 1 | -1): Spot[] =>
    spine.map((spot, step) =>
      from(spot, turn + bend * 0.5 + 90 * way, (wide / 2) * (swell[step] ?? 0)),
    );
  const tip = spine.at(-1) ?? at;
  const middle = spine[2] ?? at;
  for (const way of [1, -1] as const) {
    const edge = side(way);
    const half = `${course([...edge])}L${course([...spine].reverse()).slice(1)}Z`;
    const drop = way === 1 ? 0.72 : 0.5;
    if (long < small) {
      pen.fill(half, { height: height * (way === 1 ? 0.92 : 0.7), zone });
      continue;
    }
    const outer = from(middle, turn + bend * 0.5 + 90 * way, wide / 2);
    pen.lean(half, [middle, outer], { height, zone }, { height: height * drop, zone });
  }
  if (long < small) return;
  pen.line(course(spine), Math.max(1.5, wide * 0.05), { height: height * 0.52, zone });
  pen.line(`M${tip[0]} ${tip[1]}L${tip[0]} ${tip[1]}`, 2, { height: height * 0.6, zone });
}

/** A stem that swells towards its foot. */
export function stem(
  pen: Pen,
  spots: readonly Spot[],
  widths: readonly [foot: number, tip: number],
  level: Level,
): void {
  const steps = spots.length;
  pen.line(course(spots), widths[1], level);
  for (let kept = steps - 1; kept > 1; kept -= 1) {
    const width = widths[1] + (widths[0] - widths[1]) * (1 - kept / steps);
    pen.line(course(spots.slice(0, kept)), width, level);
  }
}

/** Points along a bending line, evenly stepped: for fronds, twigs and kelp. */
export function bending(
  at: Spot,
  turn: number,
  long: number,
  bend: readonly [early: number, late: number],
): Spot[] {
  const spots: Spot[] = [at];
  let here = at;
  let way = turn;
  for (let step = 0; step < 12; step += 1) {
    here = from(here, way, long / 12);
    way += (step < 6 ? bend[0] : bend[1]) / 12;
    spots.push(here);
  }
  return spots;
}

/** The direction of a line at one of its spots, in degrees. */
export function headingAt(spots: readonly Spot[], step: number): number {
  const here = spots[Math.max(0, step - 1)] ?? [0, 0];
  const there = spots[Math.min(spots.length - 1, step + 1)] ?? [1, 0];
  return (Math.atan2(there[1] - here[1], there[0] - here[0]) * 180) / Math.PI;
}

/** A spot between the spots of a line; `along` from 0 to 1. */
export function along(spots: readonly Spot[], share: number): Spot {
  const place = share * (spots.length - 1);
  const step = Math.min(Math.floor(place), spots.length - 2);
  const [ax, ay] = spots[step] ?? [0, 0];
  const [bx, by] = spots[step + 1] ?? [0, 0];
  const t = place - step;
  return [ax + (bx - ax) * t, ay + (by - ay) * t];
}
