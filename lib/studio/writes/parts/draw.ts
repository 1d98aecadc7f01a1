import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { DrawPartsInput } from '@/lib/studio/input/parts';
import { faultOf } from '@/lib/studio/rules/parts/drawing';
import type { DrawRefusal } from '@/lib/studio/rules/parts/words';

/** A drawing that was kept: how many parts it has, spare ones beside. */
export type Drawn = { jobNumber: number; version: number; parts: number; spares: number };

/**
 * Keeps the numbered drawing of a job: its outlines, and one part for each number, two where a
 * spare is made from the start. The job then has as many pieces, of which every number is to come
 * out good.
 *
 * A drawing that somebody else kept meanwhile is not drawn over unless it was seen and that was
 * said; what is drawn over stays in the audit.
 *
 * @returns refuses, in this order: not allowed, no such job, its clay was begun, another drawing
 *   was kept meanwhile, then as {@link faultOf}
 */
export async function drawParts(
  doer: Doer,
  input: DrawPartsInput,
): Promise<Result<Drawn, NotAllowed | DrawRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey, ...drawing } = input;
  const command = {
    ...{ key: requestKey, name: 'drawParts', staffId: doer.actor.id, at: doer.at },
    input: drawing,
  };
  return onceOnly<Drawn, DrawRefusal>(command, (tx) => drawPartsStep(tx, doer, drawing));
}

/** A drawing without the key of its form. */
export type Drawing = Omit<DrawPartsInput, 'requestKey'>;

/** The step of {@link drawParts}: joins the caller's transaction, asks nobody for leave. */
export async function drawPartsStep(
  tx: Tx,
  doer: Doer,
  drawing: Drawing,
): Promise<Result<Drawn, DrawRefusal>> {
  const job = await loadJob(tx, drawing.jobId);
  if (!job) return refuse({ code: 'no_such_job' });
  const refusal = await refusalToDraw(tx, job, drawing);
  return refusal ? refuse(refusal) : ok(await keepDrawing(tx, doer, job, drawing));
}

async function loadJob(tx: Tx, id: string) {
  return tx.job.findUnique({
    where: { id },
    select: {
      ...{ id: true, number: true, commissionId: true },
      moves: { select: { id: true }, take: 1 },
      partMap: { select: { version: true, drawnById: true } },
      shapes: { select: { number: true, outline: true, area: true }, orderBy: { number: 'asc' } },
    },
  });
}

type JobRow = NonNullable<Awaited<ReturnType<typeof loadJob>>>;

async function refusalToDraw(tx: Tx, job: JobRow, drawing: Drawing): Promise<DrawRefusal | null> {
  if (job.moves.length > 0) return { code: 'clay_begun' };
  const keptVersion = job.partMap?.version ?? 0;
  if (keptVersion !== drawing.version && keptVersion !== drawing.over) {
    const by = job.partMap && (await nameOf(tx, job.partMap.drawnById));
    return { code: 'drawn_meanwhile', by: by ?? 'Somebody', version: keptVersion };
  }
  return faultOf(drawing.shapes);
}

async function nameOf(tx: Tx, staffId: string): Promise<string | undefined> {
  return (await tx.staff.findUnique({ where: { id: staffId }, select: { name: true } }))?.name;
}

async function keepDrawing(tx: Tx, doer: Doer, job: JobRow, drawing: Drawing): Promise<Drawn> {
  const { widthUm, heightUm, shapes } = drawing;
  const version = (job.partMap?.version ?? 0) + 1;
  const fileId = await sketchOf(tx, job.commissionId, drawing.fileId);
  const drawn = {
    ...{ fileId, widthUm, heightUm, version },
    ...{ drawnById: doer.actor.id, drawnAt: doer.at },
  };
  await tx.part.deleteMany({ where: { jobId: job.id } });
  await tx.partShape.deleteMany({ where: { jobId: job.id } });
  const map = { where: { jobId: job.id }, create: { jobId: job.id, ...drawn }, update: drawn };
  await tx.partMap.upsert(map);
  await tx.partShape.createMany({
    data: shapes.map(({ number, outline, area, note }) => ({
      ...{ jobId: job.id, number, area, note },
      outline: outline.map((corner) => [...corner]),
    })),
  });
  const made = shapes.flatMap(({ number, hasSpare }) => [
    { number, make: 1, isSpare: false },
    ...(hasSpare ? [{ number, make: 2, isSpare: true }] : []),
  ]);
  await tx.part.createMany({ data: made.map((part) => ({ ...part, jobId: job.id, at: doer.at })) });
  const count = { pieces: made.length, wanted: shapes.length };
  await tx.job.update({ where: { id: job.id }, data: count, select: { id: true } });
  await auditDrawing(tx, doer, job, { ...drawing, version, pieces: made.length });
  const spares = made.length - shapes.length;
  return { jobNumber: job.number, version, parts: shapes.length, spares };
}

/** Only a sketch of the job's own commission lies under its drawing. */
async function sketchOf(
  tx: Tx,
  commissionId: string | null,
  fileId: string | null,
): Promise<string | null> {
  if (commissionId === null || fileId === null) return null;
  const sketch = await tx.sketch.findFirst({
    where: { commissionId, fileId },
    select: { fileId: true },
  });
  return sketch?.fileId ?? null;
}

type Kept = Drawing & { version: number; pieces: number };

async function auditDrawing(tx: Tx, doer: Doer, job: JobRow, kept: Kept): Promise<void> {
  const isOver = kept.over !== null && kept.over === job.partMap?.version;
  await recordAudit(tx, doer, {
    did: 'drew the numbered parts of a job',
    subject: 'Job',
    subjectId: job.id,
    facts: {
      ...{ number: job.number, version: kept.version, parts: kept.shapes.length },
      ...{ pieces: kept.pieces, widthUm: kept.widthUm, heightUm: kept.heightUm },
      ...(isOver ? { drawnOver: job.shapes.map(asWords) } : {}),
    },
  });
}

/** An outline that was drawn over, as it is found again in the audit. */
function asWords({ number, outline, area }: JobRow['shapes'][number]): string {
  return `${number} ${area} ${JSON.stringify(outline)}`;
}
