import type { LineKind, TenderKind } from '@/lib/ledger/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { readTaxParts } from '@/lib/sales/reads';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { recordSales, type SaleToRecord } from '@/lib/sales/writes/record-sales';
import { doing, noon, type OpenGallery, type TestPiece } from '../sales/open-gallery';

/** A line of a piece, as the slip has it. */
export function pieceOf(
  piece: TestPiece,
  quantity = 1,
  over: Partial<LineToPrice> = {},
): LineToPrice {
  return {
    ...{ kind: 'piece', skuId: piece.skuId, designId: null, title: piece.sku, what: 'tile' },
    ...{ quantity, unitPriceCents: piece.priceCents, taxable: true, unitCostCents: 1_000n },
    ...over,
  };
}

/** A line of something that is no piece: never taxed. */
export function lineOf(
  kind: LineKind,
  cents: bigint,
  over: Partial<LineToPrice> = {},
): LineToPrice {
  return {
    ...{ kind, skuId: null, designId: null, title: kind, what: '', quantity: 1 },
    ...{ unitPriceCents: cents, taxable: false, taxKind: 'none', unitCostCents: null },
    ...over,
  };
}

/** How it is paid; the last one takes what is left of the total. */
export type Paying = { kind: TenderKind; cents?: bigint; creditId?: string; layawayId?: string };

/** What was sold: its number, its total and its lines. */
export type Sold = { saleId: string; number: number; totalCents: bigint; lineIds: string[] };

/** Sells at the counter, past the slip: what is priced is recorded. */
export async function sell(
  gallery: OpenGallery,
  lines: readonly LineToPrice[],
  paying: readonly Paying[] = [{ kind: 'cash' }],
  over: Partial<SaleToRecord> = {},
): Promise<Sold> {
  const { parts } = await readTaxParts(gallery.taxPlaceId, '2026-11-20', db());
  const priced = priceSlip(lines, parts, 'invoice');
  let left = priced.totalCents;
  const tenders = paying.map(({ kind, cents, ...papers }) => {
    const amountCents = cents ?? left;
    left -= amountCents;
    return { kind, amountCents, givenCents: null, reference: '', ...papers };
  });
  const sold = await inTransaction(async (tx) => {
    const [sale] = await recordSales(tx, doing(gallery.clerk), [
      {
        ...{ ...priced, tenders, channel: 'counter', placeId: gallery.counterId },
        ...{ taxPlaceId: gallery.taxPlaceId, collectorId: null, soldOn: '2026-11-20' },
        ...{ soldAt: noon, ...over },
      },
    ]);
    if (!sale) throw new Error('A sale that was handed over is recorded.');
    return ok(sale);
  });
  if (!sold.ok) throw new Error('Nothing refuses it.');
  const { saleId, number, lineIds } = sold.value;
  return { saleId, number, totalCents: priced.totalCents, lineIds: [...lineIds] };
}

/** What an account holds: debit positive, credit negative, in cents. */
export async function balanceOf(accountCode: string): Promise<bigint> {
  const sum = await db().posting.aggregate({
    where: { accountCode },
    _sum: { amountCents: true },
  });
  return sum._sum.amountCents ?? 0n;
}
