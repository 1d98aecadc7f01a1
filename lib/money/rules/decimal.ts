/** A decimal number held exactly: `units` divided by ten to the power of `scale`. */
export type Decimal = { readonly units: bigint; readonly scale: number };

const written = /^(-?)(\d{1,15})(?:\.(\d{1,12}))?$/;

/**
 * Reads a decimal number exactly, with no float in between.
 *
 * @param text plain digits with at most one point: 15 before it, 12 behind it
 * @returns null when the text is anything else: empty, `1e3`, `.5`, `5.`, `1,000`
 * @example parseDecimal('8.375') // { units: 8375n, scale: 3 }
 */
export function parseDecimal(text: string): Decimal | null {
  const match = written.exec(text.trim());
  if (!match) return null;
  const [, sign = '', whole = '', fraction = ''] = match;
  const units = BigInt(whole + fraction);
  return { units: sign === '-' ? -units : units, scale: fraction.length };
}

/**
 * The same number written with more places, so that several can be added.
 *
 * @param scale places to write it with, never fewer than it has already
 * @example unitsAtScale({ units: 5n, scale: 1 }, 3) // 500n: 0.5 is 0.500
 */
export function unitsAtScale(decimal: Decimal, scale: number): bigint {
  return decimal.units * 10n ** BigInt(scale - decimal.scale);
}

/**
 * Several decimals at one scale, the widest among them, in the order given.
 *
 * @example alignDecimals([half, whole]) // { units: [5n, 10n], scale: 1 } for 0.5 and 1
 */
export function alignDecimals(decimals: readonly Decimal[]): { units: bigint[]; scale: number } {
  const scale = decimals.reduce((widest, decimal) => Math.max(widest, decimal.scale), 0);
  return { units: decimals.map((decimal) => unitsAtScale(decimal, scale)), scale };
}

/**
 * A decimal in its shortest writing, without zeros that say nothing.
 *
 * @example formatDecimal({ units: 8250n, scale: 3 }) // '8.25'
 */
export function formatDecimal(decimal: Decimal): string {
  const size = decimal.units < 0n ? -decimal.units : decimal.units;
  const digits = size.toString().padStart(decimal.scale + 1, '0');
  const whole = digits.slice(0, digits.length - decimal.scale);
  const fraction = digits.slice(digits.length - decimal.scale).replace(/0+$/, '');
  const sign = decimal.units < 0n ? '-' : '';
  return fraction === '' ? `${sign}${whole}` : `${sign}${whole}.${fraction}`;
}

/** Where a half or any rest goes; `up` is away from zero and `down` towards it. */
export type Rounding = 'half-up' | 'down' | 'up';

/**
 * Divides whole numbers and rounds once. Below zero it mirrors what it does above, so that a
 * refund gives back exactly what the sale took.
 *
 * @param denominator above zero
 * @example divideRounded(5n, 10n, 'half-up') // 1n, and -1n for -5n
 */
export function divideRounded(numerator: bigint, denominator: bigint, rounding: Rounding): bigint {
  if (numerator < 0n) return -divideRounded(-numerator, denominator, rounding);
  const quotient = numerator / denominator;
  const rest = numerator % denominator;
  const goesUp = {
    'half-up': rest * 2n >= denominator,
    up: rest > 0n,
    down: false,
  }[rounding];
  return goesUp ? quotient + 1n : quotient;
}
