import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { AskDayInput } from '@/lib/studio/input/asked';
import type { JobForecast } from '@/lib/studio/rules/forecast/forecast';
import { askedJob } from '@/lib/studio/rules/forecast/load/asked';
import type { StudioLoad } from '@/lib/studio/rules/forecast/load/load';
import type { SizeFrom } from '@/lib/studio/rules/forecast/load/sizes';
import { refusalOf } from '@/lib/studio/rules/forecast/model';
import type { AskRefusal } from '@/lib/studio/rules/forecast/telling/refusals';
import { findRouteInUse } from '../routes';
import { readStudioLoad } from './load';
import { tellNewJob } from './tell';

/** A day that was asked for, with the load that it was told in. */
export type AskedTold = { load: StudioLoad; told: JobForecast; sizeFrom: SizeFrom };

/**
 * The days by which something is ready that is not begun, with today's load.
 *
 * @returns refuses, in this order: no such route, then as a forecast does
 */
export async function tellAsked(
  from: Prisma.TransactionClient,
  input: AskDayInput,
  todayOn: Day,
): Promise<Result<AskedTold, AskRefusal>> {
  const route = await findRouteInUse(from, { id: input.routeId });
  if (!route) return refuse({ code: 'no_such_route' });
  const load = await readStudioLoad(from, todayOn);
  const { pieces, answersFirst, widthUm, heightUm, depthUm } = input;
  const { job, sizeFrom } = askedJob(load.facts, {
    ...{ technique: route.technique, route: route.steps, pieces, answersFirst },
    size: { widthUm, heightUm, depthUm },
  });
  const refusal = refusalOf(load.studio, [job]);
  if (refusal) return refuse(refusal);
  const told = tellNewJob(load, job);
  return told ? ok({ load, told, sizeFrom }) : refuse({ code: 'never_open' });
}

/** Tells on a page what {@link tellAsked} tells. */
export async function askDay(
  actor: Actor,
  input: AskDayInput,
  todayOn: Day,
): Promise<Result<AskedTold, AskRefusal>> {
  assertAllowed(actor, 'studio.see');
  return tellAsked(db(), input, todayOn);
}

/** A commission for which a day is looked up. */
export type CommissionToAsk = {
  id: string;
  number: number;
  title: string;
  widthUm: number | null;
  heightUm: number | null;
  depthUm: number | null;
  hasEnded: boolean;
};

/** A commission by its number, with its size; null when there is none. */
export async function findCommissionToAsk(
  actor: Actor,
  number: number,
): Promise<CommissionToAsk | null> {
  assertAllowed(actor, 'commissions.see');
  const row = await db().commission.findUnique({
    where: { number },
    select: {
      ...{ id: true, number: true, title: true, widthUm: true, heightUm: true, depthUm: true },
      ending: { select: { commissionId: true } },
    },
  });
  if (!row) return null;
  const { ending, ...commission } = row;
  return { ...commission, hasEnded: ending !== null };
}

/** A day that was looked up and kept with the proposal of a commission. */
export type KeptDay = {
  toldOn: Day;
  in50On: Day | null;
  in80On: Day | null;
  in95On: Day | null;
};

/** The day that was kept last for a commission before its price was given; null when none was. */
export async function findKeptDay(actor: Actor, commissionId: string): Promise<KeptDay | null> {
  assertAllowed(actor, 'commissions.see');
  const row = await db().foretold.findFirst({
    where: { commissionId, why: 'asked' },
    select: { toldOn: true, in50On: true, in80On: true, in95On: true },
    orderBy: { id: 'desc' },
  });
  if (!row) return null;
  const day = (date: Date | null) => date && dayFromDate(date);
  const { in50On, in80On, in95On } = row;
  return {
    toldOn: dayFromDate(row.toldOn),
    ...{ in50On: day(in50On), in80On: day(in80On), in95On: day(in95On) },
  };
}
