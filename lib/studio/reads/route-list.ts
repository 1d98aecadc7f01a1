import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { readRoute, routeColumns, type Route } from './routes';

export type { Route } from './routes';

/** All routes, those in use first, by name; with `ended` also those that were put away. */
export async function listRoutes(actor: Actor, ended = false): Promise<Route[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().route.findMany({
    where: ended ? {} : { endedAt: null },
    select: routeColumns,
    orderBy: [{ isUsual: 'desc' }, { name: 'asc' }],
  });
  return rows
    .map(readRoute)
    .toSorted((one, other) => Number(one.hasEnded) - Number(other.hasEnded));
}

/** One route by its id; null when there is none. */
export async function findRoute(actor: Actor, id: string): Promise<Route | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().route.findUnique({ where: { id }, select: routeColumns });
  return row && readRoute(row);
}

/** A bench of the studio. */
export type Bench = { id: string; name: string; atOnce: number; hasEnded: boolean };

/** The benches by name. */
export async function listBenches(actor: Actor): Promise<Bench[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().bench.findMany({ orderBy: { name: 'asc' } });
  return rows.map(({ endedAt, ...bench }) => ({ ...bench, hasEnded: endedAt !== null }));
}
