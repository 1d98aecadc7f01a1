import type { Doer } from '@/lib/access/rules';
import { addDays, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { loadJobToMove } from '@/lib/studio/reads/moving';
import { piecesAt } from '@/lib/studio/rules';
import { loseJobPieces, moveJobOn, openJob } from '@/lib/studio/writes';
import { done } from '@/seed/done';
import { pastJobs, type PastJob } from '@/seed/scenario/studio';
import type { SetUp } from '@/seed/set-up';
import { lightOnce, openOnce, type FiringToPlay } from './firings';
import { makerAgo } from './kilns';

type Demo = { today: Day; setUp: SetUp };

/** Plays what the studio made in the last months, one job after the other, through its kilns. */
export async function playPastJobs(demo: Demo, kilnId: string): Promise<void> {
  for (const past of pastJobs) await playPast(demo, kilnId, past);
}

async function playPast(demo: Demo, kilnId: string, past: PastJob): Promise<void> {
  const { title, technique, begun: pieces, wanted, daysAgo, size } = past;
  const on = (day: number, time: string) => makerAgo(demo, daysAgo - day, time);
  const opened = on(-1, '09:10');
  const { id: jobId } = done(
    await inTransaction((tx) => openJob(tx, opened, { title, technique, pieces, wanted, size })),
  );
  const steps = await db().jobStep.findMany({ where: { jobId }, orderBy: { position: 'asc' } });
  const dry = steps.findIndex((step) => step.kind === 'dry') + 1;
  await moveAll(jobId, 0, on(0, '10:00'));
  for (let position = 1; position < dry; position += 1) {
    await moveAll(jobId, position, on(1 + position, '15:00'));
  }
  if (past.cracked > 0) {
    const crack = { requestKey: newId(), jobId, fromPosition: dry, pieces: past.cracked };
    const why = { cause: 'dried_too_fast' as const, note: '' };
    done(await loseJobPieces(on(9, '09:30'), { ...crack, ...why }));
  }
  await moveAll(jobId, dry, on(18, '09:00'));
  const fire = (day: number, kind: 'bisque' | 'glaze', cone: string): FiringToPlay => ({
    ...{ kilnId, kind, cone, litOn: addDays(demo.today, day - daysAgo) },
    by: (hours) => later(on(day, '07:00'), hours),
  });
  const bisque = fire(19, 'bisque', '04');
  await openOnce(bisque, await lightOnce(bisque), { ...past.bisque, jobId });
  await moveAll(jobId, dry + 2, on(24, '16:00'));
  const glaze = fire(26, 'glaze', '6');
  await openOnce(glaze, await lightOnce(glaze), { ...past.glaze, jobId });
  for (let position = dry + 4; position <= steps.length; position += 1) {
    await moveAll(jobId, position, on(26 + position, '11:00'));
  }
}

/** Moves all pieces that stand at a position on to the next; none when none stands there. */
async function moveAll(jobId: string, fromPosition: number, doer: Doer): Promise<void> {
  const job = await loadJobToMove(db(), { id: jobId });
  const pieces = job ? (piecesAt(job, job.moves)[fromPosition] ?? 0) : 0;
  if (pieces === 0) return;
  done(await moveJobOn(doer, { requestKey: newId(), jobId, fromPosition, pieces }));
}

function later(doer: Doer, hours: number): Doer {
  return { ...doer, at: new Date(doer.at.getTime() + hours * 3_600_000) };
}
