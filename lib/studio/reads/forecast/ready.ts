import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import type { ReadyDays } from '@/lib/studio/rules/days';
import type { JobStanding } from '../standing';
import { loadForPage } from './load-today';
import { tellDays } from './tell';

/** Stands for a day that is out of sight. */
const farOff: Day = '9999-12-31';

/**
 * When jobs are ready with everything that waits in the studio: the days by which they are in 50,
 * 80 and 95 of 100.
 *
 * @returns one for each job, in their order; null for a finished one; where nothing can be foretold,
 *   the days of its route without any waiting
 */
export async function readyOfJobs(
  actor: Actor,
  jobs: readonly Pick<JobStanding, 'id' | 'ready'>[],
  todayOn: Day,
): Promise<(ReadyDays | null)[]> {
  assertAllowed(actor, 'commissions.see');
  if (jobs.every((job) => job.ready === null)) return jobs.map(() => null);
  const told = new Map(
    tellDays(await loadForPage(todayOn)).map(({ of, told: own }) => [of.job.id, own]),
  );
  return jobs.map(({ id, ready }) => {
    const days = told.get(id)?.readyOn;
    if (!ready || !days) return ready;
    const { in50, in80, in95 } = days;
    return { shortestOn: in50 ?? farOff, likelyOn: in80 ?? farOff, longestOn: in95 ?? farOff };
  });
}
