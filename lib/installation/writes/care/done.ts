import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { findForWriting, tellHistory } from '@/lib/commissions/writes/carry-out';
import { dateFromDay, dayFromDate } from '@/lib/dates/rules';
import type { CareDoneInput } from '@/lib/installation/input/care/done';
import type { AnyCareRefusal, CareRefusal } from '@/lib/installation/rules/care/refusals';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Whose commission was looked after. */
export type CareTold = { afterCareId: string; commissionNumber: number };

/**
 * Says how a look after a piece went, once: by a call, or on a visit.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, done
 *   already, a day to come, a day before the hand-over, a visit that is not in the diary
 */
export async function careDone(
  doer: Doer,
  input: CareDoneInput,
): Promise<Result<CareTold, AnyCareRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'careDone', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<CareTold, AnyCareRefusal>(command, (tx) => addDone(tx, doer, said));
}

async function addDone(
  tx: Tx,
  doer: Doer,
  said: Omit<CareDoneInput, 'requestKey'>,
): Promise<Result<CareTold, AnyCareRefusal>> {
  const { afterCareId, words, on, appointmentId } = said;
  const look = await tx.afterCare.findUnique({
    where: { id: afterCareId },
    select: { commissionId: true, kind: true, done: { select: { on: true } } },
  });
  if (!look) return refuse({ code: 'unknown_care' });
  if (look.done) return refuse({ code: 'looked_after_already', on: dayFromDate(look.done.on) });
  const { commissionId, kind } = look;
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const { today, facts, number } = found.value;
  if (on > today) return refuse({ code: 'day_to_come', on });
  const handedOn = facts.handOver?.handedOn;
  if (handedOn !== undefined && on < handedOn)
    return refuse({ code: 'before_hand_over', handedOn });
  const visit = await refusalToVisit(tx, appointmentId);
  if (visit) return refuse(visit);
  await tx.afterCareDone.create({
    data: {
      ...{ afterCareId, appointmentId, words },
      on: dateFromDay(on),
      staffId: doer.actor.id,
      at: doer.at,
    },
    select: { afterCareId: true },
  });
  await tellHistory(tx, doer, {
    commissionId,
    did: 'looked after it',
    facts: { kind, words, on },
  });
  return ok({ afterCareId, commissionNumber: number });
}

async function refusalToVisit(tx: Tx, appointmentId: string | null): Promise<CareRefusal | null> {
  if (appointmentId === null) return null;
  const where = { id: appointmentId, calledOffAt: null };
  return (await tx.appointment.count({ where })) === 1 ? null : { code: 'unknown_visit' };
}
