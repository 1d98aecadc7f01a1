import { fc, test as prop } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { discountInput, reportSoldInput } from '@/lib/consignment/input';
import {
  bearers,
  lineDue,
  lineRefusalMessage,
  ourPartOf,
  statementDue,
  type LineTold,
} from '@/lib/consignment/rules';
import { ageOf, owedByAge, sitsTooLong } from '@/lib/consignment/rules/owed';
import { reportRefusalMessage } from '@/lib/consignment/rules/refusals';
import { findLineFault } from '@/lib/consignment/rules/with-them';
import type { PieceAtPlace } from '@/lib/stock/rules/moves/move';

const tern: LineTold = {
  ...{ skuId: 't', sku: 'TS-10-CI', number: null, quantity: 2, soldOn: '2026-03-09' },
  ...{ retailCents: 5_205n, discount: null, borneBy: 'nobody' },
};
const march = { sharePercent: '45.5', fromOn: '2026-03-01', untilOn: '2026-03-31' } as const;

describe('what is due for a line', () => {
  test('the share is of the whole line, rounded half a cent up', () => {
    // 45.5 % of 104.10 is 47.3655.
    expect(lineDue(tern, '45.5')).toMatchObject({
      ok: true,
      value: { grossCents: 10_410n, shareCents: 4_737n, dueCents: 5_673n },
    });
  });

  test('an odd cent of a discount that both bear is the gallery’s', () => {
    expect(ourPartOf(3_801n, 'both')).toBe(1_900n);
    expect(ourPartOf(1n, 'both')).toBe(0n);
  });

  test('a bearer of no discount bears nothing', () => {
    const due = lineDue({ ...tern, borneBy: 'us' }, '50');
    expect(due).toMatchObject({ ok: true, value: { borneBy: 'nobody', ourDiscountCents: 0n } });
  });

  test.each<[string, Partial<LineTold>, string]>([
    [
      'discount_above_price',
      { discount: { cents: 10_411n }, borneBy: 'nobody' },
      'more than the price, $104.10',
    ],
    ['discount_needs_bearer', { discount: { cents: 10_410n } }, 'Say who bears the discount'],
    [
      'discount_above_ours',
      { discount: { cents: 10_410n }, borneBy: 'us' },
      'Our part is $56.73; we cannot bear more',
    ],
  ])('refuses %s before what comes after it', (code, over, sentence) => {
    const due = lineDue({ ...tern, ...over }, '45.5');
    expect(due).toMatchObject({ ok: false, refusal: { code } });
    if (!due.ok) expect(lineRefusalMessage(due.refusal)).toContain(sentence);
  });

  test('a day outside the statement is told with its line', () => {
    const late = { ...tern, soldOn: '2026-04-01' } as const;
    const due = statementDue([tern, late], march);
    expect(due).toMatchObject({ ok: false, refusal: { code: 'sold_outside', place: 1 } });
    if (!due.ok) expect(lineRefusalMessage(due.refusal)).toContain('1 Mar 2026 to 31 Mar 2026');
  });
});

const anyLine = fc.record({
  retailCents: fc.bigInt({ min: 1n, max: 10_000_000n }),
  quantity: fc.integer({ min: 1, max: 99 }),
  share: fc.integer({ min: 1, max: 9_999 }),
  off: fc.integer({ min: 0, max: 100 }),
  borneBy: fc.constantFrom(...bearers.map((each) => each.bearer)),
});

prop.prop([anyLine])(
  'share, our part of the discount and the due are the price, to the cent',
  ({ share, off, ...told }) => {
    const sharePercent = `${Math.floor(share / 100)}.${String(share % 100).padStart(2, '0')}`;
    const due = lineDue({ ...tern, ...told, discount: { percent: String(off) } }, sharePercent);
    if (!due.ok) {
      expect(['discount_needs_bearer', 'discount_above_ours']).toContain(due.refusal.code);
      return;
    }
    const { grossCents, shareCents, ourDiscountCents, dueCents } = due.value;
    expect(shareCents + ourDiscountCents + dueCents).toBe(grossCents);
    expect(dueCents >= 0n && shareCents >= 0n && ourDiscountCents >= 0n).toBe(true);
  },
);

