import { kindWords, type PieceKind } from '@/lib/catalogue/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import { formatSize, formatWeight, type LengthSystem } from '@/lib/units/rules';
import { handsFromG } from '@/lib/walls/rules/lifting/weights';
import { foodStatement, forUseWords, lampCaution, mayHoldFood, type FoodUse } from './cautions';

/** The kinds of label. */
export const labelKinds = ['price_tag', 'wall_label', 'shelf_label', 'back_label'] as const;

/** One of {@link labelKinds}. */
export type LabelKind = (typeof labelKinds)[number];

/** The kinds of label as they are said. */
export const labelKindWords: Readonly<Record<LabelKind, string>> = {
  price_tag: 'Price tags',
  wall_label: 'Wall labels',
  shelf_label: 'Shelf labels',
  back_label: 'Labels for the back',
};

/** A piece as a label tells it. Lengths in micrometres, weight in grams, price in cents. */
export type LabelPiece = {
  sku: string;
  /** The number of its edition on this label; null for none. */
  number: number | null;
  title: string;
  kind: PieceKind;
  colourway: string;
  widthUm: number;
  heightUm: number;
  depthUm: number | null;
  weightG: number | null;
  priceCents: Cents;
  making: 'open_stock' | 'one_off' | 'edition';
  editionSize: number | null;
  grade: 'first' | 'second' | 'irregular';
  flaw: string;
  foodUse: FoodUse;
  madeInYear: number | null;
  medium: string;
};

/** Who the label is from, and how lengths and weights are told. */
export type LabelGallery = { name: string; phone: string; lengthUnit: LengthSystem };

/** One stretch of text: in which hand, how large in points at most and at least. */
export type LabelBlock = {
  text: string;
  face: 'serif' | 'italic' | 'sans' | 'bold';
  size: number;
  least: number;
  /** The most lines it may run to. */
  lines: number;
  /** Never left out, however small the label. */
  isKept: boolean;
  isQuiet: boolean;
};

const block = (text: string, over: Partial<LabelBlock>): LabelBlock => ({
  ...{ text, face: 'sans', size: 9, least: 6, lines: 2, isKept: false, isQuiet: false },
  ...over,
});

/**
 * What a scanner reads from a label: the SKU, and for one of an edition its number behind a sign.
 *
 * @example labelCode({ sku: 'FN-12-TK', number: 4 }) // 'FN-12-TK#4'
 */
export function labelCode({ sku, number }: Pick<LabelPiece, 'sku' | 'number'>): string {
  return number === null ? sku : `${sku}#${number}`;
}

/** Whether a kind of label carries a code to scan. The one on the wall does not. */
export function carriesCode(kind: LabelKind): boolean {
  return kind !== 'wall_label';
}

/**
 * The words of a label, from the top down; what is empty is left out.
 *
 * @source common practice on wall labels, tags and the backs of works
 * @example a price tag has the title, the size, the SKU and the price; a label for the back has no price
 */
export function labelBlocks(
  piece: LabelPiece,
  kind: LabelKind,
  gallery: LabelGallery,
): LabelBlock[] {
  const blocks = blocksOf[kind](piece, gallery);
  return blocks.filter((each) => each.text.trim() !== '');
}

/** A caution that goes with a piece: for ware that only looks fit for food, or for a lamp. */
export type LabelCaution = { about: 'food' | 'electricity'; text: string };

/** The caution that goes with a piece, in whole; null for most. */
export function cautionFor(piece: Pick<LabelPiece, 'kind' | 'foodUse'>): LabelCaution | null {
  if (piece.kind === 'lamp') return { about: 'electricity', text: lampCaution };
  if (!mayHoldFood(piece.kind) || piece.foodUse === 'proven') return null;
  return { about: 'food', text: foodStatement };
}

type Writer = (piece: LabelPiece, gallery: LabelGallery) => LabelBlock[];

