import { describe, expect, test } from 'vitest';
import { decideCommissionSale } from '@/lib/sales/rules';
import { saleRefusalMessage } from '@/lib/sales/rules/refusals';
import { aCommissionSale } from '@/tests/rules/sales/a-commission-sale';

const soldAt = new Date('2026-11-20T22:04:00Z');

describe('the last one', () => {
  const gone = {
    code: 'not_enough_pieces',
    title: 'Tern over Shoals',
    sku: 'TS-10-CI',
    size: '10 × 10 in',
    wanted: 1,
    onHand: 0,
    askedAt: soldAt,
  } as const;
  const ago = (seconds: number) => new Date(soldAt.getTime() - seconds * 1_000);

  test.each([
    [20, 'just now'],
    [60, 'a minute ago'],
    [150, 'two minutes ago'],
    [3_600, 'an hour ago'],
    [5 * 3_600, 'five hours ago'],
    [86_400, 'a day ago'],
    [40 * 86_400, '40 days ago'],
  ])('sold %i seconds before is told as %s', (seconds, words) => {
    const last = { soldAt: ago(seconds), by: 'Ines Vale', channel: 'counter' as const };
    expect(saleRefusalMessage({ ...gone, last })).toBe(
      `The last Tern over Shoals 10 × 10 in was sold ${words}, at the counter, by Ines Vale.`,
    );
  });

  test('two are here, and three were wanted', () => {
    const words = saleRefusalMessage({ ...gone, last: null, wanted: 3, onHand: 2 });
    expect(words).toBe(
      'There are only 2 of Tern over Shoals 10 × 10 in here, and the slip says 3.',
    );
  });
});

describe('a commission at its hand-over', () => {
  const parts = [{ name: 'State', ratePercent: '8' }];

  test.each([
    ['half was paid', 540_000n, { deposit: 540_000n, on_account: 540_000n }],
    ['nothing was paid', 0n, { on_account: 1_080_000n }],
    ['all was paid', 1_080_000n, { deposit: 1_080_000n }],
  ])('%s', (_label, paidCents, tenders) => {
    const commission = aCommissionSale({ priceCents: 1_000_000n, paidCents });
    const sale = decideCommissionSale(commission, parts, 'invoice');
    expect(sale.tenders.map((each) => [each.kind, each.amountCents])).toEqual(
      Object.entries(tenders),
    );
  });

  test('what was paid beyond it is not used up', () => {
    const commission = aCommissionSale({ priceCents: 1_000_000n, paidCents: 1_080_001n });
    const sale = decideCommissionSale(commission, parts, 'invoice');
    expect(sale.tenders.map((each) => [each.kind, each.amountCents])).toEqual([
      ['deposit', 1_080_000n],
    ]);
  });
});
