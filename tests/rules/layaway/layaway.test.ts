import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { addDays, type Day } from '@/lib/dates/rules';
import { beginLayawayInput } from '@/lib/layaway/input';
import {
  layawayMoney,
  layawayStanding,
  priceLayaway,
  scheduleOf,
  type AgreedLine,
} from '@/lib/layaway/rules';
import { checkPlan, planByDefault, shareDiscount } from '@/lib/layaway/rules/begin';
import { layawayRefusalMessage } from '@/lib/layaway/rules/refusals';
import { sumCents } from '@/lib/money/rules';
import type { TaxSetting } from '@/lib/tax/rules/treatment';

const agreedOn: Day = '2026-11-20';
const setting: TaxSetting = {
  ...{ place: 'Cedar Landing', state: 'WA', isRegistered: true, treatments: [] },
  parts: [{ name: 'State', ratePercent: '8' }],
};
const panel: AgreedLine = {
  ...{ skuId: 'a', designId: 'd', title: 'Heron', what: 'plaque', quantity: 1, weightG: null },
  ...{ editionNumber: null, unitPriceCents: 48_000n, discountCents: 0n, discountReason: '' },
  ...{ givenById: 's', unitCostCents: null, holdIds: ['h'] },
};

describe('the price of a layaway', () => {
  test('is the agreed one, with the tax of the day', () => {
    const { netCents, taxCents, totalCents, lines } = priceLayaway([panel], setting, 'invoice');
    expect([netCents, taxCents, totalCents]).toEqual([48_000n, 3_840n, 51_840n]);
    expect(lines[0]).toMatchObject({ endsHoldIds: ['h'], discounts: [], numbers: [] });
  });

  test('is taxed after what was taken off, which is told with its reason', () => {
    const less = { ...panel, discountCents: 4_800n, discountReason: 'third panel' };
    const { totalCents, lines } = priceLayaway([less], setting, 'invoice');
    expect(totalCents).toBe(46_656n);
    expect(lines[0]?.discounts).toMatchObject([{ amountCents: 4_800n, reason: 'third panel' }]);
  });

  test('is not taxed where the gallery is not registered', () => {
    const elsewhere = { ...setting, isRegistered: false, parts: [] };
    expect(priceLayaway([panel], elsewhere, 'invoice').taxCents).toBe(0n);
  });
});

describe('the schedule', () => {
  // Common practice: a quarter down and equal payments; the cents follow from the largest rest.
  test('is the down payment and equal parts, to the cent', () => {
    const plan = { totalCents: 10_000n, downCents: 2_500n, payments: 7, agreedOn };
    const dues = scheduleOf({ ...plan, finalOn: addDays(agreedOn, 70) });
    expect(dues.map((due) => due.amountCents)).toEqual([
      ...[2_500n, 1_072n, 1_072n, 1_072n],
      ...[1_071n, 1_071n, 1_071n, 1_071n],
    ]);
    expect(dues.at(1)?.dueOn).toBe('2026-11-30');
    expect(dues.at(-1)?.dueOn).toBe('2027-01-29');
  });

  property.prop([
    fc.bigInt({ min: 20n, max: 9_000_000n }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 12, max: 366 }),
    fc.integer({ min: 0, max: 99 }),
  ])(
    'always adds up, rises in days and leaves no due without its cent',
    (...[total, n, days, percent]) => {
      const downCents = (total * BigInt(percent)) / 100n;
      const finalOn = addDays(agreedOn, days);
      const plan = { totalCents: total, downCents, payments: n, agreedOn, finalOn };
      fc.pre(checkPlan(plan).ok);
      const dues = scheduleOf(plan);
      expect(sumCents(dues.map((due) => due.amountCents))).toBe(total);
      expect(dues.every((due) => due.amountCents > 0n)).toBe(true);
      const days_ = dues.map((due) => due.dueOn);
      expect(new Set(days_).size).toBe(days_.length);
      expect(days_.toSorted()).toEqual(days_);
      expect(days_.at(-1)).toBe(finalOn);
    },
  );

  test.each([
    ['fewer days than payments', { finalOn: '2026-11-22', payments: 3 }, 'last_day_too_soon'],
    ['over a year', { finalOn: '2027-11-22' }, 'last_day_too_far'],
    ['all of it down', { downCents: 10_000n }, 'down_leaves_nothing'],
    ['two cents for three payments', { downCents: 9_998n }, 'down_leaves_nothing'],
  ] as const)('%s is refused', (_label, over, code) => {
    const plan = { totalCents: 10_000n, downCents: 2_500n, payments: 3, agreedOn };
    const asked = { ...plan, finalOn: '2027-01-19' as const, ...over };
    expect(checkPlan(asked)).toMatchObject({ refusal: { code } });
  });

  test.each([51_840n, 100n, 4n, 3n])('proposed for %s cents can be kept', (totalCents) => {
    const plan = planByDefault(totalCents, agreedOn, { layawayDownPercent: '25', layawayDays: 90 });
    expect(checkPlan(plan).ok).toBe(totalCents >= 3n);
    expect(plan.downCents).toBeLessThanOrEqual(totalCents);
  });
});

