import { describe, expect, test } from 'vitest';
import {
  consentKinds,
  howWords,
  lastSaid,
  mayWriteTo,
  saidNo,
  type ConsentSaid,
} from '@/lib/collectors/rules/consent';

let seconds = 0;

function said(given: boolean, over: Partial<ConsentSaid> = {}): ConsentSaid {
  seconds += 1;
  const at = new Date(Date.UTC(2026, 5, 1, 0, 0, seconds));
  const usual = { to: 'email', saidOn: '2026-06-01', under: 'kept', isAskedAnew: false } as const;
  return { ...usual, given, at, ...over };
}

const yes = (over?: Partial<ConsentSaid>) => said(true, over);
const no = (over?: Partial<ConsentSaid>) => said(false, over);

describe('whether somebody may be written to', () => {
  test.each(consentKinds)('nothing said of %s is a no', (kind) => {
    expect(mayWriteTo([], kind)).toBe(false);
    expect(saidNo([], kind)).toBe(false);
  });
  test.each<[string, ConsentSaid[], boolean]>([
    ['a yes', [yes()], true],
    ['a no', [no()], false],
    ['a no after a yes', [yes(), no()], false],
    ['a yes after a no', [no(), yes()], true],
    ['a yes to something else', [yes({ to: 'text' })], false],
    ['a no of an earlier day written down later', [yes(), no({ saidOn: '2026-05-02' })], true],
  ])('of one name: %s', (_label, consents, may) => {
    expect(mayWriteTo(consents, 'email')).toBe(may);
    expect(mayWriteTo(consents.toReversed(), 'email')).toBe(may);
  });
});

const gone = 'gone';

describe('of two names that are one', () => {
  test.each<[string, ConsentSaid[], boolean]>([
    ['a yes under one name alone', [yes({ under: gone })], true],
    ['a no under one name alone', [no({ under: gone })], false],
    [
      'a no later than the other’s yes',
      [yes({ saidOn: '2026-01-05' }), no({ under: gone, saidOn: '2026-02-05' })],
      false,
    ],
    [
      'a yes later than the other’s no',
      [no({ saidOn: '2026-01-05' }), yes({ under: gone, saidOn: '2026-02-05' })],
      true,
    ],
    ['both on one day: the no, though written first', [no(), yes({ under: gone })], false],
    ['both on one day: the no, though written last', [yes(), no({ under: gone })], false],
    [
      'both on one day, asked anew on that day',
      [no(), yes({ under: gone }), yes({ isAskedAnew: true })],
      true,
    ],
    [
      'asked anew, and no again',
      [yes(), yes({ under: gone, isAskedAnew: true }), no({ isAskedAnew: true })],
      false,
    ],
  ])('%s', (_label, consents, may) => {
    expect(mayWriteTo(consents, 'email')).toBe(may);
    expect(mayWriteTo(consents.toReversed(), 'email')).toBe(may);
  });
});

test('of a yes and a no written down at one instant the no holds', () => {
  const at = new Date('2026-06-01T00:00:00Z');
  expect(mayWriteTo([no({ at }), yes({ at })], 'email')).toBe(false);
  expect(mayWriteTo([yes({ at }), no({ at })], 'email')).toBe(false);
});

test('the one that holds is given with its day, so that the card can show who heard it', () => {
  const first = yes({ saidOn: '2026-01-05' });
  const last = no({ saidOn: '2026-03-05' });
  expect(lastSaid([first, last], 'email')).toBe(last);
  expect(lastSaid([first, last], 'letter')).toBeNull();
});

test('how it was said is told in words, and what was written before the list as it stands', () => {
  expect(howWords('fair')).toBe('at a fair');
  expect(howWords('over the garden fence')).toBe('over the garden fence');
});
