import { describe, expect, test } from 'vitest';
import { countLines, loadCountsWords, standingOf } from '@/lib/data/rules/plan';
import { dataRefusalMessage, type DataRefusal } from '@/lib/data/rules/refusals';

const began = new Date('2026-11-25T18:00:00Z');
const after = (seconds: number) => new Date(began.getTime() + seconds * 1_000);
const going = { isKept: false, endedAt: null, seenAt: began, stopAskedAt: null };

describe('where a file stands', () => {
  test.each([
    ['going', going, 59],
    ['half_way', going, 61],
    ['stopping', { ...going, stopAskedAt: began }, 5],
    ['half_way', { ...going, stopAskedAt: began }, 61],
    ['not_kept', { ...going, endedAt: began }, 5],
    ['kept', { ...going, isKept: true }, 5],
    ['kept', { ...going, isKept: true, endedAt: began }, 500],
  ] as const)('%s', (standing, load, seconds) => {
    expect(standingOf(load, after(seconds))).toBe(standing);
  });
});

test('lines are counted, those of one sale together', () => {
  const counts = countLines([
    { verdict: 'new', lines: 3 },
    { verdict: 'same' },
    { verdict: 'refused' },
    { verdict: 'new' },
  ]);
  expect(counts).toEqual({ newLines: 4, changedLines: 0, sameLines: 1, refusedLines: 1 });
  expect(loadCountsWords(counts)).toBe('4 new, 1 the same, 1 refused.');
  expect(loadCountsWords(countLines([]))).toBe('Nothing.');
});

const refusals: Record<DataRefusal['code'], DataRefusal> = {
  file_too_large: { code: 'file_too_large' },
  empty_file: { code: 'empty_file' },
  spreadsheet_file: { code: 'spreadsheet_file' },
  not_text: { code: 'not_text' },
  not_utf8: { code: 'not_utf8' },
  not_csv: { code: 'not_csv', line: 7 },
  column_twice: { code: 'column_twice', column: 'name' },
  column_missing: { code: 'column_missing', column: 'name' },
  no_lines: { code: 'no_lines' },
  too_many_lines: { code: 'too_many_lines' },
  not_allowed: { code: 'not_allowed', permission: 'data.bring_in' },
  key_used_for_something_else: { code: 'key_used_for_something_else' },
  unknown_load: { code: 'unknown_load' },
  things_changed: { code: 'things_changed' },
  lines_refused: { code: 'lines_refused', lines: 2 },
  nothing_to_do: { code: 'nothing_to_do' },
  stopped: { code: 'stopped' },
  ended_before: { code: 'ended_before' },
};

test.each(Object.entries(refusals))('%s is told in a sentence of its own', (code, refusal) => {
  const sentence = dataRefusalMessage(refusal);
  expect(sentence).toMatch(/^[A-Z2].*[.?]$/);
  const others = Object.values(refusals).filter((each) => each.code !== code);
  expect(others.map(dataRefusalMessage)).not.toContain(sentence);
});
