import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import type { ChosenPiece } from '@/lib/holds/reads/chosen-pieces';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import type { Gallery } from '@/lib/platform/settings';
import { readTaxSetting } from '@/lib/tax/reads';
import { priceLayaway, type AgreedLine } from '../rules';
import { planByDefault, shareDiscount, type Plan } from '../rules/begin';

/** What a layaway would come to on a day, and how the gallery would have it paid. */
export type Proposal = { netCents: Cents; taxCents: Cents; plan: Plan; taxPlace: string };

/** What is proposed: which pieces, on which day, with how much taken off in all. */
export type ToPropose = {
  chosen: readonly ChosenPiece[];
  gallery: Gallery;
  todayOn: Day;
  discountCents: Cents;
};

/**
 * Reckons what chosen pieces come to as a layaway, before anything is written.
 *
 * A discount that could not be given counts as none.
 */
export async function proposeLayaway(
  actor: Actor,
  { chosen, gallery, todayOn, discountCents }: ToPropose,
): Promise<Proposal> {
  assertAllowed(actor, 'stock.hold');
  const on = todayOn;
  const tax = await readTaxSetting(db(), { taxPlaceId: gallery.taxPlaceId, on });
  const gross = chosen.map(({ priceCents, one }) => priceCents * BigInt(one.quantity));
  const isLess = discountCents < sumCents(gross);
  const asked = { discountCents: isLess ? discountCents : 0n, reason: 'asked', percentMost: null };
  const shares = shareDiscount(gross, asked);
  const lines = chosen.map((each, at) => lineOf(each, shares.ok ? (shares.value[at] ?? 0n) : 0n));
  const priced = priceLayaway(lines, tax, gallery.roundTaxBy);
  const { netCents, taxCents, totalCents } = priced;
  const plan = planByDefault(totalCents, todayOn, gallery);
  return { netCents, taxCents, plan, taxPlace: tax.place };
}

function lineOf({ one, skuId, title, what, priceCents }: ChosenPiece, off: Cents): AgreedLine {
  return {
    ...{ skuId, designId: '', title, what, quantity: one.quantity, unitPriceCents: priceCents },
    ...{ editionNumber: one.editionNumber, discountCents: off, discountReason: '' },
    ...{ givenById: '', unitCostCents: null, weightG: null, holdIds: [] },
  };
}
