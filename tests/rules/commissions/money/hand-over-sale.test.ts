import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { taxKindOfLine, taxOfCommission } from '@/lib/commissions/rules/agreement/tax';
import { linesWith } from '@/lib/commissions/rules/agreement/lines';
import { lineKinds, lineWords, type CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import { accounts } from '@/lib/ledger/rules';
import { saleEntry } from '@/lib/ledger/rules/sale-entry';
import { sumCents } from '@/lib/money/rules';
import { decideCommissionSale, type CommissionSaleLine } from '@/lib/sales/rules';
import type { RoundBy, TaxPart } from '@/lib/tax/rules';
import type { TaxSetting } from '@/lib/tax/rules/treatment';

const parts: TaxPart[] = [
  { name: 'State', ratePercent: '6.5' },
  { name: 'Fernhollow', ratePercent: '1.75' },
];
const setting: TaxSetting = {
  ...{ place: 'Fernhollow', state: 'WA', isRegistered: true, parts },
  treatments: [{ kind: 'installation', treatment: 'not_taxed_when_separate', shareBy: null }],
};

const saleKinds: Record<CommissionLine['kind'], CommissionSaleLine['kind']> = {
  ...{ work: 'commission', frame: 'commission', design_fee: 'design_work' },
  ...{
    crate: 'shipping',
    freight: 'shipping',
    travel: 'installation',
    installation: 'installation',
  },
};

function line(kind: CommissionLine['kind'], amountCents: bigint): CommissionLine {
  return { kind, words: lineWords[kind], amountCents };
}

/** What the page reckons of these lines, and the sale that the hand-over makes of them. */
function both(lines: CommissionLine[], roundBy: RoundBy, paidCents = 0n) {
  const asked = lines.map(({ kind, amountCents: cents }) => ({ kind, cents }));
  const tax = taxOfCommission({ lines: asked, setting, taxAs: 'goods_hung', rule: null, roundBy });
  const sold = lines.map(({ kind, words, amountCents: cents }, at) => ({
    ...{ kind: saleKinds[kind], words, cents, taxKind: taxKindOfLine[kind] },
    taxableCents: tax.perLine[at]?.taxableCents ?? 0n,
  }));
  const commission = { title: 'Herons', what: 'Commission 7', lines: sold, paidCents };
  return { tax, sale: decideCommissionSale(commission, parts, roundBy) };
}

describe('the sale of a hand-over', () => {
  test('earns each line in its place, and holds the tax for each authority', () => {
    const lines = [line('work', 900_000n), line('freight', 40_000n), line('installation', 60_000n)];
    const { tax, sale } = both(lines, 'invoice', 540_000n);
    // The hanging stands apart and is not taxed: 8.25 % of 9,400.00 are 775.50.
    expect([tax.taxCents, sale.taxCents, sale.totalCents]).toEqual([77_550n, 77_550n, 1_077_550n]);
    const entry = saleEntry({ ...sale, commissionId: 'c', collectorId: 'm' });
    const of = (account: string) =>
      sumCents(entry.filter((each) => each.account === account).map((each) => each.amountCents));
    expect(of(accounts.commissionsHandedOver)).toBe(-900_000n);
    expect(of(accounts.deliveryCharged)).toBe(-40_000n);
    expect(of(accounts.workCharged)).toBe(-60_000n);
    expect(of(accounts.taxHeld)).toBe(-77_550n);
    expect(of(accounts.deposits)).toBe(540_000n);
    expect(of(accounts.owedByCollectors)).toBe(537_550n);
    expect(sumCents(entry.map((each) => each.amountCents))).toBe(0n);
  });
  test('what was paid beyond it is not used up', () => {
    const { sale } = both([line('work', 100_000n)], 'invoice', 200_000n);
    expect(sale.tenders).toMatchObject([{ kind: 'deposit', amountCents: 108_250n }]);
  });
});

const someLines = fc
  .array(
    fc.record({
      kind: fc.constantFrom(...lineKinds),
      amountCents: fc.bigInt({ min: 1n, max: 10n ** 7n }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((lines) => lines.map(({ kind, amountCents }) => line(kind, amountCents)));
const someChanges = fc.array(
  fc.record({
    kind: fc.constantFrom(...lineKinds),
    priceCents: fc.bigInt({ min: -(10n ** 5n), max: 10n ** 6n }),
  }),
  { maxLength: 3 },
);

test('whatever the lines and changes, the page reckons the total that the hand-over charges', () => {
  fc.assert(
    fc.property(
      someLines,
      someChanges,
      fc.constantFrom('invoice', 'item'),
      (lines, changes, roundBy) => {
        const agreed = linesWith(lines, changes);
        const { tax, sale } = both(agreed, roundBy);
        expect(sale.taxCents).toBe(tax.taxCents);
        const price = sumCents(agreed.map((each) => each.amountCents));
        expect(sale.totalCents).toBe(price + tax.taxCents);
        expect(sumCents(sale.tenders.map((tender) => tender.amountCents))).toBe(sale.totalCents);
      },
    ),
  );
});
