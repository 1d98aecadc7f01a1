import type { KilnFacts, KnownSize } from './facts';

/** Where the size of a piece was taken from. */
export type SizeFrom = 'job' | 'piece' | 'usual';

/** What a piece is taken to be of which nobody wrote down the size: eight inches square, one thick. */
export const usualSizeUm = { widthUm: 203_200, heightUm: 203_200, depthUm: 25_400 } as const;

const cubicUmInCm3 = 1_000_000_000_000;

/**
 * What one piece takes of a kiln, in cm³: its own size, else that of the piece of the stock list,
 * else {@link usualSizeUm}, with the room around it on every side.
 *
 * @param roomAroundUm on each side, in whole micrometres
 * @source common practice: pieces stand apart in the kiln
 * @example a piece of 10 × 10 × 2 cm with 5 mm around it // 11 × 11 × 3 cm: 363 cm³
 */
export function kilnRoomOf(
  own: KnownSize,
  ofSku: KnownSize | null,
  roomAroundUm: number,
): { cm3: number; from: SizeFrom } {
  const isKnown = (size: KnownSize | null) =>
    size !== null && size.widthUm !== null && size.heightUm !== null;
  const from = isKnown(own) ? 'job' : isKnown(ofSku) ? 'piece' : 'usual';
  const { widthUm, heightUm, depthUm } = from === 'job' ? own : (ofSku ?? usualSizeUm);
  const withRoom = (um: number) => um + 2 * roomAroundUm;
  const volume =
    withRoom(widthUm ?? usualSizeUm.widthUm) *
    withRoom(heightUm ?? usualSizeUm.heightUm) *
    withRoom(depthUm ?? ofSku?.depthUm ?? usualSizeUm.depthUm);
  return { cm3: Math.max(1, Math.round(volume / cubicUmInCm3)), from };
}

/**
 * The room that a kiln has for pieces, in cm³: what its shelves cover up to its roof, without the
 * shelves themselves.
 */
export function kilnVolumeOf(kiln: KilnFacts): number {
  const shelves = kiln.shelves * kiln.shelfThickUm;
  const height = Math.max(0, kiln.insideHeightUm - shelves);
  return Math.round((kiln.shelfWidthUm * kiln.shelfDepthUm * height) / cubicUmInCm3);
}
