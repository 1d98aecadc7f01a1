import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { KeepCodesInput } from '@/lib/installation/input/work/codes';
import type { AnyWorkRefusal } from '@/lib/installation/rules/work/refusals';
import { onceOnly } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { openOrder } from './open-order';

/**
 * Keeps the codes of doors, gates and alarms for one day; they are struck out when it is signed. The
 * history says that they were written, never what.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such appointment,
 *   called off, signed already
 */
export async function keepCodes(
  doer: Doer,
  input: KeepCodesInput,
): Promise<Result<{ appointmentId: string }, AnyWorkRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, appointmentId, codes } = input;
  const staffId = doer.actor.id;
  // The key stands for the appointment alone: of the codes not even a hash is kept.
  const command = { key, name: 'keepCodes', staffId, input: { appointmentId }, at: doer.at };
  return onceOnly<{ appointmentId: string }, AnyWorkRefusal>(command, async (tx) => {
    const order = await openOrder(tx, appointmentId);
    if (!order.ok) return order;
    if (order.value.handOver) return refuse({ code: 'codes_are_struck_out' });
    await tx.appointment.update({ where: { id: appointmentId }, data: { codes } });
    const did = codes === '' ? 'struck out the codes' : 'wrote down the codes';
    const subject = { subject: 'Appointment', subjectId: appointmentId } as const;
    await recordAudit(tx, doer, { did, ...subject, facts: {} });
    return ok({ appointmentId });
  });
}
