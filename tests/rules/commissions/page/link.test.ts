import { describe, expect, test } from 'vitest';
import { makeLinkInput } from '@/lib/commissions/input/page/link';
import {
  answersPerHour,
  decideAnswer,
  isToken,
  linkIsOpen,
  linkWords,
  runsOutAt,
} from '@/lib/commissions/rules/page/link';

const noon = new Date('2026-05-12T12:00:00Z');
const later = (ms: number) => new Date(noon.getTime() + ms);
const open = { runsOutAt: later(1), withdrawnAt: null };

test.each([
  ['43 letters of the alphabet for addresses', `${'aZ09-_'.repeat(7)}x`, true],
  ['one too few', 'a'.repeat(42), false],
  ['one too many', 'a'.repeat(44), false],
  ['a sign of the other alphabet', `${'a'.repeat(42)}+`, false],
  ['a padded one', `${'a'.repeat(42)}=`, false],
  ['a line after it', `${'a'.repeat(43)}\n`, false],
  ['a way out', '../../sign-in', false],
  ['nothing', '', false],
])('%s', (_name, text, is) => {
  expect(isToken(text)).toBe(is);
});

test('sixty days are sixty times twenty-four hours, over a change of the clocks too', () => {
  expect(runsOutAt(new Date('2026-03-01T20:00:00Z'), 60).toISOString()).toBe(
    '2026-04-30T20:00:00.000Z',
  );
});

describe('an address', () => {
  test.each([
    ['opens until a moment before it runs out', open, noon, true, 'open'],
    ['opens nothing at the moment at which it runs out', open, later(1), false, 'run out'],
    [
      'opens nothing when it was withdrawn',
      { ...open, withdrawnAt: noon },
      noon,
      false,
      'withdrawn',
    ],
  ] as const)('%s', (...[, link, at, is, words]) => {
    expect(linkIsOpen(link, at)).toBe(is);
    expect(linkWords(link, at)).toBe(words);
  });
});

describe('an answer', () => {
  test.each([
    ['through none', null, 0, 'link_shut'],
    ['through a withdrawn one', { ...open, withdrawnAt: noon }, 0, 'link_shut'],
    ['through a withdrawn one, after many', { ...open, withdrawnAt: noon }, 99, 'link_shut'],
    ['after sixty in the hour', open, answersPerHour, 'too_many_answers'],
    ['after fifty-nine in the hour', open, answersPerHour - 1, 'done'],
  ] as const)('%s', (_name, link, answers, code) => {
    const decided = decideAnswer(link, answers, noon);
    expect(decided.ok ? 'done' : decided.refusal.code).toBe(code);
  });
});

test.each([
  ['', false],
  ['6', false],
  ['7', true],
  ['180', true],
  ['181', false],
  ['-7', false],
  ['60.5', false],
])('an address for %j days is made: %s', (days, is) => {
  const form = {
    requestKey: '6f1e1f0a-54c5-4f4e-9a43-3a0a5f5b8f10',
    commissionId: '6f1e1f0a-54c5-4f4e-9a43-3a0a5f5b8f11',
    forName: 'Marit Oland',
    days,
  };
  expect(makeLinkInput.safeParse(form).success).toBe(is);
});
