import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { LayLineInput, TakeLineOutInput } from '@/lib/studio/input/firings';
import { readAtKilns, type AtKiln } from '@/lib/studio/reads/firings/waiting';
import { isOnlyAgain } from '@/lib/studio/rules/firings/load';
import { firstKnown, lyingOfParts, type PieceLying } from '@/lib/studio/rules/firings/lying';
import {
  decideLine,
  mayChangeLoad,
  type LineRefusal,
  type StandRefusal,
} from '@/lib/studio/rules/firings/planning';
import { commandOf, countAsPlanned, loadFiringToChange, type FiringHere } from './to-change';

/** A load as it is after a change. */
export type LoadChanged = { firingNumber: number; pieces: number };

/**
 * Lays pieces of a job into a load, or changes how many, how large and which parts. A size that the
 * job had not is kept with it.
 *
 * @returns refuses, in this order: not allowed, no such firing, called off, lit, opened, then as
 *   {@link decideLine}
 */
export async function layLine(
  doer: Doer,
  input: LayLineInput,
): Promise<Result<LoadChanged, NotAllowed | LineRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...line } = input;
  const command = commandOf(doer, 'layLine', requestKey, line);
  return onceOnly<LoadChanged, LineRefusal>(command, async (tx) => {
    const firing = await loadFiringToChange(tx, { id: line.firingId });
    const mayBe = mayChangeLoad(firing);
    if (!mayBe.ok) return mayBe;
    if (!firing) return refuse({ code: 'no_such_firing' });
    const there = await atThisKiln(tx, firing, line);
    const lying = await lyingToLay(tx, line, there);
    const decided = decideLine(
      there && {
        ...{ jobNumber: there.jobNumber, free: there.pieces, hasParts: there.hasParts },
        ...{ freePartIds: there.freeParts.map(({ partId }) => partId), hasSize: false },
      },
      { pieces: line.pieces, partIds: line.partIds, hasSize: lying !== null },
      firing.cone,
    );
    if (!decided.ok) return decided;
    const { pieces, partIds } = decided.value;
    const isAgain = isOnlyAgain(pieces, there?.againPieces ?? 0);
    await storeLine(tx, line, { ...lying, pieces, isAgain }, partIds);
    if (lying) await keepSizeOfJob(tx, line.jobId, lying);
    await countAsPlanned(tx, firing.id);
    const { number } = firing;
    const facts = { number, jobNumber: there?.jobNumber ?? 0, pieces };
    const did = 'laid pieces into a load';
    await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: firing.id, facts });
    return ok({ firingNumber: number, pieces });
  });
}

type LineMeant = Omit<LayLineInput, 'requestKey'>;

async function atThisKiln(tx: Tx, firing: FiringHere, line: LineMeant): Promise<AtKiln | null> {
  const { cone, kind, id } = firing;
  const narrow = { cone, kind, jobIds: [line.jobId], exceptFiringId: id };
  const here = await readAtKilns(tx, narrow);
  return here.find(({ position }) => position === line.position) ?? null;
}

/** As it was typed, or else as the line has it already, or else as the job is known to be. */
async function lyingToLay(
  tx: Tx,
  line: LineMeant,
  there: AtKiln | null,
): Promise<PieceLying | null> {
  const { firingId, jobId, position } = line;
  const before = await tx.firingLine.findUnique({
    where: { firingId_jobId_position: { firingId, jobId, position } },
    select: { widthUm: true, depthUm: true, heightUm: true },
  });
  const known = [before, there?.lying] as const;
  const heightUm = firstKnown(line.heightUm, ...known.map((each) => each?.heightUm));
  const ofParts = there?.hasParts ? lyingOfParts(partBoxes(line, there), heightUm) : null;
  if (ofParts) return ofParts;
  const widthUm = firstKnown(line.widthUm, ...known.map((each) => each?.widthUm));
  const depthUm = firstKnown(line.depthUm, ...known.map((each) => each?.depthUm));
  if (widthUm === null || depthUm === null || heightUm === null) return null;
  return { widthUm, depthUm, heightUm };
}

function partBoxes(line: LineMeant, there: AtKiln) {
  const meant = there.freeParts.filter(
    ({ partId }) => line.partIds.length === 0 || line.partIds.includes(partId),
  );
  return meant.map(({ box }) => box);
}

async function storeLine(
  tx: Tx,
  line: LineMeant,
  kept: Partial<PieceLying> & { pieces: number; isAgain: boolean },
  partIds: readonly string[],
): Promise<void> {
  const { firingId, jobId, position } = line;
  const { widthUm = 0, depthUm = 0, heightUm = 0, pieces, isAgain } = kept;
  const data = { widthUm, depthUm, heightUm, pieces, isAgain };
  const { id } = await tx.firingLine.upsert({
    where: { firingId_jobId_position: { firingId, jobId, position } },
    create: { firingId, jobId, position, ...data },
    update: data,
    select: { id: true },
  });
  await tx.firingLinePart.deleteMany({ where: { lineId: id } });
  if (partIds.length > 0) {
    await tx.firingLinePart.createMany({
      data: partIds.map((partId) => ({ lineId: id, partId })),
    });
  }
}

/** A job whose size nobody had written down keeps the one that was measured at the kiln. */
async function keepSizeOfJob(tx: Tx, jobId: string, lying: PieceLying): Promise<void> {
  const job = await tx.job.findUnique({
    where: { id: jobId },
    select: {
      ...{ widthUm: true, heightUm: true, depthUm: true, technique: true, skuId: true },
      partMap: { select: { jobId: true } },
    },
  });
  if (!job || job.skuId !== null || job.depthUm !== null) return;
  const { widthUm, depthUm, heightUm } = lying;
  if (job.partMap) {
    await tx.job.update({ where: { id: jobId }, data: { depthUm: heightUm } });
  } else if (job.widthUm === null && job.heightUm === null) {
    const stands = job.technique === 'thrown';
    const size = stands
      ? { widthUm, heightUm, depthUm }
      : { widthUm, heightUm: depthUm, depthUm: heightUm };
    await tx.job.update({ where: { id: jobId }, data: size });
  }
}

/**
 * Takes a line out of a load; its pieces are free for other loads again.
 *
 * @returns refuses, in this order: not allowed, no such line or firing, called off, lit, opened
 */
export async function takeLineOut(
  doer: Doer,
  input: TakeLineOutInput,
): Promise<Result<LoadChanged, NotAllowed | StandRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, lineId } = input;
  const command = commandOf(doer, 'takeLineOut', requestKey, { lineId });
  return onceOnly<LoadChanged, StandRefusal>(command, async (tx) => {
    const firing = await loadFiringToChange(tx, { lines: { some: { id: lineId } } });
    const mayBe = mayChangeLoad(firing);
    if (!mayBe.ok) return mayBe;
    if (!firing) return refuse({ code: 'no_such_firing' });
    const { job, pieces } = await tx.firingLine.delete({
      where: { id: lineId },
      select: { pieces: true, job: { select: { number: true } } },
    });
    await countAsPlanned(tx, firing.id);
    const facts = { number: firing.number, jobNumber: job.number, pieces };
    const did = 'took pieces out of a load';
    await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: firing.id, facts });
    return ok({ firingNumber: firing.number, pieces });
  });
}
