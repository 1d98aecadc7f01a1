import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { OrderLoaded } from '@/lib/installation/reads/work/load-order';
import { afterCareDue } from '@/lib/installation/rules/care/due';
import type { Tx } from '@/lib/platform/db/transaction';
import { getGallery } from '@/lib/platform/settings';

type JustHanded = { commissionId: string; handedOn: Day; order: OrderLoaded };

/** Sets the looks after a piece that was just handed over; joins the caller's transaction. */
export async function setAfterCare(tx: Tx, doer: Doer, handed: JustHanded): Promise<void> {
  const { commissionId, handedOn, order } = handed;
  const { fixingsLookMonths } = await getGallery(tx);
  const { kind, isOutdoors, weightG } = order.facts;
  const hung = { kind, handedOn, isOutdoors, weightG, freezes: order.freezes, fixingsLookMonths };
  await tx.afterCare.createMany({
    data: afterCareDue(hung).map(({ kind: look, dueOn }) => ({
      ...{ commissionId, kind: look, dueOn: dateFromDay(dueOn), at: doer.at },
    })),
  });
}
