import type { Outline } from '@/lib/studio/rules/parts/outline';

/** The width of every drawing on the screen, in the units of its picture. */
export const drawnWidth = 1000;

/** An outline as the path of a picture that is {@link drawnWidth} wide and `aspect` times as high. */
export function pathOf(outline: Outline, aspect: number): string {
  const corners = outline.map(([x, y]) => `${tenths(x)} ${tenths(y * aspect)}`);
  return `M${corners.join('L')}Z`;
}

/** A length in the picture, on a tenth. */
export function tenths(length: number): number {
  return Math.round(length * 10) / 10;
}
