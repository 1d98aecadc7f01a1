import type { PieceKind } from '@/lib/catalogue/rules';
import { clayWeightG, wetClayG } from '@/lib/clay/rules';
import type { Technique } from '@/lib/studio/rules/routes';
import { lyingOf, type PieceLying } from '../firings/lying';

/** A piece as far as its size and weight are written down, in whole micrometres and grams. */
export type PieceSize = {
  readonly kind: PieceKind | null;
  readonly technique: Technique;
  readonly widthUm: number | null;
  readonly heightUm: number | null;
  readonly depthUm: number | null;
  readonly weightG: number | null;
};

/** What a figure is, and whether part of it was taken for want of a measure. */
export type Reckoned<Value> = { readonly value: Value; readonly taken: string | null };

const hollowKinds: readonly PieceKind[] = ['lamp', 'planter', 'bowl'];
/** How deep a relief is taken to be while nobody wrote it down: three quarters of an inch. */
const reliefDepthUm = 19_050;
/** How thick the wall of a vessel is taken to be. */
const wallUm = 7_000;
/** What of its box a relief fills. */
const filledPercent = 65;
/** What fired clay is taken to weigh while its body says nothing else. */
const firedDensity = '2.0';
/** What water and fire take off the weight of wet clay, and what is cut off and thrown back. */
const wetLossPercent = '27';
const scrapPercent = '18';

/** Whether a piece is a vessel, which stands in the kiln and is glazed inside and out. */
export function isHollow({ kind, technique }: Pick<PieceSize, 'kind' | 'technique'>): boolean {
  return kind === null ? technique === 'thrown' : hollowKinds.includes(kind);
}

/**
 * The room that a piece takes in a kiln; a depth that nobody wrote down is taken as three quarters
 * of an inch for a relief, and as its width for a vessel.
 *
 * @returns null while its width or its height is not known
 * @source common practice
 */
export function lyingOfPiece(piece: PieceSize): Reckoned<PieceLying> | null {
  const hollow = isHollow(piece);
  const { widthUm, heightUm } = piece;
  const depthUm = piece.depthUm ?? (hollow ? widthUm : reliefDepthUm);
  const value = lyingOf({ widthUm, heightUm, depthUm }, hollow);
  if (!value) return null;
  const said = hollow ? 'its depth is taken to be its width' : 'its depth is taken to be 3/4 in';
  return { value, taken: piece.depthUm === null ? said : null };
}

/**
 * What is glazed of a piece: its face, or a vessel inside and out as a cylinder of its size.
 *
 * @returns whole square micrometres; null while its width or its height is not known
 * @source the area of a rectangle, and of a cylinder with one end
 */
export function glazedUm2(piece: PieceSize): bigint | null {
  const { widthUm, heightUm } = piece;
  if (widthUm === null || heightUm === null) return null;
  return isHollow(piece) ? 2n * outsideUm2(widthUm, heightUm) : BigInt(widthUm) * BigInt(heightUm);
}

/** One side of a cylinder with one end; 355 over 113 stands for pi. */
function outsideUm2(widthUm: number, heightUm: number): bigint {
  const width = BigInt(widthUm);
  return (355n * width * (4n * BigInt(heightUm) + width)) / (113n * 4n);
}

/**
 * The wet clay to have ready for one piece.
 *
 * @param densityGPerCm3 what its body weighs fired; null while nobody measured it
 * @returns whole grams, and what was taken for want of its weight; null while neither its weight nor
 *   its size is known
 * @source common practice: fired weight over 0.73 with 18 percent of scrap; a relief fills two
 *   thirds of its box, a vessel has a wall of 7 mm
 */
export function wetClayOf(
  piece: PieceSize,
  densityGPerCm3: string | null,
): Reckoned<number> | null {
  const fired = firedWeight(piece, densityGPerCm3 ?? firedDensity);
  if (!fired) return null;
  const wet = wetClayG(fired.value, wetLossPercent, scrapPercent);
  return wet.ok ? { value: wet.value, taken: fired.taken } : null;
}

function firedWeight(piece: PieceSize, densityGPerCm3: string): Reckoned<number> | null {
  if (piece.weightG !== null) return { value: piece.weightG, taken: null };
  const lying = lyingOfPiece(piece);
  const { widthUm, heightUm } = piece;
  if (!lying || widthUm === null || heightUm === null) return null;
  const slab = isHollow(piece)
    ? {
        lengthUm: widthUm,
        widthUm: Number(outsideUm2(widthUm, heightUm) / BigInt(widthUm)),
        thicknessUm: wallUm,
      }
    : {
        lengthUm: widthUm,
        widthUm: heightUm,
        thicknessUm: Math.round((lying.value.heightUm * filledPercent) / 100),
      };
  const weight = clayWeightG({ ...slab, densityGPerCm3 });
  const taken = isHollow(piece)
    ? 'its weight is reckoned from its size with a wall of 7 mm'
    : 'its weight is reckoned from its size, two thirds of its box filled';
  return weight.ok ? { value: weight.value, taken } : null;
}