describe('what is owed, by age', () => {
  test.each([
    ['2026-04-15', 'not_due'],
    ['2026-04-14', 'late_30'],
    ['2026-03-16', 'late_30'],
    ['2026-03-15', 'late_60'],
    ['2026-02-14', 'late_60'],
    ['2026-02-13', 'later'],
  ] as const)('due on %s is %s on 15 April', (dueOn, age) => {
    expect(ageOf(dueOn, '2026-04-15')).toBe(age);
  });

  test('adds up by age', () => {
    const debts = [
      { dueOn: '2026-04-20', owedCents: 100n },
      { dueOn: '2026-04-10', owedCents: 20n },
      { dueOn: '2026-04-01', owedCents: 3n },
      { dueOn: '2025-04-01', owedCents: 7n },
    ] as const;
    expect(owedByAge(debts, '2026-04-15')).toEqual({
      ...{ not_due: 100n, late_30: 23n, late_60: 0n, later: 7n },
    });
  });

  test('a piece sits too long from the hundred and twenty-first day', () => {
    expect(sitsTooLong('2026-01-01', '2026-05-01')).toBe(false);
    expect(sitsTooLong('2026-01-01', '2026-05-02')).toBe(true);
  });
});

describe('whether the pieces are with them', () => {
  const shelf: PieceAtPlace = {
    ...{ skuId: 't', sku: 'TS-10-CI', title: 'Tern', isNumbered: false, grade: 'first' },
    ...{ onHand: 3, held: 1, numbers: [], heldNumbers: [], heldFor: [] },
  };
  const numbered = { sku: 'HR-14-MO', isNumbered: true, onHand: 3, numbers: [3, 5, 7] };
  const edition = { ...shelf, ...numbered, heldNumbers: [5] };
  const there = new Map([shelf, edition].map((piece) => [piece.sku, piece]));
  const line = (sku: string, quantity = 1, number: number | null = null) => ({
    ...{ sku, quantity, number },
  });

  test('all that are there and free may be sold', () => {
    const lines = [line('TS-10-CI', 2), line('HR-14-MO', 1, 7), line('HR-14-MO', 1, 3)];
    expect(findLineFault(lines, there)).toBeNull();
  });

  test.each([
    ['not_with_them', [line('NO-1-X')], 'By our books no NO-1-X is with them.'],
    ['not_with_them', [line('TS-10-CI', 2), line('TS-10-CI', 2)], 'only 3 of TS-10-CI are'],
    ['held_there', [line('TS-10-CI', 3)], 'is held for somebody there'],
    ['number_needed', [line('HR-14-MO')], 'ask them which number they sold'],
    ['number_not_with_them', [line('HR-14-MO', 1, 9)], 'Number 9 of HR-14-MO is not with them'],
    ['held_there', [line('HR-14-MO', 1, 5)], 'is held for somebody there'],
    ['number_twice', [line('HR-14-MO', 1, 7), line('HR-14-MO', 1, 7)], 'on the list twice'],
  ])('%s is told', (code, lines, sentence) => {
    const fault = findLineFault(lines, there);
    expect(fault).toMatchObject({ code, place: lines.length - 1 });
    expect(fault && reportRefusalMessage(fault)).toContain(sentence);
  });
});

describe('the form of a statement', () => {
  test.each([
    ['', null],
    ['10%', { percent: '10' }],
    [' 38.00 ', { cents: 3_800n }],
  ])('a discount of “%s” is read', (text, told) => {
    expect(discountInput.parse(text)).toEqual(told);
  });

  test.each(['101%', '-5', '3.005', 'ten', '%'])('a discount of “%s” is told', (text) => {
    expect(discountInput.safeParse(text).success).toBe(false);
  });

  test('its lines are gathered in their order, and a fault is told at its field', () => {
    const form = {
      ...{ requestKey: crypto.randomUUID(), consigneeId: crypto.randomUUID() },
      ...{ fromOn: '2026-03-01', untilOn: '2026-03-31' },
      ...{ 'lines.1.sku': 'B', 'lines.0.sku': 'A', 'lines.0.quantity': '1' },
      ...{ 'lines.0.soldOn': '2026-02-31', 'lines.0.retail': '38.005', 'lines.0.borneBy': 'us' },
      ...{ 'lines.1.quantity': '-1', 'lines.1.soldOn': '2026-03-09', 'lines.1.retail': '0' },
      ...{ 'lines.1.borneBy': 'nobody' },
    };
    const read = reportSoldInput.safeParse(form);
    expect(read.error?.issues.map((fault) => fault.path.join('.')).sort()).toEqual([
      ...['lines.0.retail', 'lines.0.soldOn', 'lines.1.quantity', 'lines.1.retail'],
    ]);
  });
});
