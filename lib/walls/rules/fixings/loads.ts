/** How a piece hangs on its top row of fixings; any unit of weight and length, the same throughout. */
export type TopRow = {
  readonly weight: number;
  /** From the wall to the middle of the weight. */
  readonly outBy: number;
  /** From the top row to where the piece rests against the wall below. */
  readonly downBy: number;
};

/**
 * With what the weight, standing off the wall, pulls the top row away from it, all of it together.
 *
 * @source plain statics: moments about the lower edge, T = W e ÷ h
 * @example 120 lb, 3 in off the wall, 24 in above the lower edge // 15 lb
 */
export function topRowPull({ weight, outBy, downBy }: TopRow): number {
  return (weight * outBy) / downBy;
}

/**
 * With what a bevelled cleat is pushed off the wall: the weight slides down its bevel and wedges it
 * outwards. Friction, which helps, is left out.
 *
 * @param bevelDeg the bevel out of the level: 0 for a level rail or hooks, 45 for the usual cleat
 * @source plain statics
 * @example 100 lb on 45 degrees // 100 lb
 */
export function bevelPush(weight: number, bevelDeg: number): number {
  return weight * Math.tan((bevelDeg * Math.PI) / 180);
}

/**
 * How a weight is shared over uprights that do not stand evenly about its middle; a stiff cleat.
 *
 * @param at where the uprights are, and where the middle of the weight is, along the wall
 * @returns a share for each upright, together the whole; below zero where the middle lies outside
 * @source plain statics of a stiff beam on equal springs
 * @example one at 0 and one at 40, the middle at 10 // 0.75 and 0.25
 */
export function sharesOf(at: readonly number[], middle: number): number[] {
  const mean = at.reduce((sum, one) => sum + one, 0) / at.length;
  const spread = at.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return at.map((one) => {
    const lean = spread === 0 ? 0 : ((middle - mean) * (one - mean)) / spread;
    return 1 / at.length + lean;
  });
}

/**
 * What a screw bears when it is pulled and pushed at once.
 *
 * @param bears what it bears pulled straight out, and sideways
 * @param load its pull and its push, in the same unit
 * @returns along the direction of the two together
 * @source AWC NDS 2018, section 12.4.1: W Z ÷ (W cos² + Z sin²), the angle between the load and the
 *   face of the wood
 * @example bears 200 and 100, pulled and pushed alike // 133: between the two
 */
export function bearsAtAngle(
  bears: { pull: number; push: number },
  load: { pull: number; push: number },
): number {
  const whole = load.pull ** 2 + load.push ** 2;
  if (whole === 0) return Math.min(bears.pull, bears.push);
  const [sin2, cos2] = [load.pull ** 2 / whole, load.push ** 2 / whole];
  return (bears.pull * bears.push) / (bears.pull * cos2 + bears.push * sin2);
}

/**
 * How many times over a rated anchor bears what pulls and pushes it: both together, in a straight
 * line, which is on the safe side.
 *
 * @param rated what its maker rates it for, pulled and pushed
 * @source common practice for anchors
 * @example rated 400 and 400, loaded with 50 and 50 // 4
 */
export function anchorFactor(
  rated: { pull: number; push: number },
  load: { pull: number; push: number },
): number {
  return 1 / (load.pull / rated.pull + load.push / rated.push);
}