describe('a discount', () => {
  const asked = { discountCents: 1_000n, reason: 'a friend', percentMost: '10' };
  test('is shared by the prices, to the cent', () => {
    const shares = shareDiscount([3_000n, 7_001n], asked);
    expect(shares).toEqual({ ok: true, value: [300n, 700n] });
  });
  test.each([
    ['without a reason', { reason: '' }, 'discount_without_reason'],
    ['of everything', { discountCents: 10_001n }, 'discount_above_price'],
    ['beyond staff', { discountCents: 1_001n }, 'discount_beyond_staff'],
  ])('%s is refused', (_label, over, code) => {
    const shares = shareDiscount([3_000n, 7_001n], { ...asked, ...over });
    expect(shares).toMatchObject({ refusal: { code } });
  });
  test('of the owner may go beyond', () => {
    const owner = { ...asked, discountCents: 5_000n, percentMost: null };
    expect(shareDiscount([3_000n, 7_001n], owner).ok).toBe(true);
  });
});

describe('the money', () => {
  const dues = scheduleOf({
    ...{ totalCents: 10_000n, downCents: 2_500n, payments: 3, agreedOn },
    finalOn: addDays(agreedOn, 90),
  });
  const facts = { totalCents: 10_000n, dues, todayOn: agreedOn };
  const money = (over: Partial<Parameters<typeof layawayMoney>[0]>) =>
    layawayMoney({ ...facts, paidCents: 0n, ...over });

  test.each([
    ['nothing paid on the first day', {}, 0n, '2026-11-20', 2_500n],
    ['nothing paid a day later', { todayOn: '2026-11-21' }, 2_500n, '2026-11-20', 2_500n],
    ['a part of the second', { paidCents: 3_000n }, 0n, '2026-12-20', 2_000n],
    ['two behind', { paidCents: 2_600n, todayOn: '2027-02-01' }, 4_900n, '2026-12-20', 4_900n],
    ['the tax went up', { paidCents: 10_000n, totalCents: 10_100n }, 0n, '2027-02-18', 100n],
  ] as const)('%s', (...[, over, lateCents, dueOn, amountCents]) => {
    expect(money(over)).toMatchObject({ lateCents, next: { dueOn, amountCents } });
  });

  test('paid off asks for nothing more', () => {
    expect(money({ paidCents: 10_000n })).toMatchObject({ remainingCents: 0n, next: null });
  });
  test('the tax went down: too much was paid', () => {
    const less = money({ paidCents: 10_000n, totalCents: 9_900n });
    expect(less).toMatchObject({ remainingCents: 0n, tooMuchCents: 100n, next: null });
  });

  property.prop([
    fc.bigInt({ min: 0n, max: 12_000n }),
    fc.bigInt({ min: 9_000n, max: 11_000n }),
    fc.integer({ min: -1, max: 120 }),
  ])(
    'what is late and what is next never come to more than what remains',
    (...[paid, total, on]) => {
      const todayOn = addDays(agreedOn, on);
      const now = money({ paidCents: paid, totalCents: total, todayOn });
      expect(now.remainingCents - now.tooMuchCents).toBe(total - paid);
      expect(now.lateCents).toBeLessThanOrEqual(now.remainingCents);
      expect(now.next?.amountCents ?? 0n).toBeLessThanOrEqual(now.remainingCents);
      expect(now.next === null).toBe(now.remainingCents === 0n);
    },
  );

  test.each([
    [{ isEnded: true, isHandedOver: true }, {}, 'handed_over'],
    [{ isEnded: true, isHandedOver: false }, {}, 'cancelled'],
    [{ isEnded: false, isHandedOver: false }, { paidCents: 10_000n }, 'paid_off'],
    [{ isEnded: false, isHandedOver: false }, { todayOn: '2026-11-21' }, 'late'],
    [{ isEnded: false, isHandedOver: false }, {}, 'running'],
  ] as const)('%o with %o is %s', (ended, over, standing) => {
    expect(layawayStanding(ended, money(over))).toBe(standing);
  });
});

describe('the form of a layaway', () => {
  const id = '01936b1e-7c5a-7b6e-8f00-000000000001';
  const typed = {
    ...{ requestKey: id, collectorId: id, pieces: 'HERON', shownNet: '480.00' },
    ...{ down: '129.60', payments: '3', finalOn: '2027-02-18' },
  };
  test.each([
    ['nobody', { collectorId: '' }, 'collectorId'],
    ['part of a cent', { down: '1.005' }, 'down'],
    ['less than nothing', { down: '-5' }, 'down'],
    ['no payments', { payments: '0' }, 'payments'],
    ['too many payments', { payments: '13' }, 'payments'],
    ['31 February', { finalOn: '2027-02-31' }, 'finalOn'],
    ['a card’s number', { discountReason: '4111 1111 1111 1111' }, 'discountReason'],
  ])('asks again about %s', (_label, over, field) => {
    const read = beginLayawayInput.safeParse({ ...typed, ...over });
    expect(read.error?.issues.map((issue) => issue.path.join('.'))).toContain(field);
  });
  test('nothing typed is no discount', () => {
    expect(beginLayawayInput.parse({ ...typed, discount: '' }).discount).toBe(0n);
  });
});

test('a refusal says the amount', () => {
  const refusal = { code: 'more_than_remains', remainingCents: 480n, amountCents: 500n } as const;
  const words = layawayRefusalMessage(refusal, 'America/Los_Angeles');
  expect(words).toBe('Only $4.80 is still to be paid.');
});
