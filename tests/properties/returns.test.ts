import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { entryBalances } from '@/lib/ledger/rules';
import { sumCents } from '@/lib/money/rules';
import { decideReturn, type DecidedReturn } from '@/lib/returns/rules';
import { returnEntry } from '@/lib/returns/rules/entry';
import type { SoldSale } from '@/lib/returns/rules/sold';
import { workOutTax } from '@/lib/tax/rules';
import { aLine, aSoldSale, asked, aTender, setting } from '../rules/returns/a-sale';

const taxParts = [
  { name: 'City', ratePercent: '1.9' },
  { name: 'County', ratePercent: '0.35' },
  { name: 'State', ratePercent: '6.5' },
];

const slip = fc.record({
  lines: fc.array(
    fc.record({
      quantity: fc.integer({ min: 1, max: 6 }),
      netCents: fc.bigInt({ min: 0n, max: 200_000n }),
      taxable: fc.boolean(),
    }),
    { minLength: 1, maxLength: 5 },
  ),
  roundBy: fc.constantFrom('invoice' as const, 'item' as const),
  cashShare: fc.integer({ min: 0, max: 100 }),
  feePercent: fc.constantFrom('0', '15', '33.33'),
});

/** Which line brings how many back next; it wraps round what is left. */
const course = fc.array(fc.tuple(fc.nat(20), fc.integer({ min: 1, max: 6 })), { maxLength: 40 });

type Slip = typeof slip extends fc.Arbitrary<infer Value> ? Value : never;

function saleOf({ lines, roundBy, cashShare }: Slip): SoldSale {
  const taxed = lines.map(({ netCents: cents, taxable }) => ({ cents, taxable }));
  const due = workOutTax({ lines: taxed, parts: taxParts, roundBy });
  const totalCents = sumCents(lines.map((line) => line.netCents)) + due.taxCents;
  const cashCents = (totalCents * BigInt(cashShare)) / 100n;
  return aSoldSale({
    lines: lines.map(({ quantity, netCents }, at) =>
      aLine({ id: `line-${at}`, quantity, netCents, taxCents: due.perLineCents[at] ?? 0n }),
    ),
    taxes: due.parts.map(({ name, taxCents }) => ({ authority: name, taxCents, backCents: 0n })),
    tenders: [
      aTender({ id: 'cash', amountCents: cashCents }),
      aTender({ id: 'card', kind: 'card', amountCents: totalCents - cashCents }),
    ],
  });
}

/** The sale as it is after a return answered it. */
function answered(sale: SoldSale, back: DecidedReturn): SoldSale {
  return {
    ...sale,
    answeredTimes: sale.answeredTimes + 1,
    lines: sale.lines.map((line) => {
      const came = back.lines.filter((each) => each.line.id === line.id);
      return {
        ...line,
        back: {
          quantity: line.back.quantity + came.reduce((sum, each) => sum + each.pieces, 0),
          netCents: line.back.netCents + sumCents(came.map((each) => each.netCents)),
          taxCents: line.back.taxCents + sumCents(came.map((each) => each.taxCents)),
          numbers: [],
        },
      };
    }),
    taxes: sale.taxes.map((tax) => ({
      ...tax,
      backCents:
        tax.backCents +
        sumCents(
          back.taxes
            .filter((each) => each.authority === tax.authority)
            .map((each) => each.taxCents),
        ),
    })),
    tenders: sale.tenders.map((tender) => ({
      ...tender,
      backCents:
        tender.backCents +
        sumCents(
          back.refunds
            .filter((each) => each.tender.id === tender.id)
            .map((each) => each.amountCents),
        ),
    })),
  };
}

/** Brings pieces back in that order, and then all that is left, line by line. */
function bringAllBack(sold: SoldSale, steps: readonly (readonly [number, number])[], fee: string) {
  let sale = sold;
  const returns: DecidedReturn[] = [];
  const bring = (at: number, wanted: number): void => {
    const line = sale.lines[at % sale.lines.length];
    const left = line ? line.quantity - line.back.quantity : 0;
    if (!line || left === 0) return;
    const one = { lineId: line.id, pieces: Math.min(wanted, left), numbers: [], flaw: '' };
    const want = asked({ lines: [{ ...one, to: 'shelf' }], fee: { percent: fee } });
    const result = decideReturn(sale, want, setting());
    if (!result.ok) throw new Error(result.refusal.code);
    returns.push(result.value);
    sale = answered(sale, result.value);
  };
  for (const [at, wanted] of steps) bring(at, wanted);
  sold.lines.forEach((_line, at) => {
    bring(at, 6);
  });
  return { sale, returns };
}

test.prop([slip, course])(
  'parts in any order add up to what was charged, by line and by authority',
  (sold, steps) => {
    const { sale } = bringAllBack(saleOf(sold), steps, sold.feePercent);
    for (const line of sale.lines) {
      expect(line.back).toMatchObject({
        quantity: line.quantity,
        netCents: line.netCents,
        taxCents: line.taxCents,
      });
    }
    for (const tax of sale.taxes) expect(tax.backCents).toBe(tax.taxCents);
  },
);

test.prop([slip, course])(
  'no tender gives back more than was paid that way, and without a fee exactly that',
  (sold, steps) => {
    const { sale } = bringAllBack(saleOf(sold), steps, sold.feePercent);
    for (const tender of sale.tenders) {
      expect(tender.backCents <= tender.amountCents).toBe(true);
      if (sold.feePercent === '0') expect(tender.backCents).toBe(tender.amountCents);
    }
  },
);

test.prop([slip, course])('every return adds up, in its sums and in its entry', (sold, steps) => {
  const { returns } = bringAllBack(saleOf(sold), steps, sold.feePercent);
  for (const back of returns) {
    expect(sumCents(back.refunds.map((each) => each.amountCents))).toBe(back.totalCents);
    expect(sumCents(back.taxes.map((each) => each.taxCents))).toBe(back.taxCents);
    expect(back.netCents + back.taxCents - back.feeCents).toBe(back.totalCents);
    const postings = returnEntry(back, null);
    expect(sumCents(postings.map((each) => each.amountCents))).toBe(0n);
    if (back.netCents > 0n) expect(entryBalances(postings)).toBe(true);
  }
});
