import { wetUm } from '@/lib/clay/rules';
import { areaOf, boxOf, type Outline } from './outline';

/** How large a part is, true and wet; lengths in whole micrometres. */
export type PartSize = {
  readonly widthUm: number;
  readonly heightUm: number;
  /** The face that is seen, in whole square millimetres. */
  readonly areaMm2: number;
  /** Null while nobody knows what the clay shrinks. */
  readonly wet: { readonly widthUm: number; readonly heightUm: number } | null;
};

/** The finished relief: its sides in whole micrometres. */
export type ReliefSize = { readonly widthUm: number; readonly heightUm: number };

/**
 * How large a part of a relief is when it is fired, and how large it is cut wet.
 *
 * @param shrinkagePercent of the wet length, as a decimal string; null while nobody measured it
 * @source the shoelace formula for the area; ASTM C326 for the wet size, as {@link wetUm}
 * @example a tenth of the width and a fifth of the height of 1 m × 1 m at '12'
 *   // 100 × 200 mm, 20_000 mm², wet 114 × 227 mm
 */
export function partSize(
  outline: Outline,
  { widthUm, heightUm }: ReliefSize,
  shrinkagePercent: string | null,
): PartSize {
  const { left, right, top, bottom } = boxOf(outline);
  const width = Math.round(((right - left) * widthUm) / 1000);
  const height = Math.round(((bottom - top) * heightUm) / 1000);
  const areaMm2 = Math.round(areaOf(outline) * (widthUm / 1e6) * (heightUm / 1e6));
  return { widthUm: width, heightUm: height, areaMm2, wet: wetOf(width, height, shrinkagePercent) };
}

function wetOf(widthUm: number, heightUm: number, percent: string | null): PartSize['wet'] {
  if (percent === null) return null;
  const [width, height] = [wetUm(widthUm, percent), wetUm(heightUm, percent)];
  return width.ok && height.ok ? { widthUm: width.value, heightUm: height.value } : null;
}

/**
 * An area in words, as the gallery measures.
 *
 * @example areaWords(64_516, 'in') // '100 sq in'
 */
export function areaWords(areaMm2: number, unit: 'in' | 'mm'): string {
  const units = unit === 'in' ? areaMm2 / (25.4 * 25.4) : areaMm2 / 100;
  const shown = units < 10 ? Math.round(units * 10) / 10 : Math.round(units);
  return `${shown} ${unit === 'in' ? 'sq in' : 'cm²'}`;
}
