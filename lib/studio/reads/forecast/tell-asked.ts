import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Day } from '@/lib/dates/rules';
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
