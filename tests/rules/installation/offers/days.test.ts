import { describe, expect, test } from 'vitest';
import {
  chooseDayInput,
  offerDaysInput,
  slotWishInput,
} from '@/lib/installation/input/offers/days';
import { beforeItIsReady, decideChoice, decideOffer } from '@/lib/installation/rules/offers/days';
import type { Day } from '@/lib/dates/rules';

const zone = 'America/Los_Angeles';
const now = new Date('2026-05-12T19:00:00Z');
const on = (day: Day, from: string) => ({ day, from });

describe('days are offered', () => {
  const three = { minutes: 180, zone, now };

  test('in time, each as long as the other, in the gallery’s own hours', () => {
    const offered = decideOffer([on('2026-06-03', '13:00'), on('2026-06-01', '09:30')], three);
    expect(offered).toEqual({
      ok: true,
      value: [
        { startsAt: new Date('2026-06-01T16:30:00Z'), endsAt: new Date('2026-06-01T19:30:00Z') },
        { startsAt: new Date('2026-06-03T20:00:00Z'), endsAt: new Date('2026-06-03T23:00:00Z') },
      ],
    });
  });

  test.each([
    ['one that begins now', [on('2026-05-12', '12:00')], 'day_gone_by'],
    ['one that begins a minute later', [on('2026-05-12', '12:01')], 'done'],
    ['one that ends at midnight', [on('2026-06-01', '21:00')], 'past_midnight'],
    ['one that ends a minute before it', [on('2026-06-01', '20:59')], 'done'],
    ['one twice', [on('2026-06-01', '09:00'), on('2026-06-01', '09:00')], 'same_hours_twice'],
    [
      'two that overlap',
      [on('2026-06-01', '09:00'), on('2026-06-01', '11:59')],
      'same_hours_twice',
    ],
    ['two that touch', [on('2026-06-01', '09:00'), on('2026-06-01', '12:00')], 'done'],
    ['gone by comes first', [on('2026-05-01', '23:00')], 'day_gone_by'],
  ] as const)('%s', (_name, typed, code) => {
    const decided = decideOffer(typed, three);
    expect(decided.ok ? 'done' : decided.refusal.code).toBe(code);
  });
});

describe('one is chosen', () => {
  const slot = {
    position: 1,
    startsAt: new Date('2026-06-01T16:00:00Z'),
    endsAt: new Date('2026-06-01T19:00:00Z'),
  };
  const offer = { withdrawnAt: null, chosenAt: null, slots: [slot] };
  const at = { now, zone };
  test.each([
    ['of an offer that is none', null, 1, at, 'unknown_offer'],
    ['after one was chosen', { ...offer, chosenAt: slot.startsAt }, 1, at, 'day_chosen_already'],
    [
      'chosen before comes before withdrawn',
      { ...offer, chosenAt: slot.startsAt, withdrawnAt: now },
      1,
      at,
      'day_chosen_already',
    ],
    ['of days taken back', { ...offer, withdrawnAt: now }, 1, at, 'offer_withdrawn'],
    ['that is not among them', offer, 2, at, 'unknown_day'],
    ['that begins now', offer, 1, { now: slot.startsAt, zone }, 'day_taken'],
    ['that is to come', offer, 1, at, 'done'],
  ] as const)('%s', (...[, from, position, when, code]) => {
    const decided = decideChoice(from, position, when);
    expect(decided.ok ? 'done' : decided.refusal.code).toBe(code);
  });
});

test('a day before the piece is likely to be ready is told, the day itself is not', () => {
  const spans = ['2026-06-01', '2026-06-02', '2026-06-03'].map((day) => ({
    startsAt: new Date(`${day}T16:00:00Z`),
    endsAt: new Date(`${day}T19:00:00Z`),
  }));
  expect(beforeItIsReady(spans, '2026-06-02', zone)).toEqual(['2026-06-01']);
  expect(beforeItIsReady(spans, null, zone)).toEqual([]);
});

const sixSlots = [1, 2, 3, 4, 5, 6].map((day) => `2026-06-0${day} 09:30`);

describe('what the form may say', () => {
  const id = '6f1e1f0a-54c5-4f4e-9a43-3a0a5f5b8f10';
  const form = {
    ...{ requestKey: id, commissionId: id, leadId: id, kind: 'hanging', hours: '1,5' },
    ...{ address: 'The Fernhollow library', 'day.1': '2026-06-01', 'from.1': '09:00' },
  };
  test.each([
    ['one day, its hours with a comma', {}, null],
    ['no day at all', { 'day.1': '', 'from.1': '' }, 'day.1'],
    ['a day without its hour', { 'day.3': '2026-06-03' }, 'from.3'],
    ['a seventh day', { 'day.7': '2026-06-07', 'from.7': '09:00' }, ''],
    ['ten minutes', { hours: '0.1' }, 'hours'],
    ['thirteen hours', { hours: '13' }, 'hours'],
    ['a party', { kind: 'party' }, 'kind'],
    ['a time of its own', { slot: 'tomorrow' }, 'slot'],
    ['seven in all', { slot: sixSlots }, 'slot'],
    ['nowhere', { address: ' ' }, 'address'],
  ])('%s', (_name, more, field) => {
    const read = offerDaysInput.safeParse({ ...form, ...more });
    expect(read.success ? null : (read.error.issues[0]?.path.join('.') ?? null)).toBe(field);
  });

  test('free times that are ticked come before days by hand', () => {
    const more = { slot: '2026-06-03 13:30', crewIds: id, travelMinutes: '40' };
    const read = offerDaysInput.parse({ ...form, ...more, 'word.closed': 'They agreed.' });
    expect(read).toMatchObject({
      crewIds: [id],
      travelMinutes: 40,
      words: { closed: 'They agreed.' },
    });
    expect(read.days).toEqual([
      { day: '2026-06-03', from: '13:30' },
      { day: '2026-06-01', from: '09:00' },
    ]);
    const alone = { ...form, 'day.1': '', 'from.1': '', slot: sixSlots };
    expect(offerDaysInput.parse(alone).days).toHaveLength(6);
  });

  test('what the address of the page says is never refused, and nonsense is left out', () => {
    const wish = slotWishInput.parse({
      kind: 'party',
      hours: 'long',
      fromOn: 'soon',
      crewIds: 'x',
    });
    expect(wish).toMatchObject({ kind: 'hanging', minutes: 180, fromOn: null, crewIds: [] });
  });

  test('hours are minutes, and empty days are left out', () => {
    const read = offerDaysInput.parse({ ...form, 'day.2': '', 'from.2': '' });
    expect(read.minutes).toBe(90);
    expect(read.days).toEqual([{ day: '2026-06-01', from: '09:00' }]);
  });

  test.each(['0', '7', 'one', ''])('%j is none of the days', (position) => {
    const choice = { requestKey: id, commissionId: id, offerId: id, position };
    expect(chooseDayInput.safeParse(choice).success).toBe(false);
  });
});
