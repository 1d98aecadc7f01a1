import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { ForetoldThen, MadeAnew } from '@/lib/studio/rules/forecast/telling/moved';
import type { ForecastRefusal } from '@/lib/studio/rules/forecast/model';
import {
  benchNamesOf,
  tellDrives,
  type DriveTold,
} from '@/lib/studio/rules/forecast/telling/words';
import { loadForPage } from './load-today';
import { tellDays, type ToldJob } from './tell';

/** What is foretold of a job today, what was foretold before, and what was made anew since. */
export type ReadyByTold = {
  now: ToldJob | null;
  before: readonly ForetoldThen[];
  anew: MadeAnew | null;
  /** What drives it, the most days first. */
  drives: readonly DriveTold[];
  /** Why nothing can be told; null when something is, or when it is no open job. */
  refusal: ForecastRefusal | null;
};

/** When a job is ready, as it is foretold today and was before. */
export async function findReadyBy(actor: Actor, jobId: string, todayOn: Day): Promise<ReadyByTold> {
  assertAllowed(actor, 'commissions.see');
  const load = await loadForPage(todayOn);
  const rows = await db().foretold.findMany({
    where: { jobId },
    select: { toldOn: true, in80On: true },
    orderBy: { id: 'asc' },
    take: 100,
  });
  const made = await db().jobMove.findMany({
    where: {
      ...{ jobId, fromPosition: -1, makesGoodId: { not: null } },
      ...{ undoesId: null, undoneBy: null },
    },
    select: { pieces: true, movedOn: true },
    orderBy: { id: 'asc' },
    take: 500,
  });
  const first = made[0];
  const now = tellDays(load).find(({ of }) => of.job.id === jobId) ?? null;
  return {
    now,
    before: rows.map(({ toldOn, in80On }) => ({
      toldOn: dayFromDate(toldOn),
      in80On: in80On && dayFromDate(in80On),
    })),
    anew: first
      ? {
          pieces: made.reduce((sum, { pieces }) => sum + pieces, 0),
          sinceOn: dayFromDate(first.movedOn),
        }
      : null,
    drives: now ? tellDrives(now.told.drives, benchNamesOf(load)) : [],
    refusal: load.stuck.find(({ of }) => of.job.id === jobId)?.refusal ?? null,
  };
}
