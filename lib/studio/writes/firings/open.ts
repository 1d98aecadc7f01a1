import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { OpenKilnInput } from '@/lib/studio/input/opening';
import { loadFiring, type FiringTold } from '@/lib/studio/reads/firings/firing';
import {
  decideOpening,
  whatItTook,
  type CameOut,
  type LoadToOpen,
  type OpeningRefusal,
  type Outcome,
  type Taken,
} from '@/lib/studio/rules/firings/opening';
import { forecastWh } from '@/lib/studio/rules/firings/schedule';
import type { NotMovedRefusal } from '@/lib/studio/rules/firings/words';
import type { EnergyRefusal } from '@/lib/studio/rules/kilns/energy';
import { losePieces } from '../jobs/losing';
import { todayOf } from '../jobs/keep-move';
import { movePieces } from '../jobs/moving';
import { commandOf } from './to-change';

/** A kiln that was opened, and how many came out how. */
export type KilnOpened = { number: number; begunAnew: number } & Record<Outcome, number>;

type Refusal = OpeningRefusal | NotMovedRefusal;

/**
 * Opens a kiln that is cool and writes down how each piece came out. Good ones and seconds go on to
 * the next step, lost ones out of the job with their cause, and new ones are begun for them where
 * they are needed; what is fired again stays where it is.
 *
 * Of two people who open the same kiln at once, one opens it and the other is told.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideOpening}, meter readings that
 *   do not fit, pieces that cannot go on
 */
export async function openKiln(
  doer: Doer,
  input: OpenKilnInput,
): Promise<Result<KilnOpened, NotAllowed | Refusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...opening } = input;
  const command = commandOf(doer, 'openKiln', requestKey, opening);
  const limits = { timeoutMs: 60_000 };
  return onceOnly<KilnOpened, Refusal>(command, (tx) => open(tx, doer, opening), limits);
}

async function open(
  tx: Tx,
  doer: Doer,
  opening: Omit<OpenKilnInput, 'requestKey'>,
): Promise<Result<KilnOpened, Refusal>> {
  const firing = await loadFiring(tx, { id: opening.firingId });
  const came = decideOpening(firing && toOpen(firing), opening.readC, opening.told);
  if (!came.ok) return came;
  if (!firing || opening.readC === null) return refuse({ code: 'no_such_firing' });
  const taken = whatWasTaken(firing, opening.meterKwh);
  if (!taken.ok) return taken;
  const { readC: celsius, meterKwh, coneFell, firingId } = opening;
  const openedOn = dateFromDay(await todayOf(tx, doer));
  await tx.firingOpened.create({
    data: {
      ...{ firingId, openedOn, at: doer.at, celsius, meterKwh, coneFell, ...taken.value },
      staffId: doer.actor.id,
    },
  });
  let begunAnew = 0;
  for (const out of came.value) {
    const kept = await keepOut(tx, doer, firingId, out);
    if (!kept.ok) return kept;
    begunAnew += kept.value.begunAnew;
  }
  const opened = { number: firing.number, begunAnew, ...counted(came.value) };
  const { wattHours, isMetered, costCents } = taken.value;
  const facts = { ...opened, celsius, wattHours, isMetered, costCents };
  const did = 'opened a kiln';
  await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: firingId, facts });
  return ok(opened);
}

function toOpen(firing: FiringTold): LoadToOpen {
  const { number, stand, kiln, cool, lit, opened } = firing;
  return {
    ...{ number, stand, openBelowC: kiln.openBelowC, coolAt: cool?.at ?? null },
    by: opened?.by ?? lit?.by ?? 'Somebody',
    lines: firing.lines.map(({ id: lineId, jobId, jobNumber, title, position, pieces, parts }) => ({
      ...{ lineId, jobId, jobNumber, title, position, pieces },
      partIds: parts.map(({ partId }) => partId),
    })),
  };
}

function whatWasTaken(firing: FiringTold, afterKwh: string | null): Result<Taken, EnergyRefusal> {
  const { kiln, lit, schedule } = firing;
  const reckoned = forecastWh(kiln.powerW, schedule);
  if (!reckoned.ok) return reckoned;
  const { centsPerKwh, wearCents } = kiln;
  const beforeKwh = lit?.meterKwh ?? null;
  return whatItTook({ beforeKwh, afterKwh, reckonedWh: reckoned.value, centsPerKwh, wearCents });
}

/** Sends pieces that came out alike where they go, and writes down how they came out. */
async function keepOut(
  tx: Tx,
  doer: Doer,
  firingId: string,
  out: CameOut,
): Promise<Result<{ begunAnew: number }, NotMovedRefusal>> {
  const { line, outcome, pieces, cause, note } = out;
  const sent = await send(tx, doer, firingId, out);
  if (!sent.ok) return sent;
  const { moveId, begunAnew } = sent.value;
  await tx.firingResult.create({
    data: {
      ...{ lineId: line.lineId, outcome, pieces, cause, note, moveId },
      ...{ staffId: doer.actor.id, at: doer.at },
    },
  });
  return ok({ begunAnew });
}

type Sent = { moveId: bigint | null; begunAnew: number };

async function send(
  tx: Tx,
  doer: Doer,
  firingId: string,
  out: CameOut,
): Promise<Result<Sent, NotMovedRefusal>> {
  const { line, outcome, pieces, partIds, cause, note } = out;
  const { jobId, jobNumber, position: fromPosition } = line;
  if (outcome === 'fire_again') return ok({ moveId: null, begunAnew: 0 });
  const named = partIds.length > 0 ? { partIds } : {};
  const going = { jobId, fromPosition, pieces, firingId, ...named };
  if (outcome === 'lost') {
    const lost = await losePieces(tx, doer, { ...going, cause: cause ?? 'other', note });
    if (!lost.ok) return refuse({ code: 'loss_stays', jobNumber, why: lost.refusal });
    return ok({ moveId: BigInt(lost.value.undoId), begunAnew: lost.value.begunAnew });
  }
  const moved = await movePieces(tx, doer, going);
  if (!moved.ok) return refuse({ code: 'pieces_stay', jobNumber, why: moved.refusal });
  return ok({ moveId: BigInt(moved.value.undoId), begunAnew: 0 });
}

function counted(came: readonly CameOut[]): Record<Outcome, number> {
  const sum = (outcome: Outcome): number =>
    came.reduce((all, out) => all + (out.outcome === outcome ? out.pieces : 0), 0);
  return {
    good: sum('good'),
    second: sum('second'),
    fire_again: sum('fire_again'),
    lost: sum('lost'),
  };
}
