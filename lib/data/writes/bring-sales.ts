import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { sumCents } from '@/lib/money/rules';
import { recordSales, type SaleToRecord } from '@/lib/sales/writes/record-sales';
import { bringIntoStock, type Arrival } from '@/lib/stock/writes';
import type { PlannedSale, SaleToBring } from '../rules/sales';

/**
 * Brings some of the sales of earlier books in, as sales of their own day. Joins the caller's
 * transaction.
 *
 * Their pieces were counted before these books began, so that as many come into stock at the same
 * instant as leave it: what is on hand stays what it is.
 */
export async function bringSales(tx: Tx, doer: Doer, plan: readonly PlannedSale[]): Promise<void> {
  const sales = plan.flatMap((row) => (row.verdict === 'new' ? [row.sale] : []));
  if (sales.length === 0) return;
  await bringIntoStock(tx, doer, sales.flatMap(arrivalsOf));
  await recordSales(
    tx,
    doer,
    sales.map((sale) => toRecord(sale, doer)),
  );
}

function arrivalsOf(sale: SaleToBring): Arrival[] {
  return sale.lines.flatMap(({ sku, quantity, numbers, unitCostCents }) => {
    if (!sku) return [];
    const arrival = {
      ...{ skuId: sku.skuId, placeId: sale.placeId, at: sale.soldAt },
      ...{ reason: 'opening' as const, note: 'sold in the earlier books' },
      unitCostCents: unitCostCents ?? sku.costCents,
    };
    if (numbers.length === 0) return [{ ...arrival, quantity }];
    return numbers.map((editionNumber) => ({ ...arrival, quantity: 1, editionNumber }));
  });
}

function toRecord(sale: SaleToBring, doer: Doer): SaleToRecord {
  const { channel, placeId, taxPlaceId, collectorId, soldOn, soldAt, delivery } = sale;
  const { deliverTo, exemptWhy, taxes, totalCents } = sale;
  const netCents = sumCents(sale.lines.map((line) => line.netCents));
  const staffId = sale.staffId ?? doer.actor.id;
  return {
    ...{ channel, placeId, taxPlaceId, collectorId, soldOn, soldAt, staffId, delivery },
    ...{ deliverTo, exemptWhy },
    ...{ netCents, taxCents: totalCents - netCents, totalCents },
    taxes: [...taxes],
    tenders: [...sale.tenders],
    lines: sale.lines.map(({ sku, numbers, discounts, unitCostCents, ...line }) => ({
      ...{ kind: line.kind, title: line.title, what: line.what, quantity: line.quantity },
      ...{ unitPriceCents: line.unitPriceCents, netCents: line.netCents },
      ...{ taxKind: line.taxKind, taxableCents: line.taxableCents, taxCents: line.taxCents },
      ...{ skuId: sku?.skuId ?? null, designId: sku?.designId ?? null, numbers },
      taxable: line.taxableCents > 0n,
      unitCostCents: unitCostCents ?? sku?.costCents ?? null,
      discountCents: sumCents(discounts.map((discount) => discount.amountCents)),
      discounts: discounts.map((discount) => ({ ...discount, givenById: staffId })),
    })),
  };
}
