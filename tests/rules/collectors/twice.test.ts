import { describe, expect, test } from 'vitest';
import {
  figuresOf,
  isNearlySame,
  likelyPairs,
  likenessWords,
  type Known,
} from '@/lib/collectors/rules/twice';

describe('a name but for a slip of the pen', () => {
  test.each([
    ['Marit Oland', 'Marit Oland', true],
    ['Marit Oland', 'Marit Olnad', true],
    ['Marit Oland', 'Oland, Marrit', true],
    ['Odile Sefton', 'Odílé SEFTON', true],
    ['Marisol and June Tavares', 'June & Marisol Taverez', true],
    ['The Lantern House Inn', 'Lantern House Inn', true],
    ['Marit Oland', 'Marit Olsen', false],
    ['June Vane', 'Jane Vance', false],
    ['Bo', 'Jo', false],
    ['', '', false],
  ])('%s, %s', (one, other, isSame) => {
    expect(isNearlySame(one, other)).toBe(isSame);
    expect(isNearlySame(other, one)).toBe(isSame);
  });
});

test.each([
  ['(555) 010-0152', '5550100152'],
  ['+1 555 010 0152', '5550100152'],
  ['010-0152', '0100152'],
  ['ask June', null],
])('of the telephone %s the figures count', (phone, figures) => {
  expect(figuresOf(phone)).toBe(figures);
});

function known(id: string, over: Partial<Known> = {}): Known {
  return { id, names: [id], emails: [], phones: [], places: [], ...over };
}

const town = (city: string, postcode: string | null = null) => [{ city, postcode }];

describe('likely the same', () => {
  test.each<[string, Partial<Known>, Partial<Known>, string[]]>([
    [
      'by mail, capitals aside',
      { emails: ['M@x.example '] },
      { emails: ['m@X.example'] },
      ['email'],
    ],
    ['by telephone', { phones: ['(555) 010-0152'] }, { phones: ['+1 5550100152'] }, ['phone']],
    [
      'by name and town',
      { names: ['Marit Oland'], places: town('Fernhollow') },
      { names: ['Marit Olnad'], places: town('fernhollow') },
      ['name'],
    ],
    [
      'by the name of one of the household, and postcode',
      { names: ['The Aldous house', 'June Aldous'], places: town('Fernhollow', '00019') },
      { names: ['June Aldous'], places: town('Port Quill', '00019') },
      ['name'],
    ],
    [
      'by mail and name',
      { names: ['Marit Oland'], emails: ['m@x.example'], places: town('Fernhollow') },
      { names: ['Marit Oland'], emails: ['m@x.example'], places: town('Fernhollow') },
      ['email', 'name'],
    ],
    [
      'not by name alone',
      { names: ['Marit Oland'], places: town('Fernhollow') },
      { names: ['Marit Oland'], places: town('Port Quill') },
      [],
    ],
    ['not by place alone', { places: town('Fernhollow') }, { places: town('Fernhollow') }, []],
    [
      'not by a town that reads like a postcode',
      { names: ['Marit Oland'], places: [{ city: '00019', postcode: null }] },
      { names: ['Marit Oland'], places: [{ city: null, postcode: '00019' }] },
      [],
    ],
    ['not by nothing', { emails: [''], phones: ['-'] }, { emails: [' '], phones: ['-'] }, []],
  ])('%s', (_label, one, other, kinds) => {
    const pairs = likelyPairs([known('first entry', one), known('second thing', other)]);
    expect(pairs.flatMap(({ why }) => why.map(({ kind }) => kind))).toEqual(kinds);
    for (const pair of pairs) {
      expect(pair).toMatchObject({ oneId: 'first entry', otherId: 'second thing' });
    }
  });
});

test('those with more reasons come first, and each pair comes once', () => {
  const pairs = likelyPairs([
    known('a', { emails: ['x@x.example', 'y@x.example'] }),
    known('b', { emails: ['x@x.example', 'y@x.example'], phones: ['555 010 0199'] }),
    known('c', { phones: ['555 010 0199'] }),
    known('d', { phones: ['555 010 0200'], emails: ['z@x.example'] }),
    known('e', { phones: ['555 010 0200'], emails: ['z@x.example'] }),
  ]);
  const told = pairs.map(({ oneId, otherId, why }) => `${oneId}${otherId}${why.length}`);
  expect(told).toEqual(['de2', 'ab1', 'bc1']);
});

test('a mail address that everybody has is nobody’s own, and is not paired without end', () => {
  const many = Array.from({ length: 300 }, (_, at) =>
    known(`n${at}`, { emails: ['none@x.example'] }),
  );
  expect(likelyPairs(many)).toHaveLength(299);
});

test('a thousand of one town are looked through in no time', () => {
  const many = Array.from({ length: 1_000 }, (_, at) =>
    known(`n${at}`, {
      names: [`Person ${at * 7919} of Cove ${at * 104_729}`],
      places: town('Cove'),
    }),
  );
  const begunAt = performance.now();
  likelyPairs(many);
  expect(performance.now() - begunAt).toBeLessThan(4_000);
});

test.each([
  [{ kind: 'email', email: 'm@x.example' } as const, 'The same mail address, m@x.example.'],
  [{ kind: 'phone', phone: '5550100152' } as const, 'The same telephone, which ends in 0152.'],
  [
    { kind: 'name', one: 'Marit Oland', other: 'Marit Olnad', place: 'Fernhollow' } as const,
    '“Marit Oland” and “Marit Olnad” are written nearly alike, and both are in Fernhollow.',
  ],
  [
    { kind: 'name', one: 'Marit Oland', other: 'Marit Oland', place: '00019' } as const,
    'The same name, and both in 00019.',
  ],
])('why is told in words', (why, words) => {
  expect(likenessWords(why)).toBe(words);
});
