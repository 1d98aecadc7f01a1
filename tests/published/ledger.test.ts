import { describe, expect, test } from 'vitest';
import { accounts, depositEntry } from '@/lib/ledger/rules';
import { saleEntry } from '@/lib/ledger/rules/sale-entry';
import { decideCommissionSale } from '@/lib/sales/rules';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { aCommissionSale } from '@/tests/rules/sales/a-commission-sale';

const aLine = (unitPriceCents: bigint): LineToPrice => ({
  kind: 'piece',
  skuId: 'a',
  designId: 'a',
  title: 'A piece',
  what: 'relief tile',
  quantity: 1,
  unitPriceCents,
  taxable: true,
  unitCostCents: null,
});

describe('OpenStax, Principles of Accounting, volume 1: current liabilities', () => {
  // Section 12.1: an item of 50.00 at 8 % comes to 54.00, of which 4.00 is tax.
  test('the tax on a sale is held for others', () => {
    const slip = priceSlip([aLine(5_000n)], [{ name: 'State', ratePercent: '8' }], 'invoice');
    expect([slip.netCents, slip.taxCents, slip.totalCents]).toEqual([5_000n, 400n, 5_400n]);
  });

  // Section 12.2: 18,000 sold for cash at 6 %: cash 19,080; sales 18,000; sales tax payable 1,080.
  test('sales tax payable', () => {
    const slip = priceSlip([aLine(1_800_000n)], [{ name: 'State', ratePercent: '6' }], 'invoice');
    const tenders = [{ kind: 'cash', amountCents: slip.totalCents }] as const;
    expect(saleEntry({ ...slip, tenders })).toEqual([
      { account: accounts.cashDrawer, amountCents: 1_908_000n },
      { account: accounts.salesOfPieces, amountCents: -1_800_000n },
      { account: accounts.taxHeld, amountCents: -108_000n, authority: 'State' },
    ]);
  });

  // Section 12.2: 5,500 paid ahead on 25 March is unearned until the job is done on 10 June.
  test('what was paid ahead is a debt, and earned when the piece is handed over', () => {
    const paid = { kind: 'cash', amountCents: 550_000n, commissionId: 'c' } as const;
    expect(depositEntry(paid)).toEqual([
      { account: accounts.cashDrawer, amountCents: 550_000n },
      { account: accounts.deposits, amountCents: -550_000n, commissionId: 'c' },
    ]);

    const piece = aCommissionSale({ priceCents: 550_000n, paidCents: 550_000n }, false);
    const sale = decideCommissionSale(piece, [], 'invoice');
    expect(saleEntry({ ...sale, commissionId: 'c' })).toEqual([
      { account: accounts.deposits, amountCents: 550_000n, commissionId: 'c' },
      { account: accounts.commissionsHandedOver, amountCents: -550_000n },
    ]);
  });
});
