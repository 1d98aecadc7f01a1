import { describe, expect, test } from 'vitest';
import { enoughHands } from '@/lib/installation/rules/crew/enough';
import {
  absentOn,
  galleryHours,
  hoursOn,
  lastsWords,
  minuteOf,
  minuteWords,
  timeOfMinute,
} from '@/lib/installation/rules/crew/hours';
import { inOrder, placeKey, wayKey, wayMinutes } from '@/lib/installation/rules/crew/ways';

describe('hours', () => {
  test('who has none of their own works as the gallery is open', () => {
    expect(hoursOn([], '2026-05-09')).toEqual(galleryHours);
    expect(hoursOn([], '2026-05-10')).toBeNull();
  });
  test('who has some of their own works on those days alone', () => {
    const own = [{ weekday: 0, fromMinute: 600, toMinute: 660 }];
    expect(hoursOn(own, '2026-05-10')).toMatchObject({ fromMinute: 600, toMinute: 660 });
    expect(hoursOn(own, '2026-05-11')).toBeNull();
  });
  test('the first and the last day of an absence are in it', () => {
    const away = [{ fromOn: '2026-05-08', toOn: '2026-05-10', why: '' } as const];
    const days = ['2026-05-07', '2026-05-08', '2026-05-10', '2026-05-11'] as const;
    expect(days.map((day) => absentOn(away, day) !== undefined)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });
  test.each([
    [0, '00:00', '12:00 am'],
    [570, '09:30', '9:30 am'],
    [720, '12:00', '12:00 pm'],
    [1439, '23:59', '11:59 pm'],
  ])('minute %i of the day', (minute, typed, said) => {
    expect([timeOfMinute(minute), minuteWords(minute), minuteOf(typed)]).toEqual([
      typed,
      said,
      minute,
    ]);
  });
  test.each([
    [1, '1 minute'],
    [40, '40 minutes'],
    [60, '1 hour'],
    [125, '2 hours 5 minutes'],
  ])('%i minutes are said', (minutes, said) => {
    expect(lastsWords(minutes)).toBe(said);
  });
});

describe('the way between two places', () => {
  const near = { address: '4 Ropewalk Lane, Harrow', travelMinutes: 40 };
  const far = { address: '9 Ferry Steps', travelMinutes: 25 };
  test('an address is the same however it is spaced', () => {
    expect(placeKey(' 4  Ropewalk lane,Harrow. ')).toBe(placeKey(near.address));
    expect(wayMinutes(near, { ...near, address: '4 ROPEWALK LANE HARROW' }, new Map())).toBe(0);
  });
  test('is kept once, whichever comes first', () => {
    expect(wayKey(near.address, far.address)).toBe(wayKey(far.address, near.address));
    expect(wayMinutes(far, near, new Map([[wayKey(near.address, far.address), 12]]))).toBe(12);
  });
  test('leads by the gallery where nothing is kept', () => {
    expect(wayMinutes(near, far, new Map())).toBe(65);
  });
  test('places stand in the order of their letters, beyond the first plane too', () => {
    expect(inOrder('\u{1F3E0} house', '\uFF21 house')).toEqual(['\uFF41 house', '\u{1F3E0} house']);
    expect(inOrder('b', 'a')).toEqual(['a', 'b']);
    expect(inOrder('ab', 'a')).toEqual(['a', 'ab']);
  });
});

describe('hands by weight', () => {
  const scale = (weightG: number) => ({ weightG, isByScale: true });
  test.each([
    [null, 1, null],
    [scale(22_680), 1, null],
    [scale(22_681), 1, 'It weighs 50 lb: two people, and one goes along.'],
    [scale(22_681), 2, 'It weighs 50 lb: two people.'],
    [scale(45_359), 2, 'It weighs 100 lb: two people.'],
    [scale(45_360), 2, 'It weighs 100 lb: three people or a lift, and 2 go along.'],
    [
      { weightG: 54_000, isByScale: false },
      null,
      'It is reckoned to weigh about 119 lb: three people or a lift.',
    ],
  ])('%j with %j', (weight, people, words) => {
    expect(enoughHands(weight, people, 'lb')).toBe(words);
  });
});
