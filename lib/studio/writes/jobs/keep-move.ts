import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { getGallery } from '@/lib/platform/settings';
import { outside, placeName, type LossCause } from '@/lib/studio/rules';
import type { JobToMove } from '@/lib/studio/reads/moving';

/** What happened to pieces; `undoId` takes it back. */
export type Moved = {
  undoId: string;
  jobNumber: number;
  pieces: number;
  toName: string;
  toPosition: number;
};

/** A move to write down; what it is of is told by what is named. */
export type MoveToKeep = {
  job: JobToMove;
  fromPosition: number;
  toPosition: number;
  pieces: number;
  partIds: readonly string[];
  cause?: LossCause;
  note?: string;
  makesGoodId?: bigint;
  firingId?: string | undefined;
  undoesId?: bigint;
};

/** Writes a move down with the parts that went and an audit line. */
export async function keepMove(tx: Tx, doer: Doer, move: MoveToKeep): Promise<Moved> {
  const { job, partIds, ...kept } = move;
  const { fromPosition, toPosition, pieces } = kept;
  const movedOn = await todayOf(tx, doer);
  const { id } = await tx.jobMove.create({
    data: {
      ...{ fromPosition, toPosition, pieces, jobId: job.id, staffId: doer.actor.id },
      ...{ cause: kept.cause ?? null, note: kept.note ?? '', firingId: kept.firingId ?? null },
      ...{ makesGoodId: kept.makesGoodId ?? null, undoesId: kept.undoesId ?? null },
      ...{ movedOn: dateFromDay(movedOn), at: doer.at },
    },
    select: { id: true },
  });
  if (partIds.length > 0) {
    await tx.partMove.createMany({ data: partIds.map((partId) => ({ moveId: id, partId })) });
  }
  const toName = placeName(job, toPosition);
  const facts = {
    ...{ number: job.number, pieces, from: placeName(job, fromPosition), to: toName },
    ...(kept.cause ? { cause: kept.cause, note: kept.note ?? '' } : {}),
  };
  await recordAudit(tx, doer, { did: saying(kept), subject: 'Job', subjectId: job.id, facts });
  return { undoId: id.toString(), jobNumber: job.number, pieces, toName, toPosition };
}

function saying(move: Pick<MoveToKeep, 'fromPosition' | 'toPosition' | 'undoesId'>): string {
  if (move.undoesId !== undefined) return 'took a move back';
  if (move.toPosition === outside) return 'wrote a loss down';
  return move.fromPosition === outside ? 'began pieces anew' : 'moved pieces on';
}

/** The day of the gallery on which somebody acts. */
export async function todayOf(tx: Tx, doer: Doer): Promise<Day> {
  return dayOf(doer.at, (await getGallery(tx)).timeZone);
}
