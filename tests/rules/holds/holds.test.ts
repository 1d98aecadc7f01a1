import { describe, expect, test } from 'vitest';
import { backInput } from '@/lib/holds/input/approval';
import { holdInput } from '@/lib/holds/input';
import {
  decideHold,
  holdStanding,
  untilByDefault,
  waitingStanding,
  type ShelfToHold,
} from '@/lib/holds/rules';
import { checkDueOn, decideBack } from '@/lib/holds/rules/approval';
import { choose, leaveOut, readChosen, writeChosen } from '@/lib/holds/rules/chosen';
import { holdRefusalMessage, type Holder } from '@/lib/holds/rules/refusals';
import { daysLate } from '@/lib/holds/rules/still-here';

const at = new Date('2026-11-20T20:00:00Z');
const later = new Date('2026-11-22T20:00:00Z');
const zone = 'America/Los_Angeles';
const wren: Holder = {
  ...{ forWhom: 'Wren Alder', untilAt: later, staffName: 'Perrin Oday', editionNumber: null },
};
const shelf: ShelfToHold = {
  ...{ title: 'Tern over Shoals', onHand: 2, held: 0, numbersHere: [], isEdition: false },
  holders: [],
};
const edition = { ...shelf, isEdition: true, numbersHere: [3, 7] };
const one = { quantity: 1, editionNumber: null, untilAt: later };

