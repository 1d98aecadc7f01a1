import type { CommissionForSale } from '@/lib/sales/rules';

/** A commission of one line of work as its hand-over takes it; taxed whole unless said otherwise. */
export function aCommissionSale(
  money: { priceCents: bigint; paidCents: bigint },
  isTaxed = true,
): CommissionForSale {
  const { priceCents: cents, paidCents } = money;
  const taxableCents = isTaxed ? cents : 0n;
  const work = { kind: 'commission', words: 'The work', taxKind: 'goods' } as const;
  return {
    ...{ title: 'Tidewater wall', what: 'wall relief', paidCents },
    lines: [{ ...work, cents, taxableCents }],
  };
}
