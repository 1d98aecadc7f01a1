import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { jobPiecesMax, type OpenJobInput } from '@/lib/studio/input';
import { findRouteInUse, type Route } from '@/lib/studio/reads/routes';
import type { Technique } from '@/lib/studio/rules';
import { routeForThickness, thicknessOf } from '@/lib/studio/rules/drying';
import type { OpenJobRefusal } from '@/lib/studio/rules/refusals';
import { foretell } from '../foretell';

/** One fired piece, in whole micrometres; null where nobody knows. */
export type PieceSize = { widthUm: number | null; heightUm: number | null; depthUm: number | null };

/** A job to open; of a commission, for a piece of the stock list, or of the studio's own. */
export type JobToOpen = {
  title: string;
  /** The technique, for its usual route; or else the route itself. */
  technique?: Technique;
  routeId?: string;
  /** How many travel together, spare ones included; at least 1. */
  pieces: number;
  /** How many of them are to come out good; all of them unless it is said. */
  wanted?: number;
  commissionId?: string | null;
  skuId?: string | null;
  /** Of a piece of the stock list, its own size unless another is said. */
  size?: PieceSize;
  bodyId?: string | null;
  neededOn?: Day | null;
};

/** A job that was opened. */
export type OpenedJob = { id: string; number: number };

/**
 * Opens a job with its route as the route is today; thick pieces get the drying days of their
 * thickness. Joins the caller's transaction; whoever calls it has asked whether the doer may.
 *
 * @returns refuses, in this order: no such commission, the commission has ended, no such piece, no
 *   such route
 */
export async function openJob(
  tx: Tx,
  doer: Doer,
  job: JobToOpen,
): Promise<Result<OpenedJob, OpenJobRefusal>> {
  invariant(job.pieces >= 1 && job.pieces <= jobPiecesMax, 'A job has pieces, and not too many.');
  const { commissionId = null, skuId = null } = job;
  const refusal = await refusalToOpen(tx, commissionId, skuId);
  if (refusal) return refuse(refusal);
  const route = await routeOf(tx, job);
  if (!route) return refuse({ code: 'no_such_route' });
  const size = job.size ?? (await sizeOfPiece(tx, skuId));
  const opened = await keepJob(tx, doer, { ...job, route, size });
  await foretell(tx, doer, { jobId: opened.id, why: 'opened' });
  return ok(opened);
}

async function routeOf(tx: Tx, { routeId, technique }: JobToOpen): Promise<Route | null> {
  if (routeId) return findRouteInUse(tx, { id: routeId });
  invariant(technique, 'A job is made in some way.');
  return findRouteInUse(tx, { technique });
}

type JobToKeep = JobToOpen & { route: Route; size: PieceSize };

async function keepJob(tx: Tx, doer: Doer, job: JobToKeep): Promise<OpenedJob> {
  const { title, pieces, route, size, commissionId = null, skuId = null, neededOn = null } = job;
  const wanted = Math.min(pieces, job.wanted ?? pieces);
  const opened = await tx.job.create({
    data: {
      ...{ title, pieces, wanted, commissionId, skuId, ...size, bodyId: job.bodyId ?? null },
      ...{ technique: route.technique, routeId: route.id },
      neededOn: neededOn && dateFromDay(neededOn),
      openedById: doer.actor.id,
      openedAt: doer.at,
    },
    select: { id: true, number: true },
  });
  await tx.jobStep.createMany({
    data: routeForThickness(route.steps, thicknessOf(route.technique, size.depthUm)).map(
      (step, index) => ({
        ...step,
        jobId: opened.id,
        position: index + 1,
      }),
    ),
  });
  const { name, technique } = route;
  await recordAudit(tx, doer, {
    did: 'opened a job in the studio',
    subject: 'Job',
    subjectId: opened.id,
    facts: {
      ...{ number: opened.number, title, technique, route: name, pieces, wanted },
      ...{ commissionId, skuId, neededOn },
    },
  });
  return opened;
}

async function sizeOfPiece(tx: Tx, skuId: string | null): Promise<PieceSize> {
  const sku =
    skuId &&
    (await tx.sku.findUnique({
      where: { id: skuId },
      select: { widthUm: true, heightUm: true, depthUm: true },
    }));
  return sku || { widthUm: null, heightUm: null, depthUm: null };
}

async function refusalToOpen(
  tx: Tx,
  commissionId: string | null,
  skuId: string | null,
): Promise<OpenJobRefusal | null> {
  if (commissionId) {
    const commission = await tx.commission.findUnique({
      where: { id: commissionId },
      select: { number: true, ending: { select: { commissionId: true } } },
    });
    if (!commission) return { code: 'no_such_commission' };
    if (commission.ending) return { code: 'commission_ended', commissionNumber: commission.number };
  }
  if (skuId && !(await tx.sku.findUnique({ where: { id: skuId }, select: { id: true } }))) {
    return { code: 'no_such_piece' };
  }
  return null;
}

/** Opens a job of the studio's own, from its page; see {@link openJob}. */
export async function openStudioJob(
  doer: Doer,
  input: OpenJobInput,
): Promise<Result<OpenedJob, NotAllowed | OpenJobRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...asked } = input;
  // Who wants more good ones than are begun wants as many as are begun.
  const job = { ...asked, wanted: Math.min(asked.wanted, asked.pieces) };
  const command = {
    ...{ key: requestKey, name: 'openStudioJob', staffId: doer.actor.id, at: doer.at, input: job },
  };
  return onceOnly(command, (tx) => openJob(tx, doer, job));
}
