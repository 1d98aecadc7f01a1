import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { OrderLoaded } from '@/lib/installation/reads/work/load-order';
import { afterCareDue, type JustHung } from '@/lib/installation/rules/care/due';
import type { Tx } from '@/lib/platform/db/transaction';
import { getGallery } from '@/lib/platform/settings';

type JustHanded = { commissionId: string; handedOn: Day; order: OrderLoaded };

/** Sets the looks after a piece that was just handed over; joins the caller's transaction. */
export async function setAfterCare(tx: Tx, doer: Doer, handed: JustHanded): Promise<void> {
  const { commissionId, handedOn, order } = handed;
  const { fixingsLookMonths } = await getGallery(tx);
  const { kind, isOutdoors, weightG } = order.facts;
  const hung = { kind, handedOn, isOutdoors, weightG, freezes: order.freezes, fixingsLookMonths };
  await addDueLooks(tx, doer, { commissionId, hung });
}

/**
 * Writes down the looks that are due after a piece; joins the caller's transaction.
 *
 * @returns how many
 */
export async function addDueLooks(
  tx: Tx,
  doer: Doer,
  { commissionId, hung }: { commissionId: string; hung: JustHung },
): Promise<number> {
  const due = afterCareDue(hung);
  await tx.afterCare.createMany({
    data: due.map(({ kind, dueOn }) => ({
      ...{ commissionId, kind, dueOn: dateFromDay(dueOn), at: doer.at },
    })),
  });
  return due.length;
}
