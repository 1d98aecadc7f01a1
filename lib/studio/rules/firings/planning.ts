import { ok, refuse, type Result } from '@/lib/platform/result';
import { coneNamed } from '@/lib/studio/rules/kilns/cones';
import type { FiringRefusal } from '@/lib/studio/rules/kilns/firing';

/** How far a firing has come. */
export type FiringStand = 'planned' | 'lit' | 'opened' | 'called_off';

/** Why a firing was not planned. */
export type PlanRefusal =
  | { code: 'no_such_kiln' }
  | { code: 'kiln_is_retired'; kiln: string }
  | { code: 'cone_not_fired_here'; kiln: string; cone: string; cones: readonly string[] }
  | { code: 'nothing_waits'; cone: string };

/** Why a load that is planned was not changed. */
export type StandRefusal =
  | { code: 'no_such_firing' }
  | { code: 'called_off_already'; number: number }
  | { code: 'lit_already'; number: number; by: string }
  | { code: 'opened_already'; number: number; by: string };

/** Why pieces were not laid into a load. */
export type LineRefusal =
  | StandRefusal
  | { code: 'waits_for_something_else'; cone: string }
  | { code: 'too_many'; jobNumber: number; free: number; wanted: number }
  | { code: 'size_not_known'; jobNumber: number }
  | { code: 'say_which_parts_go'; jobNumber: number }
  | { code: 'parts_not_there'; jobNumber: number };

/** Why a schedule was not kept. */
export type ScheduleRefusal = StandRefusal | FiringRefusal;

/** What is known of a kiln when a firing is planned in it. */
export type KilnToPlan = { name: string; cones: readonly string[]; isRetired: boolean };

/**
 * Decides whether a firing may be planned in a kiln.
 *
 * @returns the cone as it is called; refuses, in this order: no such kiln, it is no longer used, it
 *   is not fired to that cone
 */
export function decidePlan(kiln: KilnToPlan | null, cone: string): Result<string, PlanRefusal> {
  if (!kiln) return refuse({ code: 'no_such_kiln' });
  if (kiln.isRetired) return refuse({ code: 'kiln_is_retired', kiln: kiln.name });
  const named = coneNamed(cone);
  if (!named || !kiln.cones.includes(named)) {
    return refuse({ code: 'cone_not_fired_here', kiln: kiln.name, cone, cones: kiln.cones });
  }
  return ok(named);
}

/** A firing, as far as it says whether its load may still be changed. */
export type FiringToChange = {
  number: number;
  stand: FiringStand;
  /** Who lit it or opened it last; empty while nobody did. */
  by: string;
};

/**
 * Whether what lies in a load may still be changed: until it is lit.
 *
 * @returns refuses, in this order: no such firing, called off, lit, opened
 */
export function mayChangeLoad(firing: FiringToChange | null): Result<true, StandRefusal> {
  if (!firing) return refuse({ code: 'no_such_firing' });
  const { number, by } = firing;
  switch (firing.stand) {
    case 'called_off':
      return refuse({ code: 'called_off_already', number });
    case 'lit':
      return refuse({ code: 'lit_already', number, by });
    case 'opened':
      return refuse({ code: 'opened_already', number, by });
    case 'planned':
      return ok(true);
  }
}

/** Pieces of a job at a firing step, as a line of a load is decided from them. */
export type ToLayIn = {
  jobNumber: number;
  /** How many stand there, in no lit kiln and in no other load. */
  free: number;
  /** Parts of a numbered drawing that stand there free; empty where the job has none. */
  freePartIds: readonly string[];
  hasParts: boolean;
  hasSize: boolean;
};

/** What of a job goes into a load. */
export type LineWanted = { pieces: number; partIds: readonly string[]; hasSize: boolean };

/**
 * Decides what of a job is laid into a load. All free parts of a numbered drawing are meant when
 * none is named and as many are asked for.
 *
 * @param there null where no pieces of that job wait for this cone there
 * @returns the pieces and the parts; refuses, in this order: they wait for something else, more
 *   than are free, nobody said which parts, parts that are not there, a size that nobody knows
 */
export function decideLine(
  there: ToLayIn | null,
  wanted: LineWanted,
  cone: string,
): Result<{ pieces: number; partIds: readonly string[] }, LineRefusal> {
  if (!there) return refuse({ code: 'waits_for_something_else', cone });
  const { jobNumber, free } = there;
  const named = new Set(wanted.partIds);
  const pieces = there.hasParts && named.size > 0 ? named.size : wanted.pieces;
  if (pieces > free) return refuse({ code: 'too_many', jobNumber, free, wanted: pieces });
  const partIds = partsMeant(there, named, pieces);
  if (!partIds.ok) return partIds;
  if (!wanted.hasSize && !there.hasSize) return refuse({ code: 'size_not_known', jobNumber });
  return ok({ pieces, partIds: partIds.value });
}

function partsMeant(
  { jobNumber, hasParts, freePartIds }: ToLayIn,
  named: ReadonlySet<string>,
  pieces: number,
): Result<readonly string[], LineRefusal> {
  if (!hasParts) return ok([]);
  if (named.size === 0) {
    return pieces === freePartIds.length
      ? ok(freePartIds)
      : refuse({ code: 'say_which_parts_go', jobNumber });
  }
  const areThere = [...named].every((id) => freePartIds.includes(id));
  return areThere ? ok([...named]) : refuse({ code: 'parts_not_there', jobNumber });
}
