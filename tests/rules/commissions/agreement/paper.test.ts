import { describe, expect, test } from 'vitest';
import { signingCautions, type ToMind } from '@/lib/commissions/rules/agreement/cautions';
import {
  agreementBody,
  clayFrom,
  handshakeBody,
  type AgreementSaid,
  type HandshakeSaid,
} from '@/lib/commissions/rules/agreement/paper';

const telling = { currency: 'USD', lengthUnit: 'in' } as const;
const said: AgreementSaid = {
  commissionNumber: 12,
  proposalVersion: 2,
  title: 'Herons over kelp',
  collector: 'Marit Oland',
  understanding: 'Three herons at low water',
  widthUm: 1_219_200,
  heightUm: 609_600,
  depthUm: 50_800,
  pieces: 14,
  weightG: 20_000,
  lines: [
    { kind: 'work', words: 'The work, at the studio', amountCents: 800_000n },
    { kind: 'installation', words: 'Hanging', amountCents: 100_000n },
  ],
  taxWords: 'Sales tax of Fernhollow, as it stands today',
  taxCents: 74_250n,
  taxAs: 'fixture',
  steps: [
    { position: 1, name: 'Deposit', event: 'agreed', percent: '50', amountCents: 487_125n },
    { position: 2, name: 'Balance', event: 'hung', percent: '50', amountCents: 487_125n },
  ],
  designFeeCents: 80_000n,
  designFeeCredited: true,
  roundsIncluded: 2,
  extraRoundCents: 25_000n,
  readyFromOn: '2027-03-01',
  readyToOn: '2027-04-30',
  notIncluded: '',
  terms: 'The artist keeps the copyright.',
  sketch: { label: 'C', contentSha256: 'c'.repeat(64) },
  tiles: [{ label: '2', contentSha256: 'd'.repeat(64) }],
  cancelMakingPercent: '50',
  cancelFinishedPercent: '100',
};

describe('the agreement, word for word', () => {
  test.each([
    ['the size and how far it moves', '24 × 48 × 2 in'],
    ['the sketch by its letter and bytes', `Sketch, as approved: C (${'c'.repeat(64)}).`],
    ['the tiles', `Colour tile, as approved: 2 (${'d'.repeat(64)}).`],
    ['each line', 'Hanging: $1,000.00'],
    ['the tax and how it is looked at', '$742.50. For the tax it is a fixture of the building'],
    ['each step of the plan', 'Balance: $4,871.25 (50 %), when it hangs'],
    [
      'the days between which it is promised',
      'Promised between Monday 1 March 2027 and Friday 30 April 2027.',
    ],
    [
      'what stays when it ends early',
      '50 % of the price while it is made, and 100 % once it is finished',
    ],
    ['the terms', 'Terms: The artist keeps the copyright.'],
  ])('it tells %s', (_what, words) => {
    expect(agreementBody(said, telling)).toContain(words);
  });

  test.each([
    ['another price', { lines: [{ ...said.lines[0], kind: 'work', words: '', amountCents: 1n }] }],
    ['another sketch', { sketch: { label: 'C', contentSha256: 'e'.repeat(64) } }],
    ['one tile less', { tiles: [] }],
    ['another way to be taxed', { taxAs: 'goods_hung' }],
    ['another day', { readyToOn: '2027-05-01' }],
    ['other terms', { terms: '' }],
    ['another size', { widthUm: 1_000_000 }],
  ] as const)('%s is another paper', (_what, change) => {
    expect(agreementBody({ ...said, ...change }, telling)).not.toBe(agreementBody(said, telling));
  });

  test('what was not approved yet is said to come before the clay', () => {
    const body = agreementBody({ ...said, sketch: null, tiles: [] }, telling);
    expect(body).toContain('Sketch: to be approved in writing before any clay is cut.');
    expect(body).toContain('Colour tile: to be approved in writing before any clay is cut.');
  });
});

// 16 CFR Part 429: until midnight of the third business day after it; so clay on the day after.
test.each([
  ['gallery', null],
  ['by_mail', null],
  ['on_their_page', null],
  ['elsewhere', null],
  ['at_their_home', '2026-12-01'],
] as const)('signed the day before Thanksgiving, %s: clay from %s', (where, from) => {
  expect(clayFrom(where, '2026-11-25')).toBe(from);
});

describe('a handshake agreement', () => {
  const handshake: HandshakeSaid = {
    ...{ commissionNumber: 9, title: 'Kelp for a bath', agreedBy: 'Marit Oland' },
    ...{ agreedOn: '2026-03-02', signedWhere: 'gallery', promisedOn: null, taxAs: 'fixture' },
    ...{ priceCents: 500_000n, depositCents: 250_000n },
  };
  test('says where it was signed', () => {
    expect(handshakeBody(handshake, telling)).toContain('on a paper of its own, at the gallery.');
    expect(handshakeBody(handshake, telling)).not.toContain('cancelled');
    expect(handshakeBody(handshake, telling)).toContain('it is a fixture of the building.');
  });
  test('signed at their home, says until when it can be cancelled and when clay may be cut', () => {
    expect(handshakeBody({ ...handshake, signedWhere: 'at_their_home' }, telling)).toContain(
      'cancelled until Thursday 5 March 2026; no clay is cut before Friday 6 March 2026.',
    );
  });
});

describe('what to mind before it is signed', () => {
  const plain: ToMind = {
    ...{ taxAs: 'goods_hung', depositCents: 50n, priceCents: 100n, hasHanging: false },
  };
  test.each([
    ['nothing at the gallery', 'gallery', {}, []],
    ['at their home', 'at_their_home', {}, ['cut no clay before']],
    ['in a room rented for a day', 'elsewhere', {}, ['excepted by the federal rule']],
    ['hanging it', 'gallery', { hasHanging: true }, ['insurance']],
    [
      'set in, a small deposit',
      'gallery',
      { taxAs: 'set_in_pieces', depositCents: 10n },
      ['home improvement'],
    ],
    [
      'a fixture, a large deposit',
      'gallery',
      { taxAs: 'fixture', depositCents: 11n },
      ['home improvement', 'a tenth'],
    ],
  ] as const)('%s', (_what, where, change, words) => {
    const cautions = signingCautions(where, { ...plain, ...change });
    expect(cautions).toHaveLength(words.length);
    words.forEach((each, at) => expect(cautions[at]).toContain(each));
  });
});
