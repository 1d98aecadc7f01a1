import { describe, expect, test } from 'vitest';
import { roles, type Role } from '@/lib/access/rules';
import {
  handsOver,
  mayHaveItSigned,
  missingBeforeSigning,
  missingWords,
  planQuestionOf,
  planQuestionWords,
  wordsInstead,
  type DayToSign,
} from '@/lib/installation/rules/work/before-signing';
import { workRefusalMessage } from '@/lib/installation/rules/work/refusals';
import {
  heldTicks,
  isTicked,
  tickedWithin,
  wordsSaid,
  type Tick,
} from '@/lib/installation/rules/work/ticks';

const at = (minutes: number) => new Date(Date.UTC(2026, 4, 4, 16, minutes));
const zone = 'America/Los_Angeles';

function tick(change: Partial<Tick> = {}): Tick {
  const base = { id: 'a', item: 'seated', isDone: true, words: '', tickedAt: at(0) };
  return { ...base, receivedAt: at(30), ...change };
}

describe('of several ticks', () => {
  test('the latest by the device’s clock holds, however late it came in', () => {
    const late = tick({ id: 'late', tickedAt: at(1), isDone: true, receivedAt: at(90) });
    const soon = tick({ id: 'soon', tickedAt: at(2), isDone: false, receivedAt: at(3) });
    expect(isTicked(heldTicks([late, soon]), 'seated')).toBe(false);
    expect(isTicked(heldTicks([soon, late]), 'seated')).toBe(false);
  });

  test('of one instant the one that came in later holds, and what is on the device before both', () => {
    const one = tick({ id: 'z', receivedAt: at(5), isDone: false });
    const other = tick({ id: 'b', receivedAt: at(6) });
    const here = tick({ id: 'a', receivedAt: null, words: 'here' });
    expect(heldTicks([one, other]).get('seated')?.id).toBe('b');
    expect(heldTicks([here, one, other]).get('seated')?.words).toBe('here');
    const same = tick({ id: 'c', receivedAt: null });
    expect(heldTicks([same, here]).get('seated')?.id).toBe('c');
  });

  test('a note is no item, and words taken back are not said', () => {
    const held = heldTicks([
      tick({ item: 'note', words: 'The dog is kind' }),
      tick({ item: 'no_scale', words: ' It broke ' }),
      tick({ id: 'b', item: 'plan_word', words: 'Yes', tickedAt: at(1) }),
      tick({ id: 'c', item: 'plan_word', words: 'Yes', isDone: false, tickedAt: at(2) }),
      tick({ item: 'owner_word', words: '  ' }),
    ]);
    expect(held.has('note')).toBe(false);
    expect(wordsSaid(held, 'no_scale')).toBe('It broke');
    expect(wordsSaid(held, 'plan_word')).toBeNull();
    expect(wordsSaid(held, 'owner_word')).toBeNull();
    expect(wordsSaid(held, 'no_fixings_picture')).toBeNull();
  });
});

test.each([
  ['in time', at(10), at(10)],
  ['a year ahead', new Date('2027-05-04T16:00:00Z'), at(30)],
  ['from before it was booked', new Date('1970-01-01T00:00:00Z'), at(0)],
])('a device’s clock %s counts as it can', (_label, tickedAt, counts) => {
  const bounds = { bookedAt: at(0), receivedAt: at(30) };
  expect(tickedWithin(tickedAt, bounds)).toEqual(counts);
});

describe('before a hanging is signed', () => {
  const day: DayToSign = {
    ...{ kind: 'hanging', isWeighed: false, hasFixingsPicture: false, plan: null, weightG: 9_000 },
    held: new Map(),
  };

  test('there is a weight, a picture of the fixings, and an answer about the plan', () => {
    expect(missingBeforeSigning(day)).toEqual(['weight', 'no_plan', 'fixings_picture']);
    const plan = { isAllowed: true, isOld: false, weightG: 9_000 };
    const there = { isWeighed: true, hasFixingsPicture: true, plan };
    expect(missingBeforeSigning({ ...day, ...there })).toEqual([]);
    const heavier = { ...there, weightG: 9_001 };
    expect(missingBeforeSigning({ ...day, ...heavier })).toEqual(['heavier_than_planned']);
    expect(missingBeforeSigning({ ...day, ...heavier, isWeighed: false })).toEqual(['weight']);
  });

  test.each(['weight', 'fixings_picture', 'no_plan'] as const)(
    'a word stands in for a missing %s, and for nothing else',
    (each) => {
      const held = heldTicks([tick({ item: wordsInstead[each], words: 'It could not be' })]);
      const left = missingBeforeSigning({ ...day, held });
      expect(left).toHaveLength(2);
      expect(left).not.toContain(each);
    },
  );

  test('a delivery and a fetching want none of it', () => {
    expect(missingBeforeSigning({ ...day, kind: 'delivery' })).toEqual([]);
    expect(missingBeforeSigning({ ...day, kind: 'fetching' })).toEqual([]);
  });

  test('a plan is asked about when it is old, too light, or does not hold, or is not there', () => {
    const plan = { isAllowed: true, isOld: false, weightG: 9_000 };
    expect(planQuestionOf(null, null)).toBe('no_plan');
    expect(planQuestionOf(plan, 9_000)).toBeNull();
    expect(planQuestionOf({ ...plan, isOld: true }, 8_000)).toBe('plan_is_old');
    expect(planQuestionOf({ ...plan, isOld: true }, 9_001)).toBe('heavier_than_planned');
    expect(planQuestionOf({ ...plan, isAllowed: false }, 9_001)).toBe('plan_does_not_hold');
    for (const words of Object.values(planQuestionWords)) expect(words).toMatch(/\?$/);
  });
});

test('whoever goes along has it signed, the owner always, and nobody who only keeps the books', () => {
  const may = (role: Role, along: boolean) =>
    mayHaveItSigned({ id: 'me', roles: [role] }, along ? ['you', 'me'] : ['you']);
  expect(roles.filter((role) => may(role, false))).toEqual(['owner']);
  expect(roles.filter((role) => may(role, true))).toEqual(['owner', 'gallery', 'maker']);
  expect(handsOver('site_visit')).toBe(false);
  expect(handsOver('fetching')).toBe(true);
});

test('every refusal is a sentence that says who, when and what', () => {
  const say = (refusal: Parameters<typeof workRefusalMessage>[0]) =>
    workRefusalMessage(refusal, zone);
  const signed = { signedBy: 'Marit Oland', at: at(5), by: 'Tobias Fenn' };
  const told = say({ code: 'signed_already', ...signed });
  for (const part of ['Marit Oland', 'Tobias Fenn', '9:05 am', 'kept on this device']) {
    expect(told).toContain(part);
  }
  const missing = say({ code: 'still_missing', missing: ['weight', 'fixings_picture'] });
  expect(missing).toContain(`${missingWords.weight}; and ${missingWords.fixings_picture}.`);
  expect(say({ code: 'owner_says_first', phone: '555 0100' })).toContain('555 0100');
  expect(say({ code: 'owner_says_first', phone: '' })).not.toContain(', ;');
  expect(say({ code: 'somebody_else', name: 'Oriel' })).toContain('Sign in as Oriel');
  expect(say({ code: 'unknown_commission' })).toContain('no such commission');
  expect(say({ code: 'mended_before_today', on: '2026-05-01' })).toContain('1 May 2026 has passed');
});
