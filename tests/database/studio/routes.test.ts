import { expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { readUsualRoutes } from '@/lib/studio/reads/routes';
import { routes } from '../../helpers/usual-routes';

test('a new gallery has the usual routes of each technique, with their benches', async () => {
  const benches = await db().bench.findMany();
  const nameOf = new Map(benches.map((bench) => [bench.id, bench.name]));
  const kept = await readUsualRoutes(db());
  const named = Object.entries(kept).map(([technique, steps]) => [
    technique,
    steps.map((step) => ({ ...step, benchId: step.benchId && nameOf.get(step.benchId) })),
  ]);
  expect(Object.fromEntries(named)).toEqual(routes);
});
