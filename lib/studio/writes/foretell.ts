import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { getGallery } from '@/lib/platform/settings';
import { readStudioLoad } from '@/lib/studio/reads/forecast/load';
import { tellDays } from '@/lib/studio/reads/forecast/tell';
import type { JobForecast } from '@/lib/studio/rules/forecast/forecast';
import type { StudioLoad } from '@/lib/studio/rules/forecast/load/load';
import { benchNamesOf, tellDrives } from '@/lib/studio/rules/forecast/telling/words';

/** A job of which it is foretold when it will be ready, and on which occasion. */
export type ToForetell = { jobId: string; why: 'opened' | 'begun' | 'remade' };

/**
 * Keeps what is foretold of a job as things stand; keeps nothing when nothing can be told. Joins
 * the caller's transaction.
 */
export async function foretell(tx: Tx, doer: Doer, { jobId, why }: ToForetell): Promise<void> {
  const todayOn = dayOf(doer.at, (await getGallery(tx)).timeZone);
  const load = await readStudioLoad(tx, todayOn);
  const own = tellDays(load).find(({ of }) => of.job.id === jobId);
  if (!own?.told.readyOn.in50) return;
  await tx.foretold.create({ data: { jobId, why, ...toldColumns(load, own.told), at: doer.at } });
}

/** What is kept of a forecast. */
export function toldColumns(
  load: StudioLoad,
  told: JobForecast,
): Pick<
  Prisma.ForetoldUncheckedCreateInput,
  'toldOn' | 'in50On' | 'in80On' | 'in95On' | 'drives' | 'futures'
> {
  const { in50, in80, in95 } = told.readyOn;
  const date = (day: Day | null) => day && dateFromDay(day);
  return {
    ...{ toldOn: dateFromDay(told.todayOn), futures: told.futures },
    ...{ in50On: date(in50), in80On: date(in80), in95On: date(in95) },
    drives: tellDrives(told.drives, benchNamesOf(load)),
  };
}
