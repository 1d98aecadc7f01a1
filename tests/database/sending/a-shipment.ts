import { randomUUID } from 'node:crypto';
import type { Actor, Doer } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import type { LineToPrice } from '@/lib/sales/rules/pricing';
import { priceSlip } from '@/lib/sales/rules/pricing';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { proposeBoxesInput } from '@/lib/sending/input/boxes';
import { startShipmentInput } from '@/lib/sending/input/shipment';
import { wayInput } from '@/lib/sending/input/way';
import { proposeShipmentBoxes } from '@/lib/sending/writes/boxes';
import { startShipment, type Started } from '@/lib/sending/writes/shipments';
import { noteWay } from '@/lib/sending/writes/way';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { db } from '@/lib/platform/db/client';
import { done } from '@/tests/database/commissions/a-commission';
import { doing, type OpenGallery } from '@/tests/database/sales/open-gallery';

/** The day on which these stories play, at the gallery. */
export const today: Day = '2026-11-20';

/** A form that begins a shipment to somebody, as the page sends it. */
export function toStart(fields: Record<string, string> = {}) {
  return startShipmentInput.parse({
    ...{ requestKey: randomUUID(), how: 'carrier', carrier: 'Coast freight' },
    ...{ toName: 'Marit Oland', toAddress: '220 Heron Reach Road\nFernhollow, WA' },
    ...fields,
  });
}

/** What somebody does who packs. */
export function packer(gallery: OpenGallery): Doer {
  return doing(gallery.maker);
}

/** A shipment that was begun. */
export async function aShipment(
  gallery: OpenGallery,
  fields: Record<string, string> = {},
): Promise<Started> {
  return done(await startShipment(packer(gallery), toStart(fields)));
}

/** Two tiles and a relief. */
export const usualPieces = '2 × Tern; 6 × 6 × 1/2 in; 1 lb 8 oz\nHeron; 40 × 30 × 3 in; 70 lb';

/** A form that has boxes proposed. */
export function toPropose(shipmentId: string, pieces = usualPieces) {
  return proposeBoxesInput.parse({ requestKey: randomUUID(), shipmentId, pieces });
}

/** A shipment with its boxes. */
export async function aPacked(
  gallery: OpenGallery,
  fields: Record<string, string> = {},
  pieces = usualPieces,
): Promise<Started> {
  const started = await aShipment(gallery, fields);
  done(await proposeShipmentBoxes(packer(gallery), toPropose(started.shipmentId, pieces)));
  return started;
}

/** A form that says what became of a shipment. */
export function became(shipmentId: string, kind: string, fields: Record<string, string> = {}) {
  return wayInput.parse({ requestKey: randomUUID(), shipmentId, kind, on: today, ...fields });
}

/** A shipment that left, and came if a day is said. */
export async function aSent(
  gallery: OpenGallery,
  fields: Record<string, string> = {},
): Promise<Started> {
  const shipment = await aPacked(gallery, fields);
  const { shipmentId } = shipment;
  const sent = became(shipmentId, 'sent', { on: '2026-11-12', tracking: 'CV 1' });
  done(await noteWay(packer(gallery), sent));
  return shipment;
}

/** The boxes of a shipment, by their rows. */
export async function boxesOf(shipmentId: string) {
  return db().crate.findMany({
    where: { shipmentId },
    orderBy: { position: 'asc' },
    include: { contents: { orderBy: { position: 'asc' } } },
  });
}

/** Sells something typed in, taken along or to be sent. @returns the number of its receipt */
export async function sold(
  gallery: OpenGallery,
  delivery: 'taken' | 'sent',
  actor: Actor = gallery.clerk,
): Promise<number> {
  const line: LineToPrice = {
    ...{ kind: 'typed', skuId: null, designId: null, title: 'A vase', what: '', quantity: 1 },
    ...{ unitPriceCents: 9_000n, taxable: false, unitCostCents: null, taxKind: 'goods' },
  };
  const slip = priceSlip([line], [], 'invoice');
  const amountCents = slip.totalCents;
  const tenders = [{ kind: 'card' as const, amountCents, givenCents: null, reference: '' }];
  const { counterId: placeId, taxPlaceId } = gallery;
  const recorded = await inTransaction<number, never>(async (tx) => {
    const [one] = await recordSales(tx, doing(actor), [
      {
        ...{ ...slip, channel: 'shipped', placeId, collectorId: null, tenders, taxPlaceId },
        ...{ soldOn: '2026-11-05', delivery },
      },
    ]);
    return ok(one?.number ?? 0);
  });
  return recorded.ok ? recorded.value : 0;
}