describe('a hold', () => {
  test.each([
    ['an hour that has passed', { ...one, untilAt: at }, shelf, 'until_has_passed'],
    ['over a year', { ...one, untilAt: new Date('2027-12-01') }, shelf, 'until_too_far'],
    ['an edition without its number', one, edition, 'number_wanted'],
    ['two of a number', { ...one, quantity: 2, editionNumber: 3 }, edition, 'number_is_one_piece'],
    ['a number elsewhere', { ...one, editionNumber: 4 }, edition, 'number_not_here'],
    [
      'a number held for another',
      { ...one, editionNumber: 3 },
      { ...edition, held: 1, holders: [{ ...wren, editionNumber: 3 }] },
      'number_is_held',
    ],
    ['more than are here', { ...one, quantity: 3 }, shelf, 'not_enough_free'],
    ['more than are free', one, { ...shelf, held: 2, holders: [wren] }, 'not_enough_free'],
  ])('refuses %s', (_label, wish, here, code) => {
    expect(decideHold(wish, here, at)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('takes the last free one, and needs no hour for a layaway', () => {
    expect(decideHold(one, { ...shelf, held: 1 }, at).ok).toBe(true);
    expect(decideHold({ ...one, untilAt: null }, shelf, at).ok).toBe(true);
    expect(decideHold({ ...one, editionNumber: 7 }, edition, at).ok).toBe(true);
  });

  test('says for whom the last one is held, until when and by whom', () => {
    const refused = decideHold(one, { ...shelf, onHand: 1, held: 1, holders: [wren] }, at);
    expect(refused.ok ? '' : holdRefusalMessage(refused.refusal, zone)).toBe(
      'The only Tern over Shoals here is held already. ' +
        'Held for Wren Alder until 22 Nov 2026, 12:00 pm, by Perrin Oday.',
    );
  });

  test.each([
    [at, null, 'lapsed'],
    [new Date('2026-11-21T20:00:00Z'), null, 'lapses_soon'],
    [new Date('2026-11-21T20:00:01Z'), null, 'stands'],
    [null, null, 'with_its_paper'],
    [later, at, 'ended'],
  ])('until %s, ended %s: %s', (untilAt, endedAt, standing) => {
    expect(holdStanding({ untilAt, endedAt }, at)).toBe(standing);
  });

  test('ends at a full quarter of an hour when nobody says otherwise', () => {
    const until = untilByDefault(new Date('2026-11-20T23:07:00Z'), 48);
    expect(until.toISOString()).toBe('2026-11-22T23:15:00.000Z');
  });
});

describe('the form of a hold', () => {
  const id = '01936b1e-7c5a-7b6e-8f00-000000000001';
  const typed = {
    ...{ requestKey: id, skuId: id, placeId: id, quantity: '1', forWhom: 'Wren' },
    ...{ untilOn: '2026-11-22', untilTime: '12:00' },
  };
  test.each([
    ['nobody', { forWhom: '  ' }, 'forWhom'],
    ['no pieces', { quantity: '0' }, 'quantity'],
    ['fewer than none', { quantity: '-1' }, 'quantity'],
    ['half a piece', { quantity: '1.5' }, 'quantity'],
    ['a crowd of pieces', { quantity: '1000' }, 'quantity'],
    ['31 February', { untilOn: '2026-02-31' }, 'untilOn'],
    ['no hour', { untilTime: '25:00' }, 'untilTime'],
    ['a card’s number in the note', { note: 'card 4111 1111 1111 1111' }, 'note'],
    ['a note of 10,000 letters', { note: 'x'.repeat(10_000) }, 'note'],
  ])('asks again about %s', (_label, over, field) => {
    const read = holdInput.safeParse({ ...typed, ...over });
    expect(read.error?.issues.map((issue) => issue.path.join('.'))).toContain(field);
  });

  test.each(['🦦 Otter', 'مارية الصياد', 'Søren Ångström'])('takes the name %s', (forWhom) => {
    expect(holdInput.parse({ ...typed, forWhom }).forWhom).toBe(forWhom);
  });
});

test.each([
  [{ onHand: 1, held: 0 }, null, 'free_now'],
  [{ onHand: 1, held: 0 }, at, 'told'],
  [{ onHand: 1, held: 1 }, null, 'held_for_another'],
  [{ onHand: 0, held: 0 }, null, 'gone'],
])('who waits, with %o and told %s: %s', (here, toldAt, standing) => {
  expect(waitingStanding({ toldAt, endedAt: null }, here)).toBe(standing);
});

describe('chosen pieces', () => {
  test('are read from an address and written back; rubbish is left out', () => {
    const read = readChosen('ts-10-ci*2.HERON-P~7..<b>.TS-10-CI.HERON-P~7');
    expect(read).toEqual([
      { code: 'TS-10-CI', quantity: 3, editionNumber: null },
      { code: 'HERON-P', quantity: 1, editionNumber: 7 },
    ]);
    expect(readChosen(writeChosen(read))).toEqual(read);
  });

  test('are at most twenty lines, and one can be left out', () => {
    const many = Array.from({ length: 30 }, (_each, at_) => `P-${at_ + 100}`).join('.');
    const read = readChosen(many);
    expect(read).toHaveLength(20);
    const [first] = read;
    expect(first && leaveOut(read, first)).toHaveLength(19);
    const more = { code: 'ZZZ-1', quantity: 1, editionNumber: null };
    expect(choose(read, more)).toEqual(read);
  });
});

describe('back from approval', () => {
  const lines = [
    { position: 1, skuId: 'a', title: 'Tern', editionNumber: null, out: 2 },
    { position: 2, skuId: 'b', title: 'Heron', editionNumber: 7, out: 0 },
  ];
  test.each([
    ['none', [{ position: 1, quantity: 0 }], 'nothing_comes_back'],
    ['more than are out', [{ position: 1, quantity: 3 }], 'fewer_are_out'],
    ['what came before', [{ position: 2, quantity: 1 }], 'fewer_are_out'],
  ])('%s is refused', (_label, comes, code) => {
    expect(decideBack(lines, comes)).toMatchObject({ refusal: { code } });
  });

  test('the form reads how many of each line, and asks again about letters', () => {
    const id = '01936b1e-7c5a-7b6e-8f00-000000000001';
    const typed = { requestKey: id, approvalId: id, what: 'back', 'back-1': '2', 'back-2': '' };
    expect(backInput.parse(typed).comes).toEqual([
      { position: 1, quantity: 2 },
      { position: 2, quantity: 0 },
    ]);
    const wrong = backInput.safeParse({ ...typed, 'back-1': 'two' });
    expect(wrong.error?.issues[0]?.path).toEqual(['back-1']);
  });

  test.each([
    ['2026-11-19', false],
    ['2026-11-20', true],
    ['2027-02-20', true],
    ['2027-02-21', false],
  ] as const)('due %s: %s', (dueOn, may) => {
    expect(checkDueOn(dueOn, '2026-11-20').ok).toBe(may);
  });
});

test('a sold piece is late the day after it was to be collected', () => {
  expect(daysLate('2026-11-20', '2026-11-20')).toBe(0);
  expect(daysLate('2026-11-20', '2026-11-21')).toBe(1);
});
