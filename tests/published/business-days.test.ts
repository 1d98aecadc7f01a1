import { expect, test } from 'vitest';
import { cancelUntil, federalHolidays } from '@/lib/dates/rules/business-days';

// The U.S. Office of Personnel Management's lists of federal holidays, from memory: the days on
// which they were kept.
test.each([
  [
    2024,
    [
      '01-01',
      '01-15',
      '02-19',
      '05-27',
      '06-19',
      '07-04',
      '09-02',
      '10-14',
      '11-11',
      '11-28',
      '12-25',
    ],
  ],
  [
    2025,
    [
      '01-01',
      '01-20',
      '02-17',
      '05-26',
      '06-19',
      '07-04',
      '09-01',
      '10-13',
      '11-11',
      '11-27',
      '12-25',
    ],
  ],
])('the federal holidays of %d', (year, days) => {
  expect(federalHolidays(year)).toEqual(days.map((day) => `${year}-${day}`));
});

// The same office's historical data of 2023, as extracted from
// https://www.opm.gov/policy-data-oversight/pay-leave/federal-holidays/: the days on which they were
// kept. Two fell on a weekend; those days are holidays as well.
test('the federal holidays of 2023, two of them kept on another day', () => {
  const kept = ['01-02', '01-16', '02-20', '05-29', '06-19', '07-04', '09-04', '10-09', '11-10'];
  const all = [...kept, '11-23', '12-25', '01-01', '11-11'].sort();
  expect(federalHolidays(2023)).toEqual(all.map((day) => `2023-${day}`));
});

test('a holiday on a Saturday counts with the Friday before it, also over the new year', () => {
  expect(federalHolidays(2026)).toEqual(expect.arrayContaining(['2026-07-03', '2026-07-04']));
  expect(federalHolidays(2021)).toContain('2021-12-31');
  expect(federalHolidays(2022)).toEqual(expect.arrayContaining(['2022-12-25', '2022-12-26']));
});

test('Juneteenth is one since 2021', () => {
  expect(federalHolidays(2020).some((day) => day.endsWith('06-19'))).toBe(false);
});

// 16 CFR Part 429: until midnight of the third business day; Saturdays count.
test.each([
  ['a Monday', '2026-03-02', '2026-03-05'],
  ['a Thursday: Friday, Saturday, Monday', '2026-03-05', '2026-03-09'],
  ['a Saturday: Sunday does not count', '2026-03-07', '2026-03-11'],
  ['the day before Thanksgiving', '2026-11-25', '2026-11-30'],
  ['before a Fourth of July on a Saturday, kept on Friday', '2026-07-02', '2026-07-08'],
  ['over the new year', '2026-12-30', '2027-01-04'],
] as const)('signed at home on %s', (_what, signedOn, until) => {
  expect(cancelUntil(signedOn)).toBe(until);
});
