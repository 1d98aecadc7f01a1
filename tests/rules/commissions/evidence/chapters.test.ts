import { describe, expect, test } from 'vitest';
import {
  anEntry,
  marksOf,
  marksSentence,
  type Chapter,
} from '@/lib/commissions/rules/evidence/chapters';

const sha256 = 'a'.repeat(64);

function chapters(...fits: readonly boolean[]): Chapter[] {
  const entries = fits.map((each, at) =>
    anEntry({ title: `Sketch ${at + 1}`, mark: { sha256, fits: each } }),
  );
  return [
    { title: 'What was asked', entries: [anEntry({ title: 'Asked for by Marit Oland' })] },
    { title: 'Sketches and colours', entries },
    { title: 'The hand-over', entries: [] },
  ];
}

test('only what has a mark is counted, and what does not fit is named', () => {
  expect(marksOf(chapters(true, false, true))).toEqual({ all: 3, broken: ['Sketch 2'] });
});

describe('what the marks come to', () => {
  test.each([
    ['none', chapters(), 'Nothing in it was approved or signed yet.'],
    ['all fit', chapters(true, true), 'All 2 marks were computed anew and fit'],
    ['one does not', chapters(true, false), '1 of 2 marks do not fit what is kept: Sketch 2.'],
  ])('%s', (_label, given, words) => {
    expect(marksSentence(marksOf(given))).toContain(words);
  });
});
