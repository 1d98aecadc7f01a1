import { invariant } from '@/lib/platform/invariant';

/** The sheets of labels that can be printed on, by what they measure. */
export const labelSheetKeys = ['letter-30', 'letter-10', 'letter-6', 'a4-21', 'a4-24'] as const;

/** One of {@link labelSheetKeys}. */
export type LabelSheetKey = (typeof labelSheetKeys)[number];

/** A sheet of labels; all lengths in points, 72 to the inch. */
export type LabelSheet = Readonly<{
  words: string;
  pageWidth: number;
  pageHeight: number;
  columns: number;
  rows: number;
  width: number;
  height: number;
  /** The upper left corner of the first label. */
  left: number;
  top: number;
  /** From one label's left or upper edge to the next one's. */
  across: number;
  down: number;
}>;

const inch = 72;
const mm = 72 / 25.4;
const letter = { pageWidth: 8.5 * inch, pageHeight: 11 * inch } as const;
const a4 = { pageWidth: 210 * mm, pageHeight: 297 * mm } as const;

const sheets: Readonly<Record<LabelSheetKey, LabelSheet>> = {
  'letter-30': {
    words: 'Letter, 3 × 10 labels of 2⅝ × 1 in',
    ...letter,
    ...{ columns: 3, rows: 10, width: 2.625 * inch, height: inch },
    ...{ left: (3 / 16) * inch, top: inch / 2, across: 2.75 * inch, down: inch },
  },
  'letter-10': {
    words: 'Letter, 2 × 5 labels of 4 × 2 in',
    ...letter,
    ...{ columns: 2, rows: 5, width: 4 * inch, height: 2 * inch },
    ...{ left: (5 / 32) * inch, top: inch / 2, across: 4.1875 * inch, down: 2 * inch },
  },
  'letter-6': {
    words: 'Letter, 2 × 3 labels of 4 × 3⅓ in',
    ...letter,
    ...{ columns: 2, rows: 3, width: 4 * inch, height: (10 / 3) * inch },
    ...{ left: (5 / 32) * inch, top: inch / 2, across: 4.1875 * inch, down: (10 / 3) * inch },
  },
  'a4-21': {
    words: 'A4, 3 × 7 labels of 63.5 × 38.1 mm',
    ...a4,
    ...{ columns: 3, rows: 7, width: 63.5 * mm, height: 38.1 * mm },
    ...{ left: 7.21 * mm, top: 15.15 * mm, across: 66.04 * mm, down: 38.1 * mm },
  },
  'a4-24': {
    words: 'A4, 3 × 8 labels of 70 × 37 mm',
    ...a4,
    ...{ columns: 3, rows: 8, width: 70 * mm, height: 37 * mm },
    ...{ left: 0, top: 0.5 * mm, across: 70 * mm, down: 37 * mm },
  },
};

/**
 * A sheet by its key.
 *
 * @source common practice: the sizes that label sheets are sold in, as plain measures
 */
export function labelSheet(key: LabelSheetKey): LabelSheet {
  return sheets[key];
}

/** How many labels a sheet has. */
export function labelsOn({ columns, rows }: LabelSheet): number {
  return columns * rows;
}

/** Where a label lies: which sheet, and its upper left corner in points. */
export type LabelSpot = { page: number; x: number; y: number };

/**
 * Where a label lies, counted along the rows; a sheet that was begun before is begun further on.
 *
 * @param at the label's place among those to print, from 0
 * @param firstAt the label of the first sheet on which the printing begins, from 1
 * @example the second label of a sheet begun at its last label lies on the second sheet
 */
export function labelSpot(sheet: LabelSheet, at: number, firstAt = 1): LabelSpot {
  const all = labelsOn(sheet);
  invariant(firstAt >= 1 && firstAt <= all, 'The printing begins on a label of the sheet.');
  const place = at + firstAt - 1;
  const onSheet = place % all;
  const [column, row] = [onSheet % sheet.columns, Math.floor(onSheet / sheet.columns)];
  return {
    page: Math.floor(place / all),
    x: sheet.left + column * sheet.across,
    y: sheet.top + row * sheet.down,
  };
}
