import { describe, expect, test } from 'vitest';
import {
  changeBody,
  isOvertaken,
  refusalToTakeOff,
  stillTrue,
  type ChangeSaid,
} from '@/lib/commissions/rules/agreement/change';

const telling = { currency: 'USD' } as const;
const said: ChangeSaid = {
  commissionNumber: 12,
  number: 2,
  title: 'Herons over kelp',
  collector: 'Marit Oland',
  words: 'Two more terns on the right',
  why: '',
  askedBy: 'Marit Oland',
  stage: 'Waiting for the studio since 17 Dec.',
  kind: 'work',
  priceBeforeCents: 900_000n,
  priceCents: 40_000n,
  dueEvent: null,
  promisedBefore: '2027-04-30',
  promisedAfter: null,
};

/** The lines of the body, by their beginning. */
function line(change: Partial<ChangeSaid>, begins: string): string | undefined {
  return changeBody({ ...said, ...change }, telling)
    .split('\n')
    .find((each) => each.startsWith(begins));
}

test.each([
  [
    'a stage with its own stop',
    {},
    'Asked',
    'Asked for by Marit Oland. The work: Waiting for the studio since 17 Dec.',
  ],
  [
    'a name that ends in one',
    { askedBy: 'M. Oland jr.' },
    'Asked',
    'Asked for by M. Oland jr. The work: Waiting for the studio since 17 Dec.',
  ],
  ['words without a stop', {}, 'What', 'What becomes: Two more terns on the right.'],
  ['words that ask', { words: 'Matte instead? ' }, 'What', 'What becomes: Matte instead?'],
  ['more', {}, 'The work', 'The work, at the studio: more by $400.00, before tax.'],
  [
    'less',
    { priceCents: -40_000n },
    'The work',
    'The work, at the studio: less by $400.00, before tax.',
  ],
  ['the price', {}, 'The price', 'The price was $9,000.00 and becomes $9,400.00, before tax.'],
  [
    'the price that stays',
    { priceCents: 0n },
    'The price',
    'The price stays $9,000.00, before tax.',
  ],
  ['with the last step', {}, 'It is paid', 'It is paid with the last step of the plan.'],
  ['with an event', { dueEvent: 'hung' }, 'It falls', 'It falls due when it hangs.'],
  [
    'less, of the last step',
    { priceCents: -1n },
    'It comes',
    'It comes off the last step of the plan.',
  ],
  [
    'less, of an event',
    { priceCents: -1n, dueEvent: 'hung' },
    'It comes',
    'It comes off what is due when it hangs.',
  ],
  ['the day that stays', {}, 'The promised', 'The promised day stays Friday 30 April 2027.'],
  [
    'the same day written again',
    { promisedAfter: '2027-04-30' },
    'The promised',
    'The promised day stays Friday 30 April 2027.',
  ],
  [
    'another day',
    { promisedAfter: '2027-05-14' },
    'The promised',
    'The promised day was Friday 30 April 2027 and becomes Friday 14 May 2027.',
  ],
  ['no day at all', { promisedBefore: null }, 'No day', 'No day is promised, as before.'],
  [
    'a first day',
    { promisedBefore: null, promisedAfter: '2027-05-14' },
    'No day',
    'No day was promised; now it is Friday 14 May 2027.',
  ],
] as const)('%s', (_what, change, begins, whole) => {
  expect(line(change, begins)).toBe(whole);
});

test('a change that costs nothing names no sum but the price, and nothing that is due', () => {
  const body = changeBody({ ...said, priceCents: 0n, dueEvent: 'hung' }, telling);
  expect(body).not.toContain('$0.00');
  expect(body).not.toMatch(/due|paid/);
});

test('no sentence ends in two full stops', () => {
  const words = 'A darker sky.';
  const body = changeBody({ ...said, words, why: 'They saw the tile.' }, telling);
  expect(body).not.toContain('..');
});

describe('whether a change order is still true', () => {
  const body = changeBody(said, telling);
  test.each([
    ['nothing was signed since', {}, true],
    ['the price has moved', { priceBeforeCents: 930_000n }, false],
    ['the day has moved', { promisedBefore: '2027-05-14' }, false],
    ['a day was promised only since', { promisedBefore: null }, false],
  ] as const)('%s: %s', (_what, change, isTrue) => {
    expect(stillTrue(body, { ...said, ...change }, telling)).toBe(isTrue);
  });

  test('one that costs nothing says what the price is, and that is no longer so either', () => {
    const free = changeBody({ ...said, priceCents: 0n }, telling);
    const later = { ...said, priceCents: 0n, priceBeforeCents: 930_000n };
    expect(stillTrue(free, later, telling)).toBe(false);
  });
});

test('one that was written beside other figures is overtaken', () => {
  const written = { ...said, body: changeBody(said, telling) };
  const agreed = { priceCents: 900_000n, promisedOn: '2027-04-30' } as const;
  expect(isOvertaken(written, agreed, telling)).toBe(false);
  expect(isOvertaken(written, { ...agreed, priceCents: 900_001n }, telling)).toBe(true);
  expect(isOvertaken(written, { ...agreed, promisedOn: null }, telling)).toBe(true);
});

test.each([
  ['more than was paid is left', 1_000n, 999n, null],
  ['just what was paid is left', 1_000n, 1_000n, null],
  ['a cent less than was paid', 1_000n, 1_001n, 'change_below_paid'],
  ['nothing is left, and nothing was paid', 0n, 0n, 'change_leaves_nothing'],
  ['less than nothing', -1n, 0n, 'change_leaves_nothing'],
] as const)('taking off: %s', (_what, totalCents, paidCents, code) => {
  expect(refusalToTakeOff(totalCents, paidCents)?.code ?? null).toBe(code);
});
