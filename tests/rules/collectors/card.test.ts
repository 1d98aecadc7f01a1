import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { noteInput, ownedInput, personInput } from '@/lib/collectors/input/card';
import { cardRefusalMessage, tellsACode, type CardRefusal } from '@/lib/collectors/rules/card';
import { list } from '@/lib/collectors/rules/words';

describe('codes of doors and alarms are not kept', () => {
  test.each([
    ['The alarm code is 4471', true],
    ['gate: 0815 then the bell', true],
    ['key box by the step, 22190', true],
    ['The third door on the left', false],
    ['Hangs at 1450 mm', false],
    ['Likes the garden gate photographed in 2024, she says', false],
  ])('%s', (text, isCode) => {
    expect(tellsACode(text)).toBe(isCode);
  });
  test('the form says where they go', () => {
    const note = { requestKey: randomUUID(), collectorId: randomUUID(), words: 'Alarm: 99120' };
    const read = noteInput.safeParse(note);
    expect(read.error?.issues[0]?.message).toMatch(/work order/);
  });
});

const ofCollector = { requestKey: randomUUID(), collectorId: randomUUID() };

test('a name is enough for somebody of a household', () => {
  expect(personInput.parse({ ...ofCollector, name: ' June ', personId: '' })).toMatchObject({
    ...{ personId: null, name: 'June', said: '', part: '', email: null, phone: null, reach: '' },
  });
});

test.each([
  ['a piece told of needs a name', {}, ['title']],
  ['one that was sold has its own', { saleLineId: randomUUID() }, []],
  ['one that was made has its own', { commissionId: randomUUID() }, []],
  ['one told of and changed keeps one', { ownedId: randomUUID() }, ['title']],
])('%s', (_label, over, faults) => {
  const read = ownedInput.safeParse({ ...ofCollector, hangs: 'stairs', ...over });
  const paths = read.error?.issues.map((issue) => issue.path.join('.')) ?? [];
  expect(paths).toEqual(faults);
});

const sentences: Record<CardRefusal['code'], [CardRefusal, RegExp]> = {
  not_allowed: [{ code: 'not_allowed', permission: 'collectors.write' }, /does not let you/],
  key_used_for_something_else: [{ code: 'key_used_for_something_else' }, /sent before/],
  unknown_collector: [{ code: 'unknown_collector' }, /Look them up again/],
  not_on_the_card: [{ code: 'not_on_the_card' }, /Open the page again/],
  said_in_the_future: [{ code: 'said_in_the_future' }, /has not come yet/],
  pieces_hang_there: [
    { code: 'pieces_hang_there', titles: ['Heron I', 'Salmon'] },
    /^Heron I and Salmon hang there\. .*they hang now\.$/,
  ],
  not_theirs: [{ code: 'not_theirs' }, /not theirs/],
};

test.each(Object.entries(sentences))('%s is told in words', (_code, [refusal, words]) => {
  expect(cardRefusalMessage(refusal)).toMatch(words);
});

test('one piece hangs, several hang', () => {
  const refusal = { code: 'pieces_hang_there' as const, titles: ['Heron I'] };
  expect(cardRefusalMessage(refusal)).toBe('Heron I hangs there. Say first where it hangs now.');
  expect(list([])).toBe('');
});
