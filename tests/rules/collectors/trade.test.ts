import { describe, expect, test } from 'vitest';
import {
  certificateStanding,
  certificateWords,
  exemptWords,
  overlapping,
  tradeDiscount,
  type Certificate,
  type CertificateStanding,
  type TradeTerms,
} from '@/lib/collectors/rules/trade';
import { tradeRefusalMessage, type TradeRefusal } from '@/lib/collectors/rules/trade-refusals';

const paper = (over: Partial<Certificate> = {}): Certificate => ({
  ...{ id: 'one', state: 'Alderland', permitNumber: '4471', legalName: 'Halloran & Vane' },
  ...{ fromOn: '2026-01-01', untilOn: '2026-12-31', isWithdrawn: false },
  ...over,
});
const kindOf = (papers: readonly Certificate[], on: Parameters<typeof certificateStanding>[2]) =>
  certificateStanding(papers, 'Alderland', on).kind;

// Streamlined Sales and Use Tax Agreement, section 317, from memory: a certificate for another
// state, or one that ran out, does not relieve the seller.
describe('a certificate is good', () => {
  test.each([
    ['on its first day', '2026-01-01', 'good'],
    ['on its last day', '2026-12-31', 'good'],
    ['not on the day before', '2025-12-31', 'not_yet'],
    ['not on the day after', '2027-01-01', 'ran_out'],
  ] as const)('%s', (_label, on, kind) => {
    expect(kindOf([paper()], on)).toBe(kind);
  });

  test('for ever when it does not run out', () => {
    expect(kindOf([paper({ untilOn: null })], '2199-12-31')).toBe('good');
  });

  test('whatever the capitals of its state', () => {
    expect(kindOf([paper({ state: ' alderland ' })], '2026-06-01')).toBe('good');
  });

  test('for its own state alone', () => {
    const standing = certificateStanding([paper()], 'Fenmark', '2026-06-01');
    expect(standing).toEqual({ kind: 'other_state', state: 'Fenmark', goodFor: ['Alderland'] });
  });

  test('not once it is withdrawn', () => {
    expect(kindOf([paper({ isWithdrawn: true })], '2026-06-01')).toBe('withdrawn');
  });

  test('when another one beside it ran out, was withdrawn or is to come', () => {
    const others = [
      paper({ id: 'old', fromOn: '2024-01-01', untilOn: '2024-12-31' }),
      paper({ id: 'gone', isWithdrawn: true, untilOn: null }),
      paper({ id: 'next', fromOn: '2027-01-01', untilOn: null }),
    ];
    const standing = certificateStanding([...others, paper()], 'Alderland', '2026-06-01');
    expect(standing).toMatchObject({ kind: 'good', certificate: { id: 'one' } });
  });

  test('of several the one that lasts longest is named', () => {
    const papers = [paper(), paper({ id: 'long', untilOn: null }), paper({ id: 'short' })];
    const standing = certificateStanding(papers, 'Alderland', '2026-06-01');
    expect(standing).toMatchObject({ certificate: { id: 'long' } });
  });

  test('and nobody has one without handing one in', () => {
    expect(kindOf([], '2026-06-01')).toBe('none');
    expect(kindOf([paper({ state: 'Fenmark', untilOn: '2026-01-31' })], '2026-06-01')).toBe('none');
  });
});

const said: Record<CertificateStanding['kind'], [CertificateStanding, RegExp]> = {
  good: [{ kind: 'good', certificate: paper() }, /^On file, good for Alderland, runs out 31 Dec/],
  not_yet: [{ kind: 'not_yet', state: 'Alderland', fromOn: '2027-01-01' }, /holds from 1 Jan 2027/],
  ran_out: [{ kind: 'ran_out', state: 'Alderland', untilOn: '2026-01-31' }, /ran out on 31 Jan/],
  withdrawn: [{ kind: 'withdrawn', state: 'Alderland' }, /was withdrawn/],
  other_state: [
    { kind: 'other_state', state: 'Fenmark', goodFor: ['Alderland'] },
    /good for Alderland, not for Fenmark/,
  ],
  none: [{ kind: 'none' }, /^No resale certificate/],
};

test.each(Object.values(said))('$kind is told at the counter', (standing, words) => {
  expect(certificateWords(standing)).toMatch(words);
  expect(certificateWords(standing)).toMatch(/\.$/);
  if (standing.kind !== 'good') expect(certificateWords(standing)).toMatch(/tax is charged/i);
});

test('one that does not run out says so, and the receipt names it', () => {
  const certificate = paper({ untilOn: null });
  expect(certificateWords({ kind: 'good', certificate })).toMatch(/does not run out\.$/);
  expect(exemptWords(certificate)).toBe(
    'For resale: certificate 4471 of Halloran & Vane, Alderland',
  );
});

describe('the same permit', () => {
  test.each([
    ['on the last day', { fromOn: '2026-12-31', untilOn: null }, true],
    ['from the day after', { fromOn: '2027-01-01', untilOn: null }, false],
    ['till the first day', { fromOn: '2025-01-01', untilOn: '2026-01-01' }, true],
    ['till the day before', { fromOn: '2025-01-01', untilOn: '2025-12-31' }, false],
    ['in another state', { state: 'Fenmark' }, false],
    ['with another number', { permitNumber: '4472' }, false],
  ] as const)('%s', (_label, over, is) => {
    expect(overlapping([paper()], paper(over)) !== undefined).toBe(is);
  });
  test('that was withdrawn is in nobody’s way', () => {
    expect(overlapping([paper({ isWithdrawn: true })], paper())).toBeUndefined();
  });
});

describe('a trade discount', () => {
  const terms: TradeTerms = { way: 'discount', percent: '15', sinceOn: '2026-01-01', note: '' };
  const sale = { buyerId: 'designer', designerId: 'designer', on: '2026-06-01' } as const;
  test('comes off when the designer is the buyer named on the sale', () => {
    expect(tradeDiscount(terms, sale)).toEqual({ ok: true, value: '15' });
    expect(tradeDiscount(terms, { ...sale, on: '2026-01-01' }).ok).toBe(true);
  });
  test.each([
    ['the client is', terms, { ...sale, buyerId: 'client' }, 'not_the_buyer'],
    ['nobody is', terms, { ...sale, buyerId: null }, 'not_the_buyer'],
    ['no terms, and the client is', null, { ...sale, buyerId: 'client' }, 'not_the_buyer'],
    ['no terms', null, sale, 'no_trade_discount'],
    ['a fee instead', { ...terms, way: 'referral_fee' as const }, sale, 'no_trade_discount'],
    ['not yet', terms, { ...sale, on: '2025-12-31' as const }, 'no_trade_discount'],
  ])('does not: %s', (_label, kept, asked, code) => {
    expect(tradeDiscount(kept, asked)).toEqual({ ok: false, refusal: { code } });
  });
});

const refusals: Record<TradeRefusal['code'], TradeRefusal> = {
  not_allowed: { code: 'not_allowed', permission: 'trade.keep' },
  key_used_for_something_else: { code: 'key_used_for_something_else' },
  unknown_collector: { code: 'unknown_collector' },
  certificate_is_there: { code: 'certificate_is_there', permitNumber: '4471', state: 'Alderland' },
  certificate_unknown: { code: 'certificate_unknown' },
  picture_not_kept: { code: 'picture_not_kept', picture: { code: 'not_a_picture' } },
};
test.each(Object.values(refusals))('$code is told in a full sentence', (refusal) => {
  expect(tradeRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});
