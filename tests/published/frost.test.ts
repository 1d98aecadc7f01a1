import { describe, expect, test } from 'vitest';
import { frostCautions, type BodyFacts } from '@/lib/commissions/rules/enquiry/frost';

const freezing = { exposure: 'outdoors', freezes: true } as const;
const tested = (absorptionPercent: string): BodyFacts => ({ absorptionPercent, frostTested: true });

/** How strongly a body is warned of where it freezes. */
function warningOf(body: BodyFacts): 'strong' | 'doubt' | 'none' {
  const told = frostCautions({ ...freezing, body }).join(' ');
  if (told.includes('Do not hang it in frost')) return 'strong';
  return told.includes('may not stand frost') ? 'doubt' : 'none';
}

// ANSI A137.1, classes of water absorption: impervious to 0.5 %, vitreous above 0.5 to 3.0, semi-vitreous
// above 3.0 to 7.0, non-vitreous above 7.0 (as a tile maker's use and care guide gives them). The 3 % as a
// limit of doubt is a rule of thumb of the trade press.
describe('by the classes of ANSI A137.1, where it freezes', () => {
  test.each([
    ['0', 'none'],
    ['0.5', 'none'],
    ['0.51', 'none'],
    ['3.0', 'none'],
    ['3', 'none'],
    ['3.01', 'doubt'],
    ['7.0', 'doubt'],
    ['7.00', 'doubt'],
    ['7.01', 'strong'],
    ['20', 'strong'],
  ] as const)('%s %% and tested: %s', (percent, warning) => {
    expect(warningOf(tested(percent))).toBe(warning);
  });
  test('a test does not take a strong warning away', () => {
    expect(warningOf(tested('9'))).toBe('strong');
  });
});

// ASTM C1026: soaked, 300 rounds of freezing and thawing. Tiles of 3 % have failed it and tiles of 5 to
// 7 % have stood it, so that a low figure alone decides nothing.
describe('by the test of ASTM C1026', () => {
  test.each([
    [false, 'was not tested in frost (ASTM C1026)'],
    [null, 'Whether this body was tested in frost (ASTM C1026) is not known'],
  ])('a dense body with the answer %s is warned of', (frostTested, words) => {
    const body = { absorptionPercent: '0.4', frostTested };
    expect(frostCautions({ ...freezing, body }).join(' ')).toContain(words);
  });
  test('a dense body that was tested still needs a drained back', () => {
    // The Tile Council of North America on frost: water that stands does harm all the same.
    const [only, ...more] = frostCautions({ ...freezing, body: tested('0.4') });
    expect(only).toContain('water that stands');
    expect(more).toEqual([]);
  });
  test('a body with the test and no figure is asked for its figure', () => {
    const body = { absorptionPercent: null, frostTested: true };
    expect(frostCautions({ ...freezing, body })[0]).toContain('not known: measure it');
  });
});
