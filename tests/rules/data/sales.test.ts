import { describe, expect, test } from 'vitest';
import { headingOf } from '@/lib/data/rules/columns';
import { planSales, saleMark, type KnownForSales, type KnownSku } from '@/lib/data/rules/sales';
import {
  discountText,
  readDiscountText,
  readTaxText,
  readTenderText,
  salesColumns,
  salesRows,
  taxText,
  tenderText,
} from '@/lib/data/rules/sales-file';
import { readSales } from '@/lib/data/rules/sales-read';

const how = { zone: 'America/Los_Angeles', now: new Date('2026-11-25T20:00:00Z') };
const simple = ['date', 'sku', 'title', 'quantity', 'net', 'tax', 'tender'];

function read(rows: readonly string[][], columns: readonly string[] = simple) {
  const heading = headingOf(columns, salesColumns, ['tenders']);
  if (!heading.ok) throw new Error(heading.refusal.code);
  return readSales(
    heading.value,
    rows.map((cells, at) => ({ line: at + 2, cells })),
    how,
  );
}
const faultsOf = (cells: readonly string[], columns = simple) =>
  read([[...cells]], columns)[0]?.faults.map((fault) => fault.column);

const tern: KnownSku = {
  ...{ skuId: 'sku-1', designId: 'design-1', title: 'Tern over Shoals', what: 'relief tile' },
  ...{ making: 'open_stock', costCents: 4_000n, onHand: 3, isNumbered: false, numbersHere: [] },
};
const known: KnownForSales = {
  skus: new Map([['TERN-5', tern]]),
  peopleByKey: new Set(['wren-key']),
  peopleByName: new Map([
    ['wren alder', ['wren-key']],
    ['ash', ['ash-1', 'ash-2']],
  ]),
  places: new Map([['back room', 'place-2']]),
  taxPlaces: new Map(),
  staff: new Map(),
  sold: new Map(),
  usual: { placeId: 'place-1', taxPlaceId: 'tax-1' },
};

describe('a plain line of an earlier system', () => {
  test('becomes a sale of its own, at noon of its day', () => {
    const [row] = read([['2024-05-31', 'tern-5', '', '2', '100.00', '8.00', 'card']]);
    expect(row?.sale).toMatchObject({
      soldAt: new Date('2024-05-31T19:00:00Z'),
      soldOn: '2024-05-31',
      totalCents: 10_800n,
      tenders: [{ kind: 'card', amountCents: 10_800n, givenCents: null }],
      taxes: [{ authority: 'Earlier books', ratePercent: '8', taxCents: 800n }],
      lines: [{ kind: 'piece', code: 'TERN-5', unitPriceCents: 5_000n, taxableCents: 10_000n }],
    });
  });

  test('a net that does not divide is a price that does, less the rest', () => {
    const [row] = read([['2024-05-31', 'TERN-5', '', '3', '100.00', '', 'cash']]);
    expect(row?.sale?.lines[0]).toMatchObject({
      unitPriceCents: 3_334n,
      netCents: 10_000n,
      discounts: [{ kind: 'line', amountCents: 2n, reason: 'as in the earlier books' }],
    });
  });

  test('without a code it is a thing typed in', () => {
    const [row] = read([['5/31/2024', '', 'Hooks', '', '4.00', '', 'cash']]);
    expect(row?.sale?.lines[0]).toMatchObject({ kind: 'typed', title: 'Hooks', quantity: 1 });
  });

  test('a thing given away needs no tender', () => {
    const [row] = read([['2024-05-31', '', 'A card', '1', '0', '', '']]);
    expect(row?.sale).toMatchObject({ totalCents: 0n, tenders: [] });
  });
});

describe('what is refused, by its column', () => {
  const good = ['2024-05-31', 'TERN-5', '', '2', '100.00', '8.00', 'card'];
  const instead = (at: number, text: string) => good.with(at, text);
  test.each([
    [['sold on'], instead(0, '')],
    [['sold on'], instead(0, '2024-02-31')],
    [['sold on'], instead(0, '2027-01-01')],
    [['title'], ['2024-05-31', '', '', '2', '1.00', '', 'card']],
    [['quantity'], instead(3, '0')],
    [['quantity'], instead(3, '-1')],
    [['quantity'], instead(3, '1000000')],
    [['net'], instead(4, '-5')],
    [['net'], instead(4, '')],
    [['net'], instead(4, '10.005')],
    [['tax'], instead(5, 'eight')],
    [['tenders'], instead(6, 'shells')],
    [['tenders'], instead(6, 'voucher')],
    [['tenders'], instead(6, 'card 4111 1111 1111 1111')],
  ])('%j', (columns, cells) => {
    expect(faultsOf(cells)).toEqual(expect.arrayContaining(columns));
  });

  test.each([
    [['total'], ['2024-05-31', 'Hooks', '4.00', 'cash', '5.00', '']],
    [['kind'], ['2024-05-31', 'Hooks', '4.00', 'cash', '', 'instalment']],
  ])('%j', (columns, cells) => {
    const heading = ['date', 'title', 'net', 'tender', 'total', 'kind'];
    expect(faultsOf(cells, heading)).toEqual(columns);
  });

  test('tenders, taxes and discounts that do not add up', () => {
    const heading = ['date', 'title', 'price each', 'net', 'tax', 'tender', 'taxes', 'discounts'];
    const row = ['2024-05-31', 'Hooks', '5.00', '4.00', '0.40', 'cash 3.00'];
    const cells = [...row, 'State 10% of 4.00 is 0.50', 'line 0.50 a chip'];
    expect(faultsOf(cells, heading)).toEqual(['discounts', 'taxes', 'tenders']);
  });
});

