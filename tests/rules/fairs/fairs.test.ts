import { expect, test } from 'vitest';
import { countFairInput, keepFairInput } from '@/lib/fairs/input';
import { fairPlaceName, fairRefusalMessage, hoursText, readHours } from '@/lib/fairs/rules';
import { fairEarning, fairEarningSteps, fairEarningWords } from '@/lib/fairs/rules/earning';

const money = {
  ...{ soldCents: 124_000n, feeCents: 20_000n, travelCents: 8_000n, otherCents: 3_000n },
  ...{ makingCents: 20_000n, minutes: 16 * 60 },
};

test('what is left is what was sold, less being there, less making, and so much an hour', () => {
  const earning = fairEarning(money);
  expect(earning).toEqual({
    ...{ costCents: 31_000n, leftCents: 93_000n, afterMakingCents: 73_000n },
    perHourCents: 4_563n,
  });
  expect(fairEarningWords(money, earning)).toBe(
    '$1,240.00 sold, against $310.00 of fee, travel and the rest and $200.00 of making: ' +
      '$730.00 is left, $45.63 an hour over 16 hours.',
  );
  expect(fairEarningSteps(money, earning)).toHaveLength(4);
});

test('a fair that lost money says so, and without hours nothing is told by the hour', () => {
  const poor = { ...money, soldCents: 10_000n, makingCents: 0n, minutes: 0 };
  const earning = fairEarning(poor);
  expect(earning).toMatchObject({ afterMakingCents: -21_000n, perHourCents: null });
  expect(fairEarningWords(poor, earning)).toContain('the fair lost $210.00');
  expect(fairEarningSteps(poor, earning)).toHaveLength(3);
  const none = { ...poor, soldCents: 0n };
  expect(fairEarningWords(none, fairEarning(none))).toBe(
    'Nothing is sold there yet. Being there costs $310.00.',
  );
});

test.each([
  ['', 0],
  ['16', 960],
  ['16:30', 990],
  ['16.5', 990],
  ['16,25', 975],
  ['0.01', 1],
])('%j hours are %i minutes', (text, minutes) => {
  expect(readHours(text)).toEqual({ ok: true, value: minutes });
});

test.each(['sixteen', '-3', '16:75', '1e3', '1001'])('%j are no hours of a fair', (text) => {
  expect(readHours(text).ok).toBe(false);
});

test('minutes are told as hours', () => {
  expect([hoursText(960), hoursText(975), hoursText(0)]).toEqual(['16', '16:15', '0']);
});

test('a fair’s place has a name of its own, however long the fair’s is', () => {
  expect(fairPlaceName('Rain Market', 'Cedar Reach', '2026-11-14')).toBe(
    'Rain Market, Cedar Reach, 14 Nov 2026',
  );
  const long = fairPlaceName('x'.repeat(80), 'y'.repeat(80), '2026-11-14');
  expect(long.length).toBeLessThanOrEqual(120);
  expect(long.endsWith('14 Nov 2026')).toBe(true);
});

const fair = {
  ...{ requestKey: '0190b7a6-0000-7000-8000-000000000001', name: 'Rain Market' },
  ...{ taxPlaceId: '0190b7a6-0000-7000-8000-000000000002' },
  ...{ fromOn: '2026-11-14', untilOn: '2026-11-15' },
};

test.each([
  ['31 February', { untilOn: '2027-02-31' }, 'untilOn'],
  ['an end before the beginning', { untilOn: '2026-11-13' }, 'untilOn'],
  ['a fair of a year', { untilOn: '2027-11-13' }, 'untilOn'],
  ['three decimals of a fee', { feeCents: '12.345' }, 'feeCents'],
  ['a fee below zero', { feeCents: '-5' }, 'feeCents'],
  ['no name', { name: '  ' }, 'name'],
  ['a note of ten thousand signs', { note: 'x'.repeat(10_000) }, 'note'],
])('the form tells %s at its field', (_label, over, field) => {
  const read = keepFairInput.safeParse({ ...fair, ...over });
  expect(read.success ? [] : read.error.issues.map((issue) => issue.path.join('.'))).toEqual([
    field,
  ]);
});

test('a count is read from its fields, and a wrong one is told where it stands', () => {
  const key = fair.taxPlaceId;
  const form = { requestKey: fair.requestKey, fairId: key, toId: key };
  const read = countFairInput.parse({ ...form, [`seen.${key}#4`]: '1', [`back.${key}#4`]: '1' });
  expect(read.rows).toEqual([
    { key: `${key}#4`, seen: 1, back: 1, broken: 0, missing: 0, soldUnwritten: 0 },
  ]);
  const wrong = countFairInput.safeParse({ ...form, [`seen.${key}`]: '3', [`back.${key}`]: '-1' });
  expect(wrong.success ? null : wrong.error.issues[0]?.path).toEqual([`back.${key}`]);
});

test('an edition is asked for its number', () => {
  const refusal = { code: 'which_number', title: 'Fern', sku: 'FN-12', here: [3, 5] } as const;
  expect(fairRefusalMessage(refusal)).toBe(
    'Fern is an edition: write which number goes, such as FN-12#3. There are 3, 5.',
  );
});
