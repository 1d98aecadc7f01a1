import type { AskedReturn, ReturnSetting } from '@/lib/returns/rules';
import type { AskedLine } from '@/lib/returns/rules/lines';
import type { SoldLine, SoldSale, SoldTender } from '@/lib/returns/rules/sold';

/** A line of a sale of which nothing came back. */
export function aLine(over: Partial<SoldLine> = {}): SoldLine {
  return {
    ...{ id: 'line-1', kind: 'piece', skuId: 'sku-1', title: 'Tern over Shoals', what: 'tile' },
    ...{ quantity: 1, netCents: 10_000n, taxCents: 800n, unitCostCents: 2_500n, finalWhy: '' },
    ...{ isSecond: false, numbers: [], commissionId: null, orderId: null, layawayId: null },
    ...{ creditId: null, creditBalanceCents: 0n },
    back: { quantity: 0, netCents: 0n, taxCents: 0n, numbers: [] },
    ...over,
  };
}

/** A tender of which nothing went back. */
export function aTender(over: Partial<SoldTender> = {}): SoldTender {
  return {
    ...{ id: 'tender-1', kind: 'cash', amountCents: 10_800n, reference: '', creditId: null },
    ...{ orderId: null, layawayId: null, backCents: 0n, settledCents: 0n },
    ...over,
  };
}

/** A tile of 100.00 at 8 %, paid in cash on 20 November 2026. */
export function aSoldSale(over: Partial<SoldSale> = {}): SoldSale {
  return {
    ...{ id: 'sale-1', number: 7, soldOn: '2026-11-20', collectorId: null, commissionId: null },
    lines: [aLine()],
    taxes: [
      { authority: 'City', taxCents: 150n, backCents: 0n },
      { authority: 'State', taxCents: 650n, backCents: 0n },
    ],
    tenders: [aTender()],
    ...{ referral: null, answeredTimes: 0 },
    ...over,
  };
}

/** The whole first line comes back to the shelf. */
export function oneBack(over: Partial<AskedLine> = {}): AskedLine {
  return { lineId: 'line-1', pieces: 1, numbers: [], to: 'shelf', flaw: '', ...over };
}

/** It comes back without a fee, as it was paid. */
export function asked(over: Partial<AskedReturn> = {}): AskedReturn {
  return {
    ...{ kind: 'returned', reason: 'too large for the wall', lines: [oneBack()] },
    ...{ fee: { cents: 0n }, how: 'same_way', refunds: new Map() },
    ...over,
  };
}

/** Within the days, by staff. */
export function setting(over: Partial<ReturnSetting> = {}): ReturnSetting {
  return { returnedOn: '2026-11-24', returnDays: 14, mayGoBeyond: false, ...over };
}