const blocksOf: Readonly<Record<LabelKind, Writer>> = {
  price_tag: (piece, gallery) => [
    block(piece.title, { face: 'italic', size: 12, isKept: true }),
    block(price(piece), { face: 'bold', size: 13, least: 8, lines: 1, isKept: true }),
    block(`${sizeOf(piece, gallery)} · ${labelCode(piece)}`, { size: 8.5, isKept: true }),
    block(gradeWords(piece), { face: 'bold', size: 8 }),
    block(editionWords(piece), { size: 8, isQuiet: true }),
  ],
  wall_label: (piece, gallery) => [
    block(gallery.name, { face: 'serif', size: 13, least: 7 }),
    block(titleAndYear(piece), { face: 'italic', size: 15, least: 8, isKept: true }),
    block(mediumOf(piece), { size: 10 }),
    block(sizeAndWeight(piece, gallery), { size: 10, isKept: true }),
    block(editionWords(piece), { size: 10 }),
    block(gradeWords(piece), { size: 10 }),
    block(price(piece), { size: 11, least: 8, lines: 1, isKept: true }),
  ],
  shelf_label: (piece, gallery) => [
    block(piece.title, { face: 'italic', size: 13, isKept: true }),
    block(`${sizeOf(piece, gallery)}, ${piece.colourway}`, { size: 9, isKept: true }),
    block(price(piece), { face: 'bold', size: 13, least: 8, lines: 1, isKept: true }),
    block(forUseWords(piece), { size: 8.5, isKept: true }),
    block(gradeWords(piece), { face: 'bold', size: 8 }),
    block([labelCode(piece), editionWords(piece)].filter(Boolean).join(' · '), {
      ...{ size: 8, isQuiet: true },
    }),
  ],
  back_label: (piece, gallery) => [
    block(titleAndYear(piece), { face: 'italic', size: 12, isKept: true }),
    block(gallery.name, { face: 'serif', size: 9 }),
    block(mediumOf(piece), { size: 8.5 }),
    block(sizeAndWeight(piece, gallery), { size: 8.5, isKept: true }),
    block([labelCode(piece), editionWords(piece)].filter(Boolean).join(' · '), {
      ...{ size: 8.5, isKept: true },
    }),
    block(gradeWords(piece), { size: 8 }),
    block(hangingWords(piece), { size: 7.5, lines: 4, isKept: true }),
    block(gallery.phone, { size: 7.5, isQuiet: true, lines: 1 }),
  ],
};

function price({ priceCents }: LabelPiece): string {
  return formatCents(priceCents);
}

function titleAndYear({ title, madeInYear }: LabelPiece): string {
  return madeInYear === null ? title : `${title}, ${madeInYear}`;
}

function mediumOf({ medium, kind, colourway }: LabelPiece): string {
  return medium === '' ? `${kindWords(kind)}, ${colourway}` : medium;
}

function sizeOf(piece: LabelPiece, { lengthUnit }: LabelGallery): string {
  return formatSize(piece, lengthUnit);
}

/** Twenty pounds in grams: from there on a wall label tells the weight. */
const weightToldG = 9_072;

function sizeAndWeight(piece: LabelPiece, gallery: LabelGallery): string {
  const size = sizeOf(piece, gallery);
  const { weightG } = piece;
  if (weightG === null || weightG <= weightToldG) return size;
  return `${size} · ${formatWeight(weightG, gallery.lengthUnit === 'in' ? 'lb' : 'kg')}`;
}

/** Which of its edition a piece is, or that it exists once; nothing for open stock. */
export function editionWords(piece: Pick<LabelPiece, 'making' | 'number' | 'editionSize'>): string {
  const { making, number, editionSize } = piece;
  if (making === 'one_off') return 'one of a kind';
  if (making !== 'edition' || editionSize === null) return '';
  if (number === null) return `edition of ${editionSize}`;
  if (number > editionSize) return `artist’s proof ${number - editionSize}`;
  return `edition ${number} of ${editionSize}`;
}

function gradeWords({ grade, flaw }: LabelPiece): string {
  if (grade === 'first') return '';
  const name = grade === 'second' ? 'Second' : 'Irregular';
  return flaw === '' ? name : `${name}: ${flaw}`;
}

const hungKinds: readonly PieceKind[] = ['relief_tile', 'plaque', 'wall_panel'];

function hangingWords({ kind, weightG }: LabelPiece): string {
  if (!hungKinds.includes(kind)) return '';
  const two = weightG !== null && weightG >= handsFromG.two ? ' Two people lift it.' : '';
  return `↑ This side up. Hold it by the board, not by the relief; hang it level from two points.${two}`;
}
