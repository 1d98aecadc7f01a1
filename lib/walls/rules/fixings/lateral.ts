import type { Screw } from './screws';

/** The grain a fixing presses on: along it, or across it. */
export type Grain = 'along' | 'across';

/** A member that a screw presses sideways on. */
export type Member =
  | { readonly gravity: number; readonly grain: Grain; readonly lengthIn: number }
  | { readonly bearingPsi: number; readonly lengthIn: number };

/** A screw that is pushed sideways, through a side member into a main one; inches. */
export type Sheared = {
  readonly screw: Screw;
  /** What the screw sits in, and how far. */
  readonly main: Member;
  /** What it holds: the cleat. */
  readonly side: Member;
  /** What lies between them and bears nothing: the board on the studs. */
  readonly gapIn: number;
};

/** The ways a joint gives way: wood crushed, the screw turned, bent once, or bent twice. */
export type YieldMode = 'Im' | 'Is' | 'II' | 'IIIm' | 'IIIs' | 'IV';

/** What a screw bears sideways, in pounds, and the way it would give way first. */
export type Lateral = { readonly loadLb: number; readonly mode: YieldMode };

const quarterIn = 0.25;

/**
 * What a screw bears sideways, before the time the load lies on it.
 *
 * The general dowel equations, which with nothing between the members are the yield limit equations
 * of the wood standard; the board on the studs counts as a gap, which is on the safe side.
 *
 * @source AWC NDS 2018, tables 12.3.1A, 12.3.1B and 12.3.3, and AWC Technical Report 12
 * @example a No. 10 wood screw through 1/2 in into Douglas fir, nothing between // 90 lb
 */
export function lateralLb(joint: Sheared): Lateral {
  const modes = Object.entries(modesOf(joint)).map(([mode, force]) => ({
    mode: yieldModeOf(mode),
    loadLb: force / reductionOf(joint, yieldModeOf(mode)),
  }));
  return modes.reduce((weakest, one) => (one.loadLb < weakest.loadLb ? one : weakest));
}

const modeNames: readonly YieldMode[] = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'];

function yieldModeOf(text: string): YieldMode {
  return modeNames.find((mode) => mode === text) ?? 'IV';
}

/** The force at which each way begins, in pounds. */
function modesOf({ screw, main, side, gapIn }: Sheared): Record<YieldMode, number> {
  const { rootIn, diameterIn, yieldPsi } = screw;
  const inMain = bearingPsi(main, diameterIn) * rootIn;
  const inSide = bearingPsi(side, diameterIn) * rootIn;
  const bend = (yieldPsi * rootIn ** 3) / 6;
  const [mainIn, sideIn] = [main.lengthIn, side.lengthIn];
  const crushed = { main: (inMain * mainIn ** 2) / 4, side: (inSide * sideIn ** 2) / 4 };
  return {
    Im: inMain * mainIn,
    Is: inSide * sideIn,
    II: rootOf(
      1 / (4 * inSide) + 1 / (4 * inMain),
      sideIn / 2 + gapIn + mainIn / 2,
      crushed.side + crushed.main,
    ),
    IIIm: rootOf(1 / (2 * inSide) + 1 / (4 * inMain), gapIn + mainIn / 2, bend + crushed.main),
    IIIs: rootOf(1 / (4 * inSide) + 1 / (2 * inMain), sideIn / 2 + gapIn, bend + crushed.side),
    IV: rootOf(1 / (2 * inSide) + 1 / (2 * inMain), gapIn, 2 * bend),
  };
}

/** The force P for which a P² + b P is c. */
function rootOf(a: number, b: number, c: number): number {
  return (Math.sqrt(b * b + 4 * a * c) - b) / (2 * a);
}

function bearingPsi(member: Member, diameterIn: number): number {
  if ('bearingPsi' in member) return member.bearingPsi;
  const { gravity, grain } = member;
  if (diameterIn < quarterIn) return toFifty(16_600 * gravity ** 1.84);
  return grain === 'along'
    ? toFifty(11_200 * gravity)
    : toFifty((6_100 * gravity ** 1.45) / Math.sqrt(diameterIn));
}

/** The bearing strengths are tabled to 50 psi. */
function toFifty(psi: number): number {
  return Math.round(psi / 50) * 50;
}

/** By what the force of a mode is divided to be allowed. */
function reductionOf({ screw, main, side }: Sheared, mode: YieldMode): number {
  const { rootIn, diameterIn } = screw;
  const across = isAcross(main) || isAcross(side) ? 1.25 : 1;
  if (rootIn < quarterIn) {
    const thin = rootIn <= 0.17 ? 2.2 : 10 * rootIn + 0.5;
    return diameterIn < quarterIn ? thin : thin * across;
  }
  if (mode === 'Im' || mode === 'Is') return 4 * across;
  return (mode === 'II' ? 3.6 : 3.2) * across;
}

function isAcross(member: Member): boolean {
  return 'grain' in member && member.grain === 'across';
}
