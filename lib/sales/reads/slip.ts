import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { listPiecesById, type PiecePicture } from '@/lib/stock/reads';
import { readPiecesForSale, readTaxParts } from '../reads';
import { pieceLine, type PieceForSale } from '../rules';
import { priceSlip, type PricedSlip } from '../rules/pricing';
import type { SlipEntry } from '../rules/slip';

/** One line of the slip as the counter shows it. */
export type SlipLine = {
  piece: PieceForSale;
  quantity: number;
  picture: PiecePicture | null;
};

/** The slip of the counter, priced as it would be sold at this moment. */
export type Slip = {
  lines: SlipLine[];
  priced: PricedSlip;
  /** SKUs on the slip that are not in the catalogue. */
  unknown: string[];
  /** Nobody has kept a tax rate for today; the sale would be refused. */
  taxUnknown: boolean;
  taxPlace: string;
};

/**
 * Prices a slip for the counter: the same pieces, rates and sums that a sale would use now.
 *
 * @param at the instant of the request; the day's tax rates follow from it
 */
export async function getSlip(
  actor: Actor,
  entries: readonly SlipEntry[],
  at: Date,
): Promise<Slip> {
  assertAllowed(actor, 'counter.sell');
  const gallery = await getGallery();
  const skus = await db().sku.findMany({
    where: { code: { in: entries.map((entry) => entry.sku) } },
    select: { id: true, code: true },
    orderBy: { code: 'asc' },
  });
  const ids = new Map(skus.map((sku) => [sku.code, sku.id]));
  const [pieces, shown, tax] = await Promise.all([
    readPiecesForSale(db(), Array.from(ids.values()), {
      placeId: gallery.counterId,
      on: dayOf(at, gallery.timeZone),
      lengthUnit: gallery.lengthUnit,
    }),
    listPiecesById(actor, Array.from(ids.values())),
    readTaxParts(gallery.taxPlaceId, dayOf(at, gallery.timeZone)),
  ]);
  const pictures = new Map(shown.map((piece) => [piece.id, piece.picture]));
  const lines = entries.flatMap(({ sku, quantity }) => {
    const piece = pieces.get(ids.get(sku) ?? '');
    return piece ? [{ piece, quantity, picture: pictures.get(piece.skuId) ?? null }] : [];
  });
  const toPrice = lines.map((line) => pieceLine(line.piece, line.quantity));
  return {
    lines,
    priced: priceSlip(toPrice, tax.parts, gallery.roundTaxBy),
    unknown: entries.map((entry) => entry.sku).filter((sku) => !ids.has(sku)),
    taxUnknown: tax.parts.length === 0,
    taxPlace: tax.name,
  };
}
