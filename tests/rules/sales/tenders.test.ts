import { describe, expect, test } from 'vitest';
import { endsInItsCheckDigit, looksLikeCardNumber } from '@/lib/money/rules/card-number';
import {
  changeCents,
  settle,
  type CreditOffered,
  type TenderOffered,
} from '@/lib/sales/rules/tenders';

describe('how it is paid', () => {
  const byCard = (amountCents: bigint): TenderOffered => ({
    kind: 'card',
    amountCents,
    reference: '000482',
  });
  const cash = (givenCents: bigint): TenderOffered => ({ kind: 'cash', givenCents });

  test.each([
    ['cash, just right', [cash(1_850n)], [['cash', 1_850n]], 0n],
    ['cash, with change', [cash(2_000n)], [['cash', 1_850n]], 150n],
    ['card', [byCard(1_850n)], [['card', 1_850n]], 0n],
    [
      'part by card, the rest in cash',
      [cash(2_000n), byCard(500n)],
      [
        ['card', 500n],
        ['cash', 1_350n],
      ],
      650n,
    ],
  ])('%s', (_label, offered, kept, change) => {
    const settled = settle(1_850n, offered);
    expect(settled.ok).toBe(true);
    if (!settled.ok) return;
    expect(settled.value.map((tender) => [tender.kind, tender.amountCents])).toEqual(kept);
    expect(changeCents(settled.value)).toBe(change);
  });

  test.each([
    ['less by card than the slip', [byCard(1_849n)], 'tenders_do_not_add_up'],
    ['more by card than the slip', [byCard(1_851n)], 'tenders_do_not_add_up'],
    ['cash beside a card that paid all', [byCard(1_850n), cash(5n)], 'tenders_do_not_add_up'],
    ['nothing at all', [], 'tenders_do_not_add_up'],
    ['a cent too little in cash', [cash(1_849n)], 'not_enough_cash'],
  ])('refused: %s', (_label, offered, code) => {
    expect(settle(1_850n, offered)).toMatchObject({ ok: false, refusal: { code } });
  });
});

describe('what is left open takes what is left', () => {
  const card: TenderOffered = { kind: 'card', amountCents: null, reference: '' };
  const rest: TenderOffered = { kind: 'cash', givenCents: null };
  const cheque = (amountCents: bigint): TenderOffered => ({
    ...{ kind: 'cheque', amountCents, reference: '' },
  });

  test.each<[string, bigint, TenderOffered[], [string, bigint][]]>([
    ['cash, just right', 1_850n, [rest], [['cash', 1_850n]]],
    ['card for all of it', 1_850n, [card], [['card', 1_850n]]],
    [
      'a cheque, and the card for the rest',
      1_850n,
      [card, cheque(1_000n)],
      [
        ['card', 850n],
        ['cheque', 1_000n],
      ],
    ],
    [
      'cash as given, and the card for the rest',
      1_850n,
      [{ kind: 'cash', givenCents: 500n }, card],
      [
        ['card', 1_350n],
        ['cash', 500n],
      ],
    ],
    ['nothing is due, and nothing is taken', 0n, [rest], []],
  ])('%s', (_label, total, offered, kept) => {
    const settled = settle(total, offered);
    expect(settled.ok && settled.value.map((each) => [each.kind, each.amountCents])).toEqual(kept);
  });
});

describe('a voucher', () => {
  const voucher: CreditOffered = {
    ...{ creditId: 'one', code: 'AB', kind: 'voucher', balanceCents: 1_000n, expiresOn: null },
  };
  const on = '2026-11-20';
  const known = (over: Partial<CreditOffered> = {}) => ({
    on: on as typeof on,
    byTyped: new Map([['ab', { ...voucher, ...over }]]),
  });
  const by = (amountCents: bigint | null): TenderOffered => ({
    ...{ kind: 'credit', code: 'ab', amountCents },
  });
  const rest: TenderOffered = { kind: 'cash', givenCents: null };

  test('pays what is on it and no more; the rest comes in cash', () => {
    expect(settle(1_850n, [by(null), rest], known())).toMatchObject({
      value: [
        { kind: 'voucher', amountCents: 1_000n, creditId: 'one' },
        { kind: 'cash', amountCents: 850n },
      ],
    });
    expect(settle(600n, [by(null), rest], known())).toMatchObject({
      value: [{ kind: 'voucher', amountCents: 600n }],
    });
  });

  test('offered twice it is still spent once', () => {
    expect(settle(1_850n, [by(600n), by(600n), rest], known())).toMatchObject({
      refusal: { code: 'voucher_has_less', onItCents: 400n },
    });
  });

  test('its last day counts, the day after does not', () => {
    const last = known({ expiresOn: on });
    expect(settle(900n, [by(null)], last).ok).toBe(true);
    expect(settle(900n, [by(null)], known({ expiresOn: '2026-11-19' }))).toMatchObject({
      refusal: { code: 'voucher_ran_out' },
    });
  });

  test('nobody knows it, or it has less on it than is said', () => {
    expect(settle(900n, [by(null)])).toMatchObject({ refusal: { code: 'unknown_voucher' } });
    expect(settle(1_850n, [by(1_001n), rest], known())).toMatchObject({
      refusal: { code: 'voucher_has_less', onItCents: 1_000n },
    });
  });
});

describe('the number of a card is known when it is seen', () => {
  // The figures below are well-known numbers for trying out payments, written from memory.
  test.each([
    ['4111111111111111', true],
    ['4111 1111 1111 1111', true],
    ['4111-1111-1111-1111', true],
    ['approved, 4111.1111.1111.1111, thanks', true],
    ['slip 12 4111111111111111', true],
    ['378282246310005', true],
    ['5555555555554444', true],
    ['6011111111111117', true],
    ['4111111111111112', false],
    ['1111111111111117', false],
    ['000482', false],
    ['AUTH 0042 17 NOV 2026', false],
    ['4242424242', false],
    ['', false],
  ])('%s: %s', (text, seen) => {
    expect(looksLikeCardNumber(text)).toBe(seen);
  });

  // The worked figure of many descriptions of this check digit, written from memory.
  test.each(Array.from({ length: 10 }, (_, digit) => [`7992739871${digit}`, digit === 3] as const))(
    'the check digit of %s',
    (digits, right) => {
      expect(endsInItsCheckDigit(digits)).toBe(right);
    },
  );
});
