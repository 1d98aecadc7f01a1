/** A length unit a person may type. */
export type LengthUnit = 'in' | 'ft' | 'mm' | 'cm' | 'm';

/** Micrometres in each length unit, exactly (the international inch of 1959). */
export const umPer: Readonly<Record<LengthUnit, bigint>> = {
  in: 25_400n,
  ft: 304_800n,
  mm: 1_000n,
  cm: 10_000n,
  m: 1_000_000n,
};

/** A weight unit a person may type. */
export type WeightUnit = 'lb' | 'oz' | 'kg' | 'g';

/** Grams in each weight unit, exactly, as a fraction (the international pound of 1959). */
export const weightUnits: Readonly<Record<WeightUnit, { grams: bigint; per: bigint }>> = {
  lb: { grams: 45_359_237n, per: 100_000n },
  oz: { grams: 45_359_237n, per: 1_600_000n },
  kg: { grams: 1_000n, per: 1n },
  g: { grams: 1n, per: 1n },
};

const lengthWords = new Map<string, LengthUnit>([
  ...['in', 'in.', 'inch', 'inches', '"', '″', '”'].map((word) => [word, 'in'] as const),
  ...['ft', 'ft.', 'foot', 'feet', "'", '′', '’'].map((word) => [word, 'ft'] as const),
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['m', 'm'],
]);

const weightWords = new Map<string, WeightUnit>([
  ...['lb', 'lb.', 'lbs', 'lbs.', 'pound', 'pounds'].map((word) => [word, 'lb'] as const),
  ...['oz', 'oz.', 'ounce', 'ounces'].map((word) => [word, 'oz'] as const),
  ['kg', 'kg'],
  ['g', 'g'],
]);

/**
 * The length unit a word or sign stands for.
 *
 * @returns undefined for a word not known here
 * @example lengthUnitOf('″') // 'in'
 */
export function lengthUnitOf(word: string): LengthUnit | undefined {
  return lengthWords.get(word);
}

/**
 * The weight unit a word stands for.
 *
 * @returns undefined for a word not known here
 * @example weightUnitOf('lbs') // 'lb'
 */
export function weightUnitOf(word: string): WeightUnit | undefined {
  return weightWords.get(word);
}
