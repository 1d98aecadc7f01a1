import { umPerInch } from '@/lib/units/rules';
import type { Place } from './place';
import { obstacleNamed, type Obstacle, type WallFacts } from './wall';

/** How far a fixing stays from the end of a cleat: 1 1/2 inches, common practice. */
export const fromEndUm = 38_100;
/** How far apart fixings along a cleat are at most where nothing else says it: 16 inches. */
const apartMostUm = 16 * umPerInch;
/** How far a hole stays from what has a wire or pipe behind it: 2 inches, common practice. */
const fromServicesUm = 2 * umPerInch;

/** The middles of all studs of a wall, from its left end; as far as it is known to reach. */
export function studsOf(wall: WallFacts, untilUm: number): number[] {
  const { studSpacingUm, firstStudUm } = wall;
  if (studSpacingUm === null || firstStudUm === null || studSpacingUm <= 0) return [];
  const many = Math.max(0, Math.floor((untilUm - firstStudUm) / studSpacingUm) + 1);
  return Array.from({ length: Math.min(many, 500) }, (_, at) => firstStudUm + at * studSpacingUm);
}

/** The studs a cleat meets, far enough from its ends to be screwed to. */
export function studsMet(wall: WallFacts, { cleat }: Place): number[] {
  const rightUm = cleat.leftUm + cleat.widthUm - fromEndUm;
  return studsOf(wall, rightUm).filter((atUm) => atUm >= cleat.leftUm + fromEndUm);
}

/**
 * Where so many fixings stand along a cleat: evenly, the outermost near its ends.
 *
 * @returns whole micrometres from the left end of the wall; none where two would be nearer than
 *   `leastApartUm`
 */
export function evenlyAlong({ cleat }: Place, many: number, leastApartUm: number): number[] {
  const reachUm = cleat.widthUm - 2 * fromEndUm;
  const apartUm = many > 1 ? reachUm / (many - 1) : reachUm;
  if (reachUm < 0 || (many > 1 && apartUm < leastApartUm)) return [];
  const firstUm = many > 1 ? cleat.leftUm + fromEndUm : cleat.leftUm + cleat.widthUm / 2;
  return Array.from({ length: many }, (_, at) => Math.round(firstUm + at * apartUm));
}

/** How few places along a cleat will do, so that it does not bend between them. */
export function fewestAlong({ cleat }: Place, least: number): number {
  const reachUm = Math.max(cleat.widthUm - 2 * fromEndUm, 0);
  return Math.max(least, Math.ceil(reachUm / apartMostUm) + 1);
}

/** A hole that may meet a wire or a pipe, and behind what. */
export type NearServices = { readonly atUm: number; readonly what: string };

/**
 * The holes that come too near to wires and pipes.
 *
 * Wires go straight up and down from outlets and switches, so the whole height beside one counts; a
 * wire or a pipe that was found counts where it is.
 *
 * @param heightUm of the holes above the floor
 * @source common practice
 */
export function nearServices(
  atUms: readonly number[],
  heightUm: number,
  obstacles: readonly Obstacle[],
): NearServices[] {
  return obstacles.flatMap((one) => {
    if (!bringsServices(one, heightUm)) return [];
    const [fromUm, untilUm] = [
      one.leftUm - fromServicesUm,
      one.leftUm + one.widthUm + fromServicesUm,
    ];
    return atUms
      .filter((atUm) => atUm >= fromUm && atUm <= untilUm)
      .map((atUm) => ({ atUm, what: obstacleNamed(one) }));
  });
}

function bringsServices(one: Obstacle, heightUm: number): boolean {
  if (one.kind === 'outlet' || one.kind === 'switch') return true;
  if (one.kind !== 'wire' && one.kind !== 'pipe') return false;
  const topUm = one.bottomUm + one.heightUm;
  return heightUm >= one.bottomUm - fromServicesUm && heightUm <= topUm + fromServicesUm;
}
