import { randomUUID } from 'node:crypto';
import { db } from '@/lib/platform/db/client';
import { keepOrderInput, shipOrderInput } from '@/lib/wholesale/input';
import { noon, type OpenGallery } from '../sales/open-gallery';

/** A shop among the people, with a certificate for its state unless it is said otherwise. */
export async function aShop(
  gallery: OpenGallery,
  over: { name?: string; city?: string; state?: string | null; certified?: boolean } = {},
): Promise<string> {
  const { name = 'Driftline Goods', city = 'Cedar Reach', state = 'WA', certified = true } = over;
  const { id } = await db().collector.create({
    data: { kind: 'business', name, city, state, street: '40 Wharf Stairs', createdAt: noon },
  });
  if (!certified) return id;
  await db().resaleCertificate.create({
    data: {
      ...{ collectorId: id, state: 'WA', permitNumber: '3319', legalName: name },
      ...{ fromOn: new Date('2026-01-01'), staffId: gallery.owner.id, at: noon },
    },
  });
  return id;
}

/** An order as its form sends it: half price, thirty days. */
export function anOrder(shopId: string, pieces: string, over: Record<string, unknown> = {}) {
  return keepOrderInput.parse({
    ...{ requestKey: randomUUID(), shopId, pieces, pricePercent: '50', netDays: '30', ...over },
  });
}

/** An order that leaves from the gallery floor. */
export function aShipping(
  gallery: OpenGallery,
  orderId: string,
  over: Record<string, unknown> = {},
) {
  const fields = { requestKey: randomUUID(), orderId, fromId: gallery.counterId, ...over };
  return shipOrderInput.parse(fields);
}
