import { expect, test } from 'vitest';
import type { Day } from '@/lib/dates/rules';
import {
  decideRate,
  rateRefusalMessage,
  type DatedRate,
  type RateRefusal,
} from '@/lib/tax/rules/dated';

const rate = (authority: string, ratePercent: string, fromOn: Day, untilOn?: Day): DatedRate => ({
  ...{ id: `${authority} ${fromOn}`, authority, ratePercent, fromOn },
  untilOn: untilOn ?? null,
});
const rates = [
  rate('State', '5.5', '2025-01-01'),
  rate('County', '1.2', '2025-01-01', '2026-07-01'),
  rate('Town', '0.5', '2025-01-01', '2026-01-01'),
  rate('Town', '0.75', '2026-01-01'),
];
const wish = (authority: string, ratePercent: string, fromOn: Day) => ({
  ...{ authority, ratePercent, fromOn },
});

test('a new authority closes nothing', () => {
  expect(decideRate(rates, wish('District', '0.1', '2026-03-01'))).toEqual({
    ok: true,
    value: null,
  });
});

test('a new rate closes the open one of its authority', () => {
  const decided = decideRate(rates, wish('Town', '1', '2026-12-01'));
  expect(decided).toMatchObject({ ok: true, value: { id: 'Town 2026-01-01' } });
});

test('an authority may begin again on the very day on which it ended', () => {
  expect(decideRate(rates, wish('County', '1.5', '2026-07-01'))).toEqual({ ok: true, value: null });
});

test.each<[string, DatedRate['authority'], Day]>([
  ['on the day the open one begins', 'Town', '2026-01-01'],
  ['before the open one', 'Town', '2025-06-01'],
  ['within one that has its end', 'County', '2026-06-30'],
])('a rate cannot begin %s', (_label, authority, fromOn) => {
  expect(decideRate(rates, wish(authority, '1', fromOn))).toMatchObject({
    ok: false,
    refusal: { code: 'rate_follows_already', authority },
  });
});

test.each([
  ['93.74999', true],
  ['93.75', false],
])('all rates together stay below a hundred: %s beside 6.25', (ratePercent, taken) => {
  expect(decideRate(rates, wish('District', ratePercent, '2026-12-01')).ok).toBe(taken);
});

const refusals: Record<RateRefusal['code'], RateRefusal> = {
  rate_follows_already: {
    ...{ code: 'rate_follows_already', authority: 'Town', fromOn: '2026-01-01' },
  },
  rates_above_hundred: { code: 'rates_above_hundred', togetherPercent: '105.5' },
  rate_unknown: { code: 'rate_unknown' },
  rate_ends_before_it_begins: { code: 'rate_ends_before_it_begins', fromOn: '2026-01-01' },
};

test.each(Object.values(refusals))('$code is told in a full sentence', (refusal) => {
  expect(rateRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});
