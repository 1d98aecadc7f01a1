import { parseDecimal } from '@/lib/money/rules/decimal';

/** A typed number kept exactly as a fraction, and the word that followed it. */
export type Quantity = {
  readonly numerator: bigint;
  readonly denominator: bigint;
  readonly unit: string;
};

const glyphs: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const mixed =
  /^(?:(\d{1,9}(?:\.\d{1,6})?)|(?:(\d{1,9})[\s-]+)?(\d{1,4})\/(\d{1,4}))\s*([^\d\s/-].*)?$/;

/**
 * Reads `10`, `10.5`, `3/8`, `10 1/2`, `10-1/2` or `10½`, with a unit behind it or none.
 *
 * @returns null when it is none of these, or when something is divided by zero
 * @example readMixedNumber('10 1/2 in') // 21 over 2, unit 'in'
 */
export function readMixedNumber(text: string): Quantity | null {
  const plain = text.replace(/[¼½¾⅛⅜⅝⅞]/g, (glyph) => ` ${glyphs[glyph] ?? ''}`).trim();
  const match = mixed.exec(plain);
  if (!match) return null;
  const [, decimal, whole = '0', over = '0', under = '1', unit = ''] = match;
  if (decimal !== undefined) {
    const read = parseDecimal(decimal);
    return read && { numerator: read.units, denominator: 10n ** BigInt(read.scale), unit };
  }
  const denominator = BigInt(under);
  if (denominator === 0n) return null;
  return { numerator: BigInt(whole) * denominator + BigInt(over), denominator, unit };
}

/**
 * A quantity times a whole number of the small unit, rounded half up to a whole small unit.
 *
 * @example roundedProduct({ numerator: 1n, denominator: 16n, unit: 'in' }, 25_400n) // 1588
 */
export function roundedProduct(quantity: Quantity, smallUnits: bigint, per = 1n): number {
  const numerator = quantity.numerator * smallUnits * 2n;
  const denominator = quantity.denominator * per;
  return Number((numerator + denominator) / (denominator * 2n));
}
