import { describe, expect, test } from 'vitest';
import { asksOf, leftWords, limitsOf, type Asks } from '@/lib/sending/rules/limits';
import { decideWay, stageOf, type Happened, type WayFacts } from '@/lib/sending/rules/way';
import type { WayRefusal } from '@/lib/sending/rules/way';
import type { EventKind, Stage } from '@/lib/sending/rules/words';

const packed: Happened = { kind: 'packed', on: '2026-11-10' };
const sent: Happened = { kind: 'sent', on: '2026-11-12' };
const arrived: Happened = { kind: 'arrived', on: '2026-11-18' };
const calledOff: Happened = { kind: 'called_off', on: '2026-11-11' };

const facts = (over: Partial<WayFacts> = {}): WayFacts => ({
  ...{ how: 'carrier', carrier: 'Coast freight', events: [] },
  ...{ boxes: 2, emptyBox: null, soldOn: null, ...over },
});
const days = { on: '2026-11-20', today: '2026-11-20' } as const;

test.each<[Happened[], Stage]>([
  [[], 'to_pack'],
  [[{ kind: 'noted', on: '2026-11-09' }], 'to_pack'],
  [[packed], 'packed'],
  [[sent], 'on_the_way'],
  [[packed, sent, arrived], 'arrived'],
  [[{ kind: 'fetched', on: '2026-11-12' }], 'fetched'],
  [[packed, calledOff], 'called_off'],
])('%j stands at %s', (events, stage) => {
  expect(stageOf(events)).toBe(stage);
});

describe('what can happen', () => {
  test.each<[EventKind, Partial<WayFacts>]>([
    ['packed', {}],
    ['sent', {}],
    ['sent', { events: [packed] }],
    ['sent', { how: 'by_us', carrier: '' }],
    ['fetched', { how: 'fetched' }],
    ['arrived', { events: [packed, sent] }],
    ['called_off', { events: [packed], boxes: 0 }],
    ['noted', { events: [packed, sent, arrived], boxes: 0 }],
  ])('%s with %j', (kind, over) => {
    expect(decideWay(facts(over), kind, days)).toEqual({ ok: true, value: true });
  });

  test.each<[EventKind, Partial<WayFacts>, WayRefusal]>([
    ['noted', { events: [calledOff] }, { code: 'was_called_off', on: '2026-11-11' }],
    ['sent', { events: [sent] }, { code: 'happened_already', kind: 'sent', on: '2026-11-12' }],
    ['arrived', {}, { code: 'not_on_the_way', stage: 'to_pack' }],
    ['packed', { events: [sent] }, { code: 'not_on_the_way', stage: 'on_the_way' }],
    ['called_off', { events: [sent, arrived] }, { code: 'not_on_the_way', stage: 'arrived' }],
    ['fetched', {}, { code: 'goes_otherwise', how: 'carrier' }],
    ['sent', { how: 'fetched' }, { code: 'goes_otherwise', how: 'fetched' }],
    ['sent', { boxes: 0 }, { code: 'no_boxes_yet' }],
    ['packed', { emptyBox: 2 }, { code: 'box_is_empty', box: 2 }],
    ['sent', { carrier: '' }, { code: 'no_carrier_named' }],
    ['sent', { soldOn: '2026-11-21' }, { code: 'sent_before_sold', soldOn: '2026-11-21' }],
  ])('%s with %j is refused', (kind, over, refusal) => {
    expect(decideWay(facts(over), kind, days)).toEqual({ ok: false, refusal });
  });

  test('nothing happens on a day to come, nor before what happened last', () => {
    const tomorrow = { ...days, on: '2026-11-21' } as const;
    expect(decideWay(facts(), 'noted', tomorrow)).toEqual({
      ok: false,
      refusal: { code: 'day_to_come', today: '2026-11-20' },
    });
    const before = { ...days, on: '2026-11-11' } as const;
    expect(decideWay(facts({ events: [packed, sent] }), 'arrived', before)).toEqual({
      ok: false,
      refusal: { code: 'before_it', kind: 'sent', on: '2026-11-12' },
    });
  });
});

describe('last days', () => {
  const terms = { reportDays: 5, claimDays: 60 };
  const at = (today: `${number}-${number}-${number}`) => ({ foundOn: today, today });

  test('are counted from when it came, and from when it was sent', () => {
    const { reportBy, claimBy } = limitsOf([sent, arrived], terms, at('2026-11-20'));
    expect(reportBy).toEqual({ byOn: '2026-11-23', daysLeft: 3 });
    expect(claimBy).toEqual({ byOn: '2027-01-11', daysLeft: 52 });
  });

  test('what is found before it came counts from then; without terms our own days hold', () => {
    const { reportBy, claimBy } = limitsOf([sent], null, at('2026-11-14'));
    expect([reportBy.byOn, claimBy.byOn]).toEqual(['2026-11-19', '2026-12-12']);
  });

  test.each([
    [5, '5 days left'],
    [1, 'one day left'],
    [0, 'today is the last day'],
    [-1, 'over since yesterday'],
    [-9, 'over for 9 days'],
  ])('%i days left', (daysLeft, words) => {
    expect(leftWords({ byOn: '2026-11-20', daysLeft })).toBe(words);
  });

  test.each<[string, Happened[], boolean, Asks]>([
    ['nothing happened', [], false, 'to_pack'],
    ['packed', [packed], false, 'to_pack'],
    ['sent', [packed, sent], false, 'on_the_way'],
    ['came, and nobody looked', [sent, arrived], false, 'look_at_it'],
    ['came, and was looked at', [sent, arrived], true, 'nothing'],
    ['called off', [calledOff], false, 'nothing'],
  ])('%s asks', (_label, events, isLookedAt, asks) => {
    expect(asksOf({ events, terms, isLookedAt }, '2026-11-20')).toBe(asks);
  });

  test('what came too long ago asks for nothing any more', () => {
    const shipment = { events: [sent, arrived], terms, isLookedAt: false };
    expect(asksOf(shipment, '2026-11-23')).toBe('look_at_it');
    expect(asksOf(shipment, '2026-11-24')).toBe('nothing');
  });
});
