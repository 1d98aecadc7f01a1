import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { EndRouteInput, KeepRouteInput } from '@/lib/studio/input/routes';
import type { RouteRefusal } from '@/lib/studio/rules/route-refusals';

type RouteAnswer = Promise<Result<{ id: string }, RouteRefusal>>;

/**
 * Writes a route down, or what it is from now on. Jobs that are under way keep the route they
 * began with. A route that becomes the usual one of its technique takes the place of the other.
 *
 * @returns refuses, in this order: not allowed, no such route, one that was put away, a name that
 *   is taken, a bench that is not there, a technique that would be left without its usual route
 */
export async function keepRoute(doer: Doer, input: KeepRouteInput): RouteAnswer {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey, ...route } = input;
  const command = { key: requestKey, name: 'keepRoute', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ id: string }, RouteRefusal>({ ...command, input: route }, async (tx) => {
    const refusal = await refusalToKeep(tx, route);
    if (refusal) return refuse(refusal);
    const { routeId, name, technique, isUsual, steps } = route;
    if (isUsual) await tx.route.updateMany({ where: { technique }, data: { isUsual: false } });
    const data = { name, technique, isUsual };
    const id = routeId ?? newId();
    if (routeId) await tx.route.update({ where: { id }, data, select: { id: true } });
    else await tx.route.create({ data: { id, ...data }, select: { id: true } });
    await tx.routeStep.deleteMany({ where: { routeId: id } });
    await tx.routeStep.createMany({
      data: steps.map((step, index) => ({ ...step, routeId: id, position: index + 1 })),
    });
    await recordAudit(tx, doer, {
      ...{ did: routeId ? 'changed a route' : 'wrote a route down', subject: 'Route' },
      ...{ subjectId: id, facts: { name, technique, isUsual, steps: steps.length } },
    });
    return ok({ id });
  });
}

async function refusalToKeep(
  tx: Tx,
  route: Omit<KeepRouteInput, 'requestKey'>,
): Promise<RouteRefusal | null> {
  const { routeId, name, steps } = route;
  const before = routeId ? await tx.route.findUnique({ where: { id: routeId } }) : null;
  if (routeId && !before) return { code: 'no_such_route' };
  if (before?.endedAt) return { code: 'route_was_put_away' };
  const same = await tx.route.findUnique({ where: { name }, select: { id: true } });
  if (same && same.id !== routeId) return { code: 'name_taken', name };
  if (!(await benchesAreThere(tx, steps))) return { code: 'no_such_bench' };
  return leavesNoUsual(before, route) ? { code: 'one_stays_usual' } : null;
}

async function benchesAreThere(tx: Tx, steps: KeepRouteInput['steps']): Promise<boolean> {
  const benchIds = [...new Set(steps.flatMap(({ benchId }) => benchId ?? []))];
  const there = await tx.bench.count({ where: { id: { in: benchIds }, endedAt: null } });
  return there === benchIds.length;
}

function leavesNoUsual(
  before: { isUsual: boolean; technique: string } | null,
  after: { isUsual: boolean; technique: string },
): boolean {
  return !!before?.isUsual && !(after.isUsual && after.technique === before.technique);
}

/**
 * Puts a route away: jobs that are under way keep it, new ones do not find it.
 *
 * @returns refuses, in this order: not allowed, no such route, one that was put away, the usual one
 */
export async function endRoute(doer: Doer, input: EndRouteInput): RouteAnswer {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, routeId: id } = input;
  const command = { key, name: 'endRoute', staffId: doer.actor.id, at: doer.at, input: { id } };
  return onceOnly<{ id: string }, RouteRefusal>(command, async (tx) => {
    const route = await tx.route.findUnique({ where: { id } });
    if (!route) return refuse({ code: 'no_such_route' });
    if (route.endedAt) return refuse({ code: 'route_was_put_away' });
    if (route.isUsual) return refuse({ code: 'one_stays_usual' });
    await tx.route.update({ where: { id }, data: { endedAt: doer.at }, select: { id: true } });
    const facts = { name: route.name };
    await recordAudit(tx, doer, {
      did: 'put a route away',
      subject: 'Route',
      subjectId: id,
      facts,
    });
    return ok({ id });
  });
}
