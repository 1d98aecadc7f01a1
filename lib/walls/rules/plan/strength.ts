import { umPerInch } from '@/lib/units/rules';
import { lateralLb, type Member } from '../fixings/lateral';
import { anchorFactor, bearsAtAngle, bevelPush, sharesOf, topRowPull } from '../fixings/loads';
import { cleatGravity, gravityOf, screws, threadIn } from '../fixings/screws';
import { loadDuration, pullThroughLb, wetService, withdrawalLbPerIn } from '../fixings/withdrawal';
import type { Cleat, FixingAsked, HangingAsked, PieceFacts } from './asked';
import type { Candidate } from './candidates';
import type { WallFacts } from './wall';

const gramsPerPound = 453.59237;
/**
 * What a rail of aluminium bears under a screw: 2.2 times its tensile strength of 22 ksi, divided
 * by 1.6 as the wood standard does for cold-formed steel; from memory.
 */
const railBearingPsi = 30_250;

/** What the most heavily laden fixing has to bear, in grams of weight; not rounded. */
export type Load = {
  readonly pushG: number;
  readonly pullG: number;
  readonly togetherG: number;
};

/** What one fixing may bear in the direction of its load, and how many times over that is. */
export type Strength = {
  readonly load: Load;
  readonly bearsG: number;
  readonly factor: number;
  /** What it bears pulled straight out, and sideways, each alone. */
  readonly pullG: number;
  readonly pushG: number;
};

/**
 * What the fixing that bears most has to bear.
 *
 * The weight is shared by the uprights as a stiff cleat shares it. It pushes down, and it pulls off
 * the wall: because it stands off it, which the top row alone takes, or because a bevelled cleat
 * wedges it off, whichever is more.
 *
 * @source plain statics
 */
export function loadOf(candidate: Candidate, piece: PieceFacts, asked: HangingAsked): Load {
  const { cleat, middleUm } = asked;
  const most = Math.max(...sharesOf(candidate.atUms, middleUm));
  const pushG = (piece.weightG * most) / candidate.rows;
  const prise = topRowPull({
    weight: piece.weightG,
    outBy: cleat.thicknessUm + piece.depthUm / 2,
    downBy: piece.heightUm - cleat.fromTopUm,
  });
  const wedge = bevelPush(piece.weightG, cleat.bevelDeg) / candidate.rows;
  const pullG = Math.max(prise, wedge) * most;
  return { pushG, pullG, togetherG: Math.hypot(pushG, pullG) };
}

/** How far a screw goes into what holds it, in micrometres; below zero when it does not reach it. */
export function inWoodUm(wall: WallFacts, { cleat }: HangingAsked, lengthUm: number): number {
  return lengthUm - cleat.thicknessUm - (wall.coverUm ?? 0);
}

/** How strong the most heavily laden fixing of a candidate is. */
export function strengthOf(
  candidate: Candidate,
  of: { wall: WallFacts; piece: PieceFacts; asked: HangingAsked },
): Strength {
  const load = loadOf(candidate, of.piece, of.asked);
  const { fixing } = of.asked;
  if (fixing.by === 'anchor') {
    const factor = anchorFactor(
      { pull: fixing.ratedPullG, push: fixing.ratedPushG },
      { pull: load.pullG, push: load.pushG },
    );
    const alone = { pullG: fixing.ratedPullG, pushG: fixing.ratedPushG };
    return { load, factor, bearsG: factor * load.togetherG, ...alone };
  }
  const bears = screwBears(of.wall, of.asked, fixing);
  const bearsG = bearsAtAngle(
    { pull: bears.pullG, push: bears.pushG },
    { pull: load.pullG, push: load.pushG },
  );
  return { load, bearsG, factor: bearsG / load.togetherG, ...bears };
}

/**
 * What one screw bears pulled straight out, and sideways, under a load that stays.
 *
 * @returns grams
 * @source AWC NDS 2018, chapter 12, for a permanent load (0.9), and in the wet (0.7, from memory)
 */
export function screwBears(
  wall: WallFacts,
  asked: HangingAsked,
  fixing: Extract<FixingAsked, { by: 'screw' }>,
): { pullG: number; pushG: number } {
  const screw = screws[fixing.screw];
  const backing = asked.backingUm;
  const gravity = backing === null ? gravityOf(wall.studWood) : cleatGravity;
  const sunkUm = inWoodUm(wall, asked, fixing.lengthUm);
  const deepIn = inches(backing === null ? sunkUm : Math.min(sunkUm, backing));
  const tipIn = screw.diameterIn;
  const holdingIn = Math.max(deepIn - tipIn, 0);
  const thread = Math.min(holdingIn, Math.max(threadIn(screw, inches(fixing.lengthUm)) - tipIn, 0));
  const lasting = loadDuration.permanent * (wall.isOutdoors === true ? wetService : 1);
  const out = Math.min(
    withdrawalLbPerIn({ kind: screw.kind, diameterIn: screw.diameterIn, gravity }) * thread,
    throughTheCleat(asked.cleat, screw.headIn),
  );
  const main: Member = { gravity, grain: 'along', lengthIn: holdingIn };
  const side = sideOf(asked.cleat);
  const aside = lateralLb({ screw, main, side, gapIn: inches(wall.coverUm ?? 0) }).loadLb;
  return { pullG: out * lasting * gramsPerPound, pushG: aside * lasting * gramsPerPound };
}

function sideOf({ made, thicknessUm }: Cleat): Member {
  const lengthIn = inches(thicknessUm);
  return made === 'aluminium'
    ? { bearingPsi: railBearingPsi, lengthIn }
    : { gravity: cleatGravity, grain: 'across', lengthIn };
}

/** At what the head comes through the cleat; a rail has its own rating. */
function throughTheCleat({ made, thicknessUm }: Cleat, headIn: number): number {
  if (made === 'aluminium') return Infinity;
  return pullThroughLb({ headIn, gravity: cleatGravity, thicknessIn: inches(thicknessUm) });
}

function inches(um: number): number {
  return um / umPerInch;
}
