import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { KeepAskedInput } from '@/lib/studio/input/asked';
import { tellAsked } from '@/lib/studio/reads/forecast/tell-asked';
import type { KeepAskedRefusal } from '@/lib/studio/rules/forecast/telling/refusals';
import { toldColumns } from '../foretell';

/**
 * Keeps the day that was looked up for a commission, as it stands at this moment, before a price
 * is given.
 *
 * @returns the commission's number; refuses, in this order: not allowed, no such commission, the
 *   commission has ended, then as `tellAsked`, no day within sight
 */
export async function keepAskedDay(
  doer: Doer,
  input: KeepAskedInput,
): Promise<Result<{ commissionNumber: number }, NotAllowed | KeepAskedRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'commissions.propose');
  if (!allowed.ok) return allowed;
  const { requestKey, ...asked } = input;
  const command = {
    ...{ key: requestKey, name: 'keepAskedDay', staffId: doer.actor.id, at: doer.at, input: asked },
  };
  return onceOnly<{ commissionNumber: number }, KeepAskedRefusal>(command, async (tx) => {
    const commission = await tx.commission.findUnique({
      where: { id: asked.commissionId },
      select: { id: true, number: true, ending: { select: { commissionId: true } } },
    });
    if (!commission) return refuse({ code: 'no_such_commission' });
    const { id: commissionId, number: commissionNumber } = commission;
    if (commission.ending) return refuse({ code: 'commission_ended', commissionNumber });
    const todayOn = dayOf(doer.at, (await getGallery(tx)).timeZone);
    const said = await tellAsked(tx, asked, todayOn);
    if (!said.ok) return said;
    const { load, told } = said.value;
    if (!told.readyOn.in80) return refuse({ code: 'out_of_sight' });
    await tx.foretold.create({
      data: { commissionId, why: 'asked', ...toldColumns(load, told), at: doer.at },
    });
    await recordAudit(tx, doer, {
      did: 'kept a day with a proposal',
      subject: 'Commission',
      subjectId: commissionId,
      facts: { commissionNumber, in80On: told.readyOn.in80, pieces: asked.pieces },
    });
    return ok({ commissionNumber });
  });
}
