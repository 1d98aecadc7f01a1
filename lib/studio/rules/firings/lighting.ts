import { ok, refuse, type Result } from '@/lib/platform/result';
import type { DriedShort } from './dried';
import { mayChangeLoad, type FiringToChange, type StandRefusal } from './planning';

/** Pieces of a load that dried too short, and whose they are. */
export type TooFresh = DriedShort & { jobNumber: number; title: string };

/** A line of a load, with how many of its pieces still stand there and in no lit kiln. */
export type LineToLight = {
  jobNumber: number;
  title: string;
  pieces: number;
  free: number;
  /** False where a part of it has gone elsewhere. */
  partsAreThere: boolean;
};

/** Why a kiln was not lit. */
export type LightRefusal =
  | StandRefusal
  | { code: 'nothing_laid_in'; number: number }
  | { code: 'kiln_burns'; kiln: string; number: number; by: string }
  | { code: 'pieces_gone'; jobNumber: number; title: string; free: number; pieces: number }
  | { code: 'are_they_dry'; tooFresh: readonly TooFresh[] };

/** What is known of a load when somebody wants to light it. */
export type LoadToLight = FiringToChange & {
  kiln: string;
  lines: readonly LineToLight[];
  /** Another firing that burns in this kiln; null while it is free. */
  burning: { number: number; by: string } | null;
  tooFresh: readonly TooFresh[];
};

/**
 * Decides whether a kiln is lit.
 *
 * @param saidOfDry what a person answered when asked whether the pieces are bone dry
 * @returns what is kept of the answer, empty where nothing was asked; refuses, in this order: no
 *   such firing, called off, lit, opened, nothing in it, another load burns in that kiln, pieces
 *   that are no longer there, pieces that dried too short without a word about them
 * @source common practice: one load in a kiln, and only bone-dry ware
 */
export function decideLight(
  load: LoadToLight | null,
  saidOfDry: string,
): Result<{ saidOfDry: string }, LightRefusal> {
  const mayBe = mayChangeLoad(load);
  if (!mayBe.ok) return mayBe;
  if (!load) return refuse({ code: 'no_such_firing' });
  const { number, kiln, lines, burning, tooFresh } = load;
  if (lines.length === 0) return refuse({ code: 'nothing_laid_in', number });
  if (burning) return refuse({ code: 'kiln_burns', kiln, ...burning });
  const gone = lines.find((line) => line.pieces > line.free || !line.partsAreThere);
  if (gone) {
    const { jobNumber, title, free, pieces } = gone;
    return refuse({ code: 'pieces_gone', jobNumber, title, free, pieces });
  }
  if (tooFresh.length === 0) return ok({ saidOfDry: '' });
  if (saidOfDry.trim() === '') return refuse({ code: 'are_they_dry', tooFresh });
  return ok({ saidOfDry: saidOfDry.trim() });
}

/** Why a reading was not written down. */
export type ReadingRefusal =
  | { code: 'no_such_firing' }
  | { code: 'not_lit_yet'; number: number }
  | { code: 'opened_already'; number: number; by: string }
  | { code: 'before_it_was_lit' }
  | { code: 'not_read_yet' };

/**
 * Decides whether what a kiln read is written down.
 *
 * @param at when it was read
 * @param now the instant at which it is written down
 * @returns refuses, in this order: no such firing, opened, not lit, a time before it was lit, a time
 *   that has not come
 */
export function decideReading(
  firing: (FiringToChange & { litAt: Date | null }) | null,
  at: Date,
  now: Date,
): Result<true, ReadingRefusal> {
  if (!firing) return refuse({ code: 'no_such_firing' });
  const { number, by, litAt } = firing;
  if (firing.stand === 'opened') return refuse({ code: 'opened_already', number, by });
  if (firing.stand !== 'lit' || !litAt) return refuse({ code: 'not_lit_yet', number });
  if (at < litAt) return refuse({ code: 'before_it_was_lit' });
  if (at > now) return refuse({ code: 'not_read_yet' });
  return ok(true);
}
