import type { LineKind } from '@/lib/ledger/rules';
import { splitCents } from '@/lib/money/rules';

/** Lines that are sold without a design. */
export const otherKinds: LineKind[] = ['typed', 'shipping', 'installation', 'design_work'];

/** What one design sold in a month, before tax. */
export type DesignSold = { units: number; netCents: bigint };

/**
 * Each line's share of the month, in tenths of a per cent; together they are exactly a thousand,
 * the tenths left over going to the largest rests.
 *
 * @returns all noughts when nothing was earned
 * @source largest remainder, as `splitCents` does it
 * @example sharesOf([1n, 1n, 1n]) // [334, 333, 333]
 */
export function sharesOf(netCents: readonly bigint[]): number[] {
  const all = netCents.reduce((sum, cents) => sum + cents, 0n);
  if (all <= 0n) return netCents.map(() => 0);
  return splitCents(1_000n, netCents).map(Number);
}

/**
 * A share in words: `23.4 %`.
 *
 * @param tenths tenths of a per cent
 */
export function shareWords(tenths: number): string {
  return `${Math.floor(tenths / 10)}.${tenths % 10} %`;
}
