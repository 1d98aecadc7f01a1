import type { Decimal } from '@/lib/money/rules/decimal';

/** A number held exactly, so that nothing is rounded before the end; `under` is above zero. */
export type Fraction = { readonly over: bigint; readonly under: bigint };

/** Nothing. */
export const none: Fraction = { over: 0n, under: 1n };
/** One. */
export const one: Fraction = { over: 1n, under: 1n };

/** In lowest terms. */
function lowest(over: bigint, under: bigint): Fraction {
  let [a, b] = [over < 0n ? -over : over, under];
  while (b !== 0n) [a, b] = [b, a % b];
  return a === 0n ? none : { over: over / a, under: under / a };
}

/** A decimal as a fraction. */
export function fractionOf({ units, scale }: Decimal): Fraction {
  return lowest(units, 10n ** BigInt(scale));
}

/** The sum of two. */
export function plus(a: Fraction, b: Fraction): Fraction {
  return lowest(a.over * b.under + b.over * a.under, a.under * b.under);
}

/** The product of two. */
export function times(a: Fraction, b: Fraction): Fraction {
  return lowest(a.over * b.over, a.under * b.under);
}

/** One over the other, which is above zero. */
export function dividedBy(a: Fraction, b: Fraction): Fraction {
  return lowest(a.over * b.under, a.under * b.over);
}
