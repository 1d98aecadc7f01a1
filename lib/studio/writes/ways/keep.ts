import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type {
  CloseDaysInput,
  EndBenchInput,
  KeepBenchInput,
  OpenDaysInput,
  WaysInput,
} from '@/lib/studio/input/ways';
import type { RouteRefusal } from '@/lib/studio/rules/route-refusals';

type Answer = Promise<Result<true, NotAllowed | KeyRefusal>>;

/** Keeps how the studio works from now on; refuses who may not. */
export async function keepWays(doer: Doer, { requestKey: key, ...ways }: WaysInput): Answer {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const command = { key, name: 'keepWays', staffId: doer.actor.id, at: doer.at, input: ways };
  return onceOnly<true, never>(command, async (tx) => {
    await tx.studioSettings.update({ where: { id: 1 }, data: ways, select: { id: true } });
    await recordAudit(tx, doer, {
      ...{ did: 'changed how the studio works', subject: 'StudioSettings', subjectId: '1' },
      facts: { ...ways, centsPerHour: String(ways.centsPerHour) },
    });
    return ok(true as const);
  });
}

/** Closes the studio for some days; refuses who may not. */
export async function closeDays(doer: Doer, input: CloseDaysInput): Answer {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, fromOn, toOn, why } = input;
  const facts = { fromOn, toOn, why };
  const command = { key, name: 'closeDays', staffId: doer.actor.id, at: doer.at, input: facts };
  return onceOnly<true, never>(command, async (tx) => {
    const id = newId();
    const days = { fromOn: dateFromDay(fromOn), toOn: dateFromDay(toOn) };
    await tx.studioClosed.create({ data: { id, ...days, why }, select: { id: true } });
    const did = 'closed the studio for some days';
    await recordAudit(tx, doer, { did, subject: 'StudioClosed', subjectId: id, facts });
    return ok(true as const);
  });
}

/** Opens closed days again; days that are open already stay so. Refuses who may not. */
export async function openDays(doer: Doer, input: OpenDaysInput): Answer {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, closedId: id } = input;
  const command = { key, name: 'openDays', staffId: doer.actor.id, at: doer.at, input: { id } };
  return onceOnly<true, never>(command, async (tx) => {
    const days = await tx.studioClosed.findUnique({ where: { id } });
    if (!days) return ok(true as const);
    await tx.studioClosed.delete({ where: { id }, select: { id: true } });
    const facts = { fromOn: dayFromDate(days.fromOn), toOn: dayFromDate(days.toOn) };
    const did = 'opened closed days again';
    await recordAudit(tx, doer, { did, subject: 'StudioClosed', subjectId: id, facts });
    return ok(true as const);
  });
}

type BenchAnswer = Promise<Result<true, RouteRefusal>>;

/**
 * Writes a bench down, or what it is from now on.
 *
 * @returns refuses, in this order: not allowed, no such bench, a name that is taken
 */
export async function keepBench(doer: Doer, input: KeepBenchInput): BenchAnswer {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...bench } = input;
  const command = { key, name: 'keepBench', staffId: doer.actor.id, at: doer.at, input: bench };
  return onceOnly<true, RouteRefusal>(command, async (tx) => {
    const { benchId, name, atOnce } = bench;
    const known = benchId ? await tx.bench.count({ where: { id: benchId } }) : 1;
    if (known === 0) return refuse({ code: 'no_such_bench' });
    const same = await tx.bench.findUnique({ where: { name }, select: { id: true } });
    if (same && same.id !== benchId) return refuse({ code: 'name_taken', name });
    const id = benchId ?? newId();
    await tx.bench.upsert({
      ...{ where: { id }, create: { id, name, atOnce }, select: { id: true } },
      update: { name, atOnce, endedAt: null },
    });
    const facts = { name, atOnce };
    await recordAudit(tx, doer, { did: 'kept a bench', subject: 'Bench', subjectId: id, facts });
    return ok(true as const);
  });
}

/**
 * Takes a bench away; jobs that are under way keep its name.
 *
 * @returns refuses, in this order: not allowed, no such bench, a route or an open job that needs it
 */
export async function endBench(doer: Doer, input: EndBenchInput): BenchAnswer {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, benchId: id } = input;
  const command = { key, name: 'endBench', staffId: doer.actor.id, at: doer.at, input: { id } };
  return onceOnly<true, RouteRefusal>(command, async (tx) => {
    const bench = await tx.bench.findUnique({
      where: { id },
      select: {
        name: true,
        routeSteps: { where: { route: { endedAt: null } }, select: { route: true }, take: 1 },
      },
    });
    if (!bench) return refuse({ code: 'no_such_bench' });
    const [used] = bench.routeSteps;
    if (used) return refuse({ code: 'bench_is_used', by: used.route.name });
    const [job] = await tx.$queryRaw<{ title: string }[]>`
      SELECT job.title FROM "Job" job JOIN "JobStep" step ON step."jobId" = job.id
      WHERE step."benchId" = ${id}::uuid AND pieces_under_way(job.id) > 0 LIMIT 1`;
    if (job) return refuse({ code: 'bench_is_used', by: job.title });
    await tx.bench.update({ where: { id }, data: { endedAt: doer.at }, select: { id: true } });
    const facts = { name: bench.name };
    const did = 'took a bench away';
    await recordAudit(tx, doer, { did, subject: 'Bench', subjectId: id, facts });
    return ok(true as const);
  });
}