describe('what is known decides', () => {
  const verdict = (cells: readonly string[], columns: readonly string[] = simple) =>
    planSales(read([[...cells]], columns), known)[0];

  test('a piece that is not in the catalogue', () => {
    const row = verdict(['2024-05-31', 'FERN-5', '', '1', '10.00', '', 'cash']);
    expect(row).toMatchObject({ verdict: 'refused', faults: [{ line: 2, column: 'code' }] });
  });

  test.each([
    ['Wren  Alder', 'new'],
    ['Ash', 'refused'],
    ['Nobody', 'refused'],
    ['', 'new'],
  ])('the person %j: %s', (person, wanted) => {
    const columns = ['date', 'title', 'net', 'tender', 'person'];
    const cells = ['2024-05-31', 'Hooks', '4.00', 'cash', person];
    expect(verdict(cells, columns)?.verdict).toBe(wanted);
  });

  test('a one-off that stands here, and a number that is here, cannot have been sold', () => {
    const oneOff = { ...tern, making: 'one_off' as const, onHand: 1 };
    const edition = { ...tern, isNumbered: true, numbersHere: [2] };
    const planned = (sku: KnownSku, numbers: string) => {
      const columns = [...simple, 'numbers'];
      const rows = [['2024-05-31', 'TERN-5', '', '1', '10.00', '', 'cash', numbers]];
      return planSales(read(rows, columns), { ...known, skus: new Map([['TERN-5', sku]]) })[0];
    };
    expect(planned(oneOff, '')?.verdict).toBe('refused');
    expect(planned({ ...oneOff, onHand: 0 }, '')?.verdict).toBe('new');
    expect(planned(edition, '')?.verdict).toBe('refused');
    expect(planned(edition, '2')?.verdict).toBe('refused');
    expect(planned(edition, '3')?.verdict).toBe('new');
  });

  test('of two alike, the first is the same when one is known', () => {
    const cells = ['2024-05-31', '', 'Hooks', '1', '4.00', '', 'cash'];
    const both = read([cells, cells]);
    const [sale] = both.flatMap((each) => each.sale ?? []);
    if (!sale) throw new Error('The line reads.');
    const plan = planSales(both, { ...known, sold: new Map([[saleMark(sale), 1]]) });
    expect(plan.map((row) => row.verdict)).toEqual(['same', 'new']);
  });
});

test('what is written reads as it was', () => {
  const columns = salesRows([])[0] ?? [];
  const heading = ['sale', 'sold at', 'title', 'price each', 'tax', 'taxes', 'tenders'];
  const cells = ['7', '2024-05-31T18:30:05.123Z', 'Hooks', '10.00', '0.80'];
  const money = 'State 6.5% of 10.00 is 0.65\nTown 1.5% of 10.00 is 0.15';
  const rows = [[...cells, money, 'cash 5.00 of 20.00\ncheque 5.80 ref No. 12']];
  const first = read(rows, heading).flatMap((each) => each.sale ?? []);
  const written = salesRows(first);
  const again = read(written.slice(1), columns).flatMap((each) => each.sale ?? []);
  expect(salesRows(again)).toEqual(written);
  expect(first).toHaveLength(1);
});

test('cells of several parts read as they were written', () => {
  const tax = { authority: 'Cedar 2% of it', ratePercent: '6.5', taxableCents: 5n, taxCents: 1n };
  expect(readTaxText(taxText(tax))).toEqual(tax);
  const tender = { kind: 'bank_transfer' as const, amountCents: 120n, givenCents: null };
  expect(readTenderText(tenderText({ ...tender, reference: 'a ref b' }))).toEqual({
    ...{ ...tender, reference: 'a ref b' },
  });
  const discount = { kind: 'gallery_share' as const, amountCents: 50n, reason: 'half 1.00 each' };
  expect(readDiscountText(discountText(discount))).toEqual(discount);
  expect([readTaxText('x'), readTenderText('x'), readDiscountText('x')]).toEqual([
    null,
    null,
    null,
  ]);
});
