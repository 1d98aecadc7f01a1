import type { Doer } from '@/lib/access/rules';
import { addTaxRule } from '@/lib/commissions/writes/agreement/tax-rule';
import { addDays, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';

/** Where and when the demo's rule of a state is kept. */
export type TaxRulePlay = { tx: Tx; owner: Doer; today: Day; taxPlaceId: string };

/** Keeps what the gallery's own, invented state says about pieces that are set into a wall. */
export async function playTaxRule({ tx, owner, today, taxPlaceId }: TaxRulePlay): Promise<void> {
  const { state } = await tx.taxPlace.findUniqueOrThrow({
    where: { id: taxPlaceId },
    select: { state: true },
  });
  const kept = await addTaxRule(tx, owner, {
    ...{ state, taxAs: 'set_in_pieces', treatment: 'not_taxed', owesOnMaterials: true },
    fromOn: addDays(today, -400),
    note: 'Invented, as everything in this demo.',
  });
  invariant(kept.ok, 'The demo is not refused.');
}
