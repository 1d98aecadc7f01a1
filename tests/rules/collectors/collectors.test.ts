import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { keepCollectorInput } from '@/lib/collectors/input';
import {
  addressLine,
  collectorRefusalMessage,
  lettersOf,
  shortReach,
} from '@/lib/collectors/rules';

const nowhere = { street: null, city: null, state: null, postcode: null };

describe('an address in one line', () => {
  test.each([
    ['nothing is known', nowhere, null],
    ['a town', { ...nowhere, city: 'Fernhollow' }, 'Fernhollow'],
    [
      'all of it',
      { street: '8 Chandler Street', city: 'Port Quill', state: 'WA', postcode: '00019' },
      '8 Chandler Street, Port Quill, WA 00019',
    ],
    ['a postcode alone', { ...nowhere, postcode: '00019' }, '00019'],
  ])('%s', (_label, reach, expected) => {
    expect(addressLine(reach)).toBe(expected);
  });
});

test('somebody is reached by telephone before mail', () => {
  expect(shortReach({ phone: '555 0101', email: 'a@b.example' })).toBe('555 0101');
  expect(shortReach({ phone: null, email: 'a@b.example' })).toBe('a@b.example');
  expect(shortReach({ phone: null, email: null })).toBeNull();
});

test('letters are drawn together and not endless', () => {
  expect(lettersOf('  Marit   Oland ')).toBe('Marit Oland');
  expect(lettersOf('x'.repeat(200))).toHaveLength(60);
});

describe('the form', () => {
  const form = { requestKey: randomUUID(), name: ' Marit Oland ' };
  test('a name is enough', () => {
    expect(keepCollectorInput.parse(form)).toMatchObject({
      collectorId: null,
      kind: 'person',
      name: 'Marit Oland',
      phone: null,
      note: '',
    });
  });
  test.each([
    ['no name', { name: ' ' }, 'name'],
    ['a mail address that is none', { email: 'marit' }, 'email'],
    ['something it does not ask for', { price: '1' }, ''],
  ])('%s is told', (_label, over, field) => {
    const read = keepCollectorInput.safeParse({ ...form, ...over });
    expect(read.error?.issues.map((issue) => issue.path.join('.'))).toEqual([field]);
  });
});

test('a collector nobody knows is told in words', () => {
  expect(collectorRefusalMessage({ code: 'unknown_collector' })).toMatch(/^Nobody .*\.$/);
});
