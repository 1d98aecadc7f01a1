import { describe, expect, test } from 'vitest';
import { parseCents } from '@/lib/money/rules';
import { decideReturn, type AskedReturn } from '@/lib/returns/rules';
import type { SoldLine } from '@/lib/returns/rules/sold';
import { aLine, aSoldSale, asked, aTender, oneBack, setting } from '../rules/returns/a-sale';

function cents(text: string): bigint {
  const read = parseCents(text);
  if (!read.ok) throw new Error(`${text} is not an amount`);
  return read.value;
}

/** What goes back of 100.00 and 8.00 tax: of the price after the fee, of the tax, and together. */
function givenBack(line: Partial<SoldLine>, want: Partial<AskedReturn>): bigint[] {
  const sale = aSoldSale({
    lines: [aLine({ netCents: cents('100.00'), taxCents: cents('8.00'), ...line })],
    taxes: [{ authority: 'State', taxCents: cents('8.00'), backCents: 0n }],
    tenders: [aTender({ amountCents: cents('108.00') })],
  });
  const decided = decideReturn(sale, asked(want), setting());
  if (!decided.ok) throw new Error(decided.refusal.code);
  const { netCents, feeCents, taxCents, totalCents } = decided.value;
  return [netCents - feeCents, taxCents, totalCents];
}

// Common practice, as legalclarity.org tells it: a full refund returns the full tax.
test('100.00 at 8 percent gives back 108.00', () => {
  expect(givenBack({}, {})).toEqual([cents('100.00'), cents('8.00'), cents('108.00')]);
});

// California, CDTFA annotation 490.0223: a restocking fee is not taxed, and the full tax goes back.
describe('a restocking fee leaves the tax alone', () => {
  test('a fee of 15.00: 85.00 and 8.00, together 93.00', () => {
    const back = givenBack({}, { fee: { percent: '15' } });
    expect(back).toEqual([cents('85.00'), cents('8.00'), cents('93.00')]);
  });
});

// New York, TSB-A-09(29): tax is refunded only on the price that is refunded.
describe('part of the price gives back its part of the tax', () => {
  test('60.00 of 100.00: 60.00 and 4.80, together 64.80', () => {
    const back = givenBack({ quantity: 5 }, { lines: [oneBack({ pieces: 3 })] });
    expect(back).toEqual([cents('60.00'), cents('4.80'), cents('64.80')]);
  });
});
