import { randomUUID } from 'node:crypto';
import type { Doer } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { beginLayawayInput } from '@/lib/layaway/input';
import { checkLayawayPayment } from '@/lib/layaway/reads/running';
import { beginLayaway } from '@/lib/layaway/writes';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { aPieceHere, doing, noon, type OpenGallery } from '../sales/open-gallery';

let count = 0;

/** A panel of 480.00, and somebody who wants to pay it off. */
export async function aPanelAndSomebody(gallery: OpenGallery, here = 1) {
  count += 1;
  const sku = `PANEL-${count}`;
  const piece = { sku, title: `Heron at Dusk ${count}`, priceCents: 48_000n, here };
  const panel = await aPieceHere(gallery, piece);
  const { id: collectorId } = await db().collector.create({
    data: { name: `Marit Oland ${count}`, createdAt: noon },
    select: { id: true },
  });
  return { panel, collectorId };
}

/** What the form says: 480.00 and 8 % tax, 129.60 down, three payments over ninety days. */
export function asked(sku: string, collectorId: string, over: Record<string, string> = {}) {
  return beginLayawayInput.parse({
    ...{ requestKey: randomUUID(), collectorId, pieces: sku, shownNet: '480.00' },
    ...{ down: '129.60', payments: '3', finalOn: '2027-02-18' },
    ...over,
  });
}

/** A layaway of one panel; 518.40 in all. */
export async function aLayaway(gallery: OpenGallery) {
  const { panel, collectorId } = await aPanelAndSomebody(gallery);
  const begun = await beginLayaway(doing(gallery.clerk), asked(panel.sku, collectorId));
  if (!begun.ok) throw new Error(`not begun: ${begun.refusal.code}`);
  return { ...begun.value, panel, collectorId };
}

/** Takes money for a layaway as a slip does: asks in the same transaction, then records it. */
export async function pay(gallery: OpenGallery, doer: Doer, layawayId: string, cents: bigint) {
  return inTransaction(async (tx) => {
    const asking = { layawayId, amountCents: cents, on: soldOn } as const;
    const checked = await checkLayawayPayment(tx, asking);
    if (!checked.ok) return checked;
    const line = { ...lineOf(cents), kind: 'layaway_payment' as const, layawayId };
    const card = { kind: 'card' as const, ...paidBy(cents), reference: '000482' };
    const sale = { ...saleOf(gallery, cents), lines: [line], tenders: [card] };
    const [recorded] = await recordSales(tx, doer, [sale]);
    return ok(recorded?.number ?? 0);
  });
}

/** Pays for something with the money of a layaway, past every rule of the program. */
export async function spend(gallery: OpenGallery, layawayId: string, cents: bigint) {
  return inTransaction(async (tx) => {
    const line = { ...lineOf(cents), kind: 'typed' as const };
    const tender = { kind: 'layaway' as const, ...paidBy(cents), reference: '', layawayId };
    const sale = { ...saleOf(gallery, cents), lines: [line], tenders: [tender] };
    return ok(await recordSales(tx, doing(gallery.clerk), [sale]));
  });
}

const soldOn: Day = '2026-11-20';

function saleOf({ counterId: placeId, taxPlaceId }: OpenGallery, cents: bigint) {
  const sums = { netCents: cents, taxCents: 0n, totalCents: cents, taxes: [] };
  const where = { placeId, taxPlaceId, collectorId: null };
  return { channel: 'counter' as const, soldOn, ...where, ...sums } as const;
}

function paidBy(amountCents: bigint) {
  return { amountCents, givenCents: null };
}

function lineOf(cents: bigint) {
  return {
    ...{ skuId: null, designId: null, title: 'Money', what: '', quantity: 1 },
    ...{ unitPriceCents: cents, taxable: false, taxKind: 'none' as const, unitCostCents: null },
    ...{ discountCents: 0n, netCents: cents, taxableCents: 0n, taxCents: 0n },
  };
}
