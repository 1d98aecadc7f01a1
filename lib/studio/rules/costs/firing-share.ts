import type { Cents } from '@/lib/money/rules';
import { coneNamed } from '@/lib/studio/rules/kilns/cones';
import { firingCostCents, roomOf } from '@/lib/studio/rules/kilns/energy';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';
import type { TurnTaken } from '@/lib/studio/rules/kilns/turns';
import type { PieceLying } from '../firings/lying';
import { layOnShelves } from '../firings/packing';
import { firingKindOf, forecastWh, startSchedule } from '../firings/schedule';
import type { Fraction } from './fraction';

/** A firing that was opened: what it cost, and the room of all that was in it, in cubic micrometres. */
export type FiredLoad = {
  readonly peg: string;
  readonly cone: string;
  readonly costCents: Cents;
  readonly room: bigint;
};

/** How many of the firings that were opened last are looked back at. */
export const loadsLookedBack = 6;

/** What of a firing falls to one piece, in exact cents, and in words how that was found. */
export type FiringPart = { readonly cents: Fraction; readonly words: string };

/** The room of one piece alone, in cubic micrometres. */
export function roomOfLying(lying: PieceLying): bigint {
  return roomOf({ pieces: 1, ...lying });
}

/** Of the room inside a kiln what is between its shelves, in cubic micrometres. */
function roomInside(kiln: KilnFacts): bigint {
  const freeUm = Math.max(1, kiln.insideHeightUm - kiln.shelves * kiln.shelfThickUm);
  return BigInt(kiln.shelfWidthUm) * BigInt(kiln.shelfDepthUm) * BigInt(freeUm);
}

/**
 * How many pieces of one size a full kiln holds; 0 for one that goes in only in parts.
 *
 * @source {@link layOnShelves}: what lies on one shelf, times the shelves that go in
 */
export function piecesALoad(kiln: KilnFacts, lying: PieceLying, roomAroundUm: number): number {
  const foot = (lying.widthUm + 2 * roomAroundUm) * (lying.depthUm + 2 * roomAroundUm);
  const most = Math.min(500, Math.floor((kiln.shelfWidthUm * kiln.shelfDepthUm) / foot));
  const copies = Array.from({ length: most }, (_each, at) => ({ ...lying, key: `${at}` }));
  const { shelves } = layOnShelves({ ...kiln, shelves: 1 }, copies, roomAroundUm);
  const onOne = shelves[0]?.pieces.length ?? 0;
  const each = kiln.shelfThickUm + lying.heightUm + roomAroundUm;
  return onOne * Math.min(kiln.shelves, Math.floor(kiln.insideHeightUm / each));
}

/**
 * The turns of a kiln that one piece takes at one firing: its part of a full load, or what its room
 * comes to where it goes in only in parts.
 */
export function turnsOfOne(kiln: KilnFacts, lying: PieceLying, roomAroundUm: number): TurnTaken[] {
  const holds = piecesALoad(kiln, lying, roomAroundUm);
  if (holds > 0) return [{ used: 1n, holds: BigInt(holds) }];
  const inside = roomInside(kiln);
  const room = roomOfLying(lying);
  const whole = Array.from({ length: Number(room / inside) }, () => ({ used: 1n, holds: 1n }));
  const rest = room % inside;
  return rest === 0n ? whole : [...whole, { used: rest, holds: inside }];
}

/** The kiln in which a piece is fired to a cone: the largest that goes so far; null when none does. */
export function kilnFor(kilns: readonly KilnFacts[], cone: string): KilnFacts | null {
  return kilns
    .filter(({ cones }) => cones.includes(cone))
    .reduce<KilnFacts | null>(
      (largest, kiln) => (largest && roomInside(largest) >= roomInside(kiln) ? largest : kiln),
      null,
    );
}

/**
 * What of a firing falls to one piece, by the room it takes: of what such firings cost last, or else
 * of one that is reckoned from the kiln's power, as full as the kiln is lit at least.
 *
 * @param loads opened firings, the last first
 * @returns null while no such firing was opened and no kiln goes to that cone
 * @source common practice: by volume; what stayed empty is borne by what was in it
 */
export function firingPart(
  step: { peg: string; cone: string },
  lying: PieceLying,
  studio: { kilns: readonly KilnFacts[]; loads: readonly FiredLoad[]; roomAroundUm: number },
): FiringPart | null {
  const { peg, cone } = step;
  const such = studio.loads
    .filter((load) => load.peg === firingKindOf(peg) && load.cone === cone && load.room > 0n)
    .slice(0, loadsLookedBack);
  if (such.length > 0) {
    const cost = such.reduce((sum, { costCents }) => sum + costCents, 0n);
    const room = such.reduce((sum, load) => sum + load.room, 0n);
    const last = such.length === 1 ? 'the last firing' : `the last ${such.length} firings`;
    return {
      cents: { over: cost * roomOfLying(lying), under: room },
      words: `of ${last} to cone ${cone}, by the room it takes`,
    };
  }
  return reckonedPart(step, lying, studio);
}

function reckonedPart(
  { peg, cone }: { peg: string; cone: string },
  lying: PieceLying,
  { kilns, roomAroundUm }: { kilns: readonly KilnFacts[]; roomAroundUm: number },
): FiringPart | null {
  const kiln = kilnFor(kilns, cone);
  const known = coneNamed(cone);
  if (!kiln || !known) return null;
  const taken = forecastWh(kiln.powerW, startSchedule(firingKindOf(peg), known));
  if (!taken.ok) return null;
  const { centsPerKwh, wearCents } = kiln;
  const cost = firingCostCents({ wattHours: taken.value, centsPerKwh, wearCents });
  if (!cost.ok) return null;
  const filled = BigInt(Math.max(10, kiln.leastFillPercent));
  const part = turnsOfOne(kiln, lying, roomAroundUm).reduce<Fraction>(
    (sum, { used, holds }) => ({
      over: sum.over * holds + used * sum.under,
      under: sum.under * holds,
    }),
    { over: 0n, under: 1n },
  );
  return {
    cents: { over: cost.value * part.over * 100n, under: part.under * filled },
    words: `of a firing to cone ${cone} reckoned from the power of ${kiln.name}, ${filled} of 100 full`,
  };
}
