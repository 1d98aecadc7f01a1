import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { eraseInput } from '@/lib/collectors/input/erase';
import {
  eraseRefusalMessage,
  erasedName,
  mayErase,
  openKinds,
  openSentence,
  titleWithout,
  type EraseRefusal,
  type OpenThing,
} from '@/lib/collectors/rules/erase';

const somebody = { name: 'Marit Oland', erasedOn: null, open: [] };
const open: OpenThing[] = [{ kind: 'hold', names: ['4', '7'] }];

describe('somebody is struck out', () => {
  test.each(['Marit Oland', ' marit  OLAND '])('when “%s” is typed', (typed) => {
    expect(mayErase(somebody, typed)).toEqual({ ok: true, value: true });
  });
  test.each<[EraseRefusal['code'], Parameters<typeof mayErase>[0], string]>([
    ['struck_out_already', { name: 'x', erasedOn: '2026-11-20', open }, 'another name'],
    ['name_does_not_fit', { ...somebody, open }, 'Marit'],
    ['still_open', { ...somebody, open }, 'Marit Oland'],
  ])('not when %s, in this order', (code, who, typed) => {
    expect(mayErase(who, typed)).toMatchObject({ ok: false, refusal: { code } });
  });
});

const sentences: Record<EraseRefusal['code'], [EraseRefusal, RegExp]> = {
  not_allowed: [{ code: 'not_allowed', permission: 'collectors.erase' }, /Owner can\.$/],
  key_used_for_something_else: [{ code: 'key_used_for_something_else' }, /sent before/],
  unknown_collector: [{ code: 'unknown_collector' }, /Look them up again/],
  struck_out_already: [{ code: 'struck_out_already', on: '2026-11-20' }, /Friday 20 November 2026/],
  name_does_not_fit: [{ code: 'name_does_not_fit' }, /Type it as it is written/],
  still_open: [
    { code: 'still_open', open: [...open, { kind: 'we_owe', cents: 1_250n }] },
    /^Not while something is open\. Hold 4 and 7 are open\. .*\$12\.50 is owed to them\. .*\.$/,
  ],
};

test.each(Object.entries(sentences))('%s is told in words', (_code, [refusal, words]) => {
  expect(eraseRefusalMessage(refusal)).toMatch(words);
});

test.each(openKinds)('what is open of %s says what to do', (kind) => {
  for (const names of [['12'], ['12', '14']]) {
    expect(openSentence({ kind, names })).toMatch(/12.*\. [A-Z].*\.$/);
  }
});

test('money either way says whose it is', () => {
  expect(openSentence({ kind: 'they_owe', cents: 700n })).toMatch(/^They owe \$7\.00\./);
  expect(openSentence({ kind: 'we_owe', cents: 700n })).toMatch(/^\$7\.00 is owed to them\./);
});

test.each([
  ['Herons for the Olands', 'Commission 7'],
  ['MARIT’s stair', 'Commission 7'],
  ['Herons for the stair', 'Herons for the stair'],
  ['A holanda in blue', 'A holanda in blue'],
  ['Mar and Bo', 'Mar and Bo'],
])('the title %s becomes %s', (title, expected) => {
  expect(titleWithout(title, ['Marit Oland', 'Bo Mar'], 'Commission 7')).toBe(expected);
});

test('the form needs the name, and they are counted from then on', () => {
  const form = { requestKey: randomUUID(), collectorId: randomUUID(), typed: ' ' };
  expect(eraseInput.safeParse(form).success).toBe(false);
  expect(erasedName(3)).toBe('Erased collector 3');
});
