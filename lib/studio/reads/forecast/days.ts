import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import type { StudioLoad } from '@/lib/studio/rules/forecast/load/load';
import { queuesOf, type ConeQueue } from '@/lib/studio/rules/forecast/telling/queues';
import { byRisk } from '@/lib/studio/rules/forecast/telling/risk';
import { loadForPage } from './load-today';
import { tellDays, type ToldJob } from './tell';

/** The days of all open jobs, those most likely late first, and what waits for the kilns. */
export type DaysTold = {
  load: StudioLoad;
  jobs: ToldJob[];
  queues: ConeQueue[];
};

/** When all open jobs are ready, as they stand today. */
export async function getDays(actor: Actor, todayOn: Day): Promise<DaysTold> {
  assertAllowed(actor, 'studio.see');
  const load = await loadForPage(todayOn);
  return { load, jobs: byRisk(tellDays(load)), queues: queuesOf(load) };
}
