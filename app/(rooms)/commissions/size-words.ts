import { formatLength, formatSize } from '@/lib/units/rules';

type Sides = Readonly<{
  widthUm: number | null;
  heightUm: number | null;
  depthUm: number | null;
}>;

/** A size as far as it is known: height × width × depth; null when no side is known. */
export function sizeWords(sides: Sides, system: 'in' | 'mm'): string | null {
  const { widthUm, heightUm, depthUm } = sides;
  if (widthUm !== null && heightUm !== null) {
    return formatSize({ widthUm, heightUm, depthUm }, system);
  }
  const known = [
    heightUm === null ? null : `${formatLength(heightUm, system)} high`,
    widthUm === null ? null : `${formatLength(widthUm, system)} wide`,
    depthUm === null ? null : `at most ${formatLength(depthUm, system)} deep`,
  ].filter((side) => side !== null);
  return known.length > 0 ? known.join(', ') : null;
}
