import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { weighBoxesInput } from '@/lib/sending/input/boxes';
import { carrierTermsInput } from '@/lib/sending/input/carriers';
import { claimEventInput } from '@/lib/sending/input/claims';
import { readNamed, readSides, weightTyped } from '@/lib/sending/rules/typed/line';
import { contentsTyped, contentsWeigh, readContents } from '@/lib/sending/rules/typed/contents';
import { piecesTyped, readPieces, type PiecesRefusal } from '@/lib/sending/rules/typed/pieces';

const inch = 25_400;

describe('what stands before the semicolon', () => {
  test.each([
    ['Tern over shoals', { pieces: 1, words: 'Tern over shoals', partNumber: null }],
    ['2 × Tern', { pieces: 2, words: 'Tern', partNumber: null }],
    ['12x Tern', { pieces: 12, words: 'Tern', partNumber: null }],
    ['3 of Tern', { pieces: 3, words: 'Tern', partNumber: null }],
    ['Part 7', { pieces: 1, words: 'Part 7', partNumber: 7 }],
    ['part 12, sky', { pieces: 1, words: 'part 12, sky', partNumber: 12 }],
    ['Party lights', { pieces: 1, words: 'Party lights', partNumber: null }],
  ])('%s', (text, named) => {
    expect(readNamed(text)).toEqual(named);
  });

  test.each(['', '   ', '0 × Tern', '1000 × Tern', '2 × Part 7', 'Part 0', 'x'.repeat(201)])(
    '%j is none',
    (text) => {
      expect(readNamed(text)).toBeNull();
    },
  );
});

describe('three sides', () => {
  test.each<[string, 'in' | 'mm', [number, number, number]]>([
    ['10 × 10 × 1', 'in', [10 * inch, 10 * inch, inch]],
    ['10 x 10 1/2 x 1 in', 'in', [10 * inch, 10.5 * inch, inch]],
    ['254 × 254 × 25', 'mm', [254_000, 254_000, 25_000]],
    ['10 in × 254 mm × 2.5 cm', 'in', [254_000, 254_000, 25_000]],
    ['10 × 10 × 1 in', 'mm', [10 * inch, 10 * inch, inch]],
  ])('%s where %s is usual', (text, unit, sides) => {
    expect(readSides(text, unit)).toEqual(sides);
  });

  test.each(['', '10', '10 × 10', '10 × 10 × 0', '10 × 10 × 1 × 1', '10 × ten × 1', '-1 × 2 × 3'])(
    '%j is none',
    (text) => {
      expect(readSides(text, 'in')).toBeNull();
    },
  );
});

test.each([
  [454, 'in', '1 lb'],
  [2_835, 'in', '6 lb 4 oz'],
  [26_036, 'in', '57.4 lb'],
  [26_036, 'mm', '26036 g'],
  [850, 'mm', '850 g'],
] as const)('%i g is typed so that it reads back, in %s: %s', (grams, unit, text) => {
  expect(weightTyped(grams, unit)).toBe(text);
});

