import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { findForWriting, tellHistory } from '@/lib/commissions/writes/carry-out';
import type { SetLooksInput } from '@/lib/installation/input/care/done';
import { weightKnown } from '@/lib/installation/reads/plan/weight';
import type { AnyCareRefusal } from '@/lib/installation/rules/care/refusals';
import { addDueLooks } from '@/lib/installation/writes/care/set';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** For whose piece the looks were set, and how many. */
export type LooksSet = { commissionNumber: number; looks: number };

/**
 * Sets the looks after a piece that was handed over without a work order.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown commission,
 *   not handed over yet, set already
 */
export async function setLooks(
  doer: Doer,
  input: SetLooksInput,
): Promise<Result<LooksSet, AnyCareRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'setLooks', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<LooksSet, AnyCareRefusal>(command, (tx) => addLooks(tx, doer, said));
}

async function addLooks(
  tx: Tx,
  doer: Doer,
  { commissionId, hangs }: Omit<SetLooksInput, 'requestKey'>,
): Promise<Result<LooksSet, AnyCareRefusal>> {
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, gallery, number } = found.value;
  if (!facts.handOver) return refuse({ code: 'not_handed_over_yet' });
  if ((await tx.afterCare.count({ where: { commissionId } })) > 0) {
    return refuse({ code: 'looks_are_set' });
  }
  const looks = await addDueLooks(tx, doer, {
    commissionId,
    hung: {
      ...(await placeOf(tx, commissionId)),
      kind: hangs === 'yes' ? 'hanging' : 'delivery',
      handedOn: facts.handOver.handedOn,
      weightG: (await weightKnown(tx, commissionId))?.weightG ?? null,
      fixingsLookMonths: gallery.fixingsLookMonths,
    },
  });
  const told = { commissionId, facts: { hangs, looks } };
  await tellHistory(tx, doer, { ...told, did: 'set the looks after it' });
  return ok({ commissionNumber: number, looks });
}

/** Whether it is outdoors and freezes there: by the newest survey, else by the request. */
async function placeOf(tx: Tx, commissionId: string) {
  const row = await tx.commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: {
      ...{ exposure: true, freezes: true },
      surveys: {
        select: { isOutdoors: true, freezes: true },
        orderBy: { version: 'desc' },
        take: 1,
      },
    },
  });
  const survey = row.surveys[0];
  return {
    isOutdoors: survey?.isOutdoors ?? row.exposure === 'outdoors',
    freezes: survey?.freezes ?? row.freezes ?? false,
  };
}
