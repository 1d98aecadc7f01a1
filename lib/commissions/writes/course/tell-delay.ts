import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { TellDelayInput } from '@/lib/commissions/input/course-told';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import { dateFromDay, formatDay } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/**
 * Writes down that the collector was told of another day. It tells, and moves no promise: only a
 * signed change order does.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, no day promised, told on a day to come, the day they were told already
 */
export async function tellDelay(
  doer: Doer,
  input: TellDelayInput,
): Promise<Result<{ commissionNumber: number }, AnyRefusal>> {
  const { requestKey, ...told } = input;
  const permission = 'commissions.write';
  const command = { name: 'tellDelay', permission, key: requestKey, input: told } as const;
  return carryOut(doer, command, (tx) => addDelay(tx, doer, told));
}

/** The step of {@link tellDelay}: joins the caller's transaction, asks nobody for leave. */
export async function addDelay(
  tx: Tx,
  doer: Doer,
  told: Omit<TellDelayInput, 'requestKey'>,
): Promise<Result<{ commissionNumber: number }, CommissionRefusal>> {
  const { commissionId, toOn, clock, why, toldHow, toldOn } = told;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, today, number } = found.value;
  const fromOn = facts.delays.at(-1)?.toOn ?? facts.agreement?.promisedOn ?? null;
  if (fromOn === null) return refuse({ code: 'no_day_promised' });
  if (toldOn > today) return refuse({ code: 'day_to_come', on: toldOn });
  if (toOn === fromOn) return refuse({ code: 'same_day_as_told', on: toOn });
  await tx.delayNotice.create({
    data: {
      ...{ commissionId, clock, why, toldHow },
      ...{ fromOn: dateFromDay(fromOn), toOn: dateFromDay(toOn), toldOn: dateFromDay(toldOn) },
      staffId: doer.actor.id,
      at: doer.at,
    },
    select: { id: true },
  });
  const did = `told them of another day, ${formatDay(toOn, 'short')}`;
  await tellHistory(tx, doer, { commissionId, did, facts: { why } });
  return ok({ commissionNumber: number });
}