describe('a list of what is to go', () => {
  const good = 'Part 1; 6 × 6 × 1 in; 1 lb 8 oz\n\n2 × Tern over shoals; 10 × 10 × 1 in; 6 lb';

  test('reads, and is written as it reads', () => {
    const read = readPieces(good, 'in');
    expect(read.ok && read.value).toMatchObject([
      { pieces: 1, partNumber: 1, heightUm: 6 * inch, depthUm: inch, weightG: 680 },
      { pieces: 2, partNumber: null, words: 'Tern over shoals', weightG: 2_722 },
    ]);
    expect(read.ok && piecesTyped(read.value, 'in')).toBe(good.replace('\n\n', '\n'));
  });

  test.each<[string, PiecesRefusal]>([
    ['', { code: 'nothing_to_go' }],
    [' \n ', { code: 'nothing_to_go' }],
    ['Tern', { code: 'line_not_read', line: 1, text: 'Tern', what: 'parts' }],
    [
      'Tern; 1 × 1 × 1; 1 lb; more',
      { code: 'line_not_read', line: 1, text: 'Tern; 1 × 1 × 1; 1 lb; more', what: 'parts' },
    ],
    [
      '; 1 × 1 × 1; 1 lb',
      { code: 'line_not_read', line: 1, text: '; 1 × 1 × 1; 1 lb', what: 'name' },
    ],
    [
      'Tern; large; 1 lb',
      { code: 'line_not_read', line: 1, text: 'Tern; large; 1 lb', what: 'size' },
    ],
    [
      'A; 1 × 1 × 1; 1 lb\nTern; 1 × 1 × 1; heavy',
      { code: 'line_not_read', line: 2, text: 'Tern; 1 × 1 × 1; heavy', what: 'weight' },
    ],
    [
      'Tern; 1 × 1 × 1; 0',
      { code: 'line_not_read', line: 1, text: 'Tern; 1 × 1 × 1; 0', what: 'weight' },
    ],
    ['Part 3; 1 × 1 × 1; 1\nPart 3, sky; 1 × 1 × 1; 1', { code: 'part_twice', partNumber: 3 }],
    ['601 × Tern; 1 × 1 × 1; 1', { code: 'too_much_to_go', pieces: 601 }],
  ])('refuses %j', (text, refusal) => {
    expect(readPieces(text, 'in')).toEqual({ ok: false, refusal });
  });
});

describe('what is in a box', () => {
  const good = 'Part 4; 3 lb\n2 × Tern; 6 lb each\n\nPart 5; 2 lb\nCare sheet';

  test('an empty line begins the next layer; paper weighs nothing', () => {
    const read = readContents(`\n${good}\n\n`, 'in');
    const contents = read.ok ? read.value : [];
    expect(contents.map(({ layer, weightG }) => [layer, weightG])).toEqual([
      [1, 1_361],
      [1, 2_722],
      [2, 907],
      [2, 0],
    ]);
    expect(contentsWeigh(contents)).toBe(1_361 + 2 * 2_722 + 907);
    expect(contentsTyped(contents, 'in')).toBe(good);
  });

  test.each([
    ['', 'nothing_in_it'],
    ['Tern; heavy', 'content_not_read'],
    ['; 2 lb', 'content_not_read'],
    ['Tern; 2 lb; 3', 'content_not_read'],
    ['Part 1; 2 lb\n\nPart 1; 2 lb', 'part_twice'],
    [Array.from({ length: 301 }, (_, at) => `Tile ${at}`).join('\n'), 'too_much_in_it'],
  ])('refuses %j', (text, code) => {
    expect(readContents(text, 'in')).toMatchObject({ ok: false, refusal: { code } });
  });
});

describe('fields of the forms say what is wrong in the words of what they take', () => {
  const faultOf = (read: { success: boolean; error?: { issues: { message: string }[] } }) =>
    read.error?.issues[0]?.message;
  const ids = { requestKey: randomUUID(), shipmentId: randomUUID() };

  test.each([
    ['0', 'A weight has to be more than zero.'],
    ['heavy', 'That does not read as a weight. Write it as 6 lb 4 oz or 2.8 kg.'],
    ['999999999', 'The heaviest that can be written is 100000 kg.'],
  ])('a weight of %s on the scale', (text, words) => {
    expect(faultOf(weighBoxesInput('in').safeParse({ ...ids, 'scale.1': text }))).toBe(words);
  });

  test('a divisor that is no number, an amount that is none', () => {
    const terms = { requestKey: randomUUID(), name: 'A', counts: 'size', divisorIn3: '0' };
    const days = { reportDays: '5', claimDays: '60', cover: '0', holdsFromOn: '2026-01-01' };
    expect(faultOf(carrierTermsInput.safeParse({ ...terms, ...days }))).toMatch(/such as 139/);
    const event = {
      requestKey: randomUUID(),
      claimId: randomUUID(),
      kind: 'paid',
      on: '2026-01-01',
    };
    expect(faultOf(claimEventInput.safeParse({ ...event, amount: 'all' }))).toMatch(/amount/i);
  });
});
