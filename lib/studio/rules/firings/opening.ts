import { ok, refuse, type Result } from '@/lib/platform/result';
import type { LossCause } from '@/lib/studio/rules';
import { firingCostCents, meteredWh, type EnergyRefusal } from '@/lib/studio/rules/kilns/energy';
import { mayOpen, type OpenRefusal as StaysShut } from '@/lib/studio/rules/kilns/firing';
import type { FiringToChange } from './planning';

/** How pieces can come out of a kiln. */
export const outcomes = ['good', 'second', 'fire_again', 'lost'] as const;
/** One of {@link outcomes}. */
export type Outcome = (typeof outcomes)[number];

/** Each outcome in words, for a form and a history. */
export const outcomeWords: Readonly<Record<Outcome, string>> = {
  good: 'good',
  second: 'seconds',
  fire_again: 'to fire again',
  lost: 'lost',
};

/** So many pieces that came out so: `1 second`, `3 seconds`, `2 to fire again`. */
export function outcomeCount(pieces: number, outcome: Outcome): string {
  const words = outcome === 'second' && pieces === 1 ? 'second' : outcomeWords[outcome];
  return `${pieces} ${words}`;
}

/** How the pieces of one line came out, as it was told; what was not told came out good. */
export type LineTold = {
  readonly lineId: string;
  readonly second: number;
  readonly fireAgain: number;
  readonly lost: number;
  /** Parts by how they came out; empty where the pieces are alike. */
  readonly parts: readonly { readonly partId: string; readonly outcome: Outcome }[];
  readonly cause: LossCause | null;
  readonly note: string;
};

/** A line of an opened load. */
export type LineInside = {
  readonly lineId: string;
  readonly jobId: string;
  readonly jobNumber: number;
  readonly title: string;
  readonly position: number;
  readonly pieces: number;
  readonly partIds: readonly string[];
};

/** Pieces of a line that came out alike, to be written down. */
export type CameOut = {
  readonly line: LineInside;
  readonly outcome: Outcome;
  readonly pieces: number;
  readonly partIds: readonly string[];
  readonly cause: LossCause | null;
  readonly note: string;
};

/** Why a kiln was not opened. */
export type OpeningRefusal =
  | { code: 'no_such_firing' }
  | { code: 'not_lit_yet'; number: number }
  | { code: 'opened_already'; number: number; by: string }
  | (StaysShut & { coolAt: Date | null })
  | EnergyRefusal
  | { code: 'do_not_add_up'; jobNumber: number; title: string; pieces: number; told: number }
  | { code: 'lost_without_cause'; jobNumber: number; title: string }
  | { code: 'say_what_was_seen'; jobNumber: number; title: string };

/** What is known of a load when somebody wants to open it. */
export type LoadToOpen = FiringToChange & {
  openBelowC: number;
  /** When it will be cool, for whoever is too early. */
  coolAt: Date | null;
  lines: readonly LineInside[];
};

/**
 * Decides whether a kiln is opened, and how each piece came out.
 *
 * @param readC what it reads before the lid is lifted; null when nobody has looked
 * @returns what to write down of each line, in their order, only outcomes that pieces had; refuses,
 *   in this order: no such firing, opened, not lit, not read or too hot, then by line: more told
 *   than there were, lost without a cause, something else without a word of what
 */
export function decideOpening(
  load: LoadToOpen | null,
  readC: number | null,
  told: readonly LineTold[],
): Result<CameOut[], OpeningRefusal> {
  if (!load) return refuse({ code: 'no_such_firing' });
  const { number, by } = load;
  if (load.stand === 'opened') return refuse({ code: 'opened_already', number, by });
  if (load.stand !== 'lit') return refuse({ code: 'not_lit_yet', number });
  const open = mayOpen(readC, load.openBelowC);
  if (!open.ok) return refuse({ ...open.refusal, coolAt: load.coolAt });
  const came: CameOut[] = [];
  for (const line of load.lines) {
    const out = lineCameOut(
      line,
      told.find(({ lineId }) => lineId === line.lineId),
    );
    if (!out.ok) return out;
    came.push(...out.value);
  }
  return ok(came);
}

function lineCameOut(
  line: LineInside,
  told: LineTold | undefined,
): Result<CameOut[], OpeningRefusal> {
  const { jobNumber, title, pieces } = line;
  const notGood = told ? countsOf(line, told) : { second: 0, fire_again: 0, lost: 0 };
  const sum = notGood.second + notGood.fire_again + notGood.lost;
  if (sum > pieces) return refuse({ code: 'do_not_add_up', jobNumber, title, pieces, told: sum });
  const cause = told?.cause ?? null;
  const note = told?.note.trim() ?? '';
  if (notGood.lost > 0 && cause === null) {
    return refuse({ code: 'lost_without_cause', jobNumber, title });
  }
  if (notGood.lost > 0 && cause === 'other' && note === '') {
    return refuse({ code: 'say_what_was_seen', jobNumber, title });
  }
  const counts: Record<Outcome, number> = { good: pieces - sum, ...notGood };
  return ok(
    outcomes.flatMap((outcome) => {
      if (counts[outcome] === 0) return [];
      const partIds = partsOf(line, told, outcome);
      const isLost = outcome === 'lost';
      const said = { cause: isLost ? cause : null, note: outcome === 'good' ? '' : note };
      return [{ line, outcome, pieces: counts[outcome], partIds, ...said }];
    }),
  );
}

function countsOf(line: LineInside, told: LineTold): Record<Exclude<Outcome, 'good'>, number> {
  if (line.partIds.length === 0) {
    return { second: told.second, fire_again: told.fireAgain, lost: told.lost };
  }
  return {
    second: partsOf(line, told, 'second').length,
    fire_again: partsOf(line, told, 'fire_again').length,
    lost: partsOf(line, told, 'lost').length,
  };
}

/** The parts of a line that came out so; a part of which nothing was told came out good. */
function partsOf(line: LineInside, told: LineTold | undefined, outcome: Outcome): string[] {
  const outcomeOf = new Map(told?.parts.map((part) => [part.partId, part.outcome]));
  return line.partIds.filter((id) => (outcomeOf.get(id) ?? 'good') === outcome);
}

/** What a firing took and cost. */
export type Taken = { wattHours: number; isMetered: boolean; costCents: bigint };

/**
 * What a firing took and cost: by the meter where it was read before and after, or else as it was
 * reckoned from the schedule.
 *
 * @param of meter readings in kWh as decimal strings, null where nobody looked; `reckonedWh` whole
 *   watt-hours; the rate in cents a kWh as a decimal string
 * @returns refuses what is no reading, a meter that runs backwards, what is no rate
 */
export function whatItTook(of: {
  beforeKwh: string | null;
  afterKwh: string | null;
  reckonedWh: number;
  centsPerKwh: string;
  wearCents: bigint;
}): Result<Taken, EnergyRefusal> {
  const { beforeKwh, afterKwh, reckonedWh, centsPerKwh, wearCents } = of;
  const metered = beforeKwh !== null && afterKwh !== null ? meteredWh(beforeKwh, afterKwh) : null;
  if (metered && !metered.ok) return metered;
  const wattHours = metered?.ok ? metered.value : reckonedWh;
  const cost = firingCostCents({ wattHours, centsPerKwh, wearCents });
  if (!cost.ok) return cost;
  return ok({ wattHours, isMetered: metered !== null, costCents: cost.value });
}
