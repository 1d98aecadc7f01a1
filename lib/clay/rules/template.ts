import { ok, refuse, type Result } from '@/lib/platform/result';
import { clayRefusalMessage, wetUm, type ClayRefusal } from '../rules';

/** The papers a template is printed on, upright, in whole micrometres. */
export const templatePapers = {
  letter: { widthUm: 215_900, heightUm: 279_400 },
  a4: { widthUm: 210_000, heightUm: 297_000 },
} as const;

/** What a template is to be cut or pressed after: a rectangle, whole or in parts of one size. */
export type TemplateAsked = {
  /** The size the piece is to have fired, in whole micrometres. */
  readonly firedWidthUm: number;
  readonly firedHeightUm: number;
  readonly shrinkagePercent: string;
  /** How many parts lie side by side and one below the other; 1 and 1 for a piece in one. */
  readonly partsAcross: number;
  readonly partsDown: number;
  readonly paper: keyof typeof templatePapers;
};

/** A point or an upper left corner, in whole micrometres, right and down from the outline’s own. */
export type TemplateSpot = { readonly xUm: number; readonly yUm: number };

/** What of the drawing one sheet carries. */
export type TemplateSheet = TemplateSpot & {
  /** A, B, C …, from left to right and row by row. */
  readonly letter: string;
  readonly leftLetter: string | null;
  readonly rightLetter: string | null;
  readonly aboveLetter: string | null;
  readonly belowLetter: string | null;
};

/** A template in wet size, spread over sheets that overlap; all lengths in whole micrometres. */
export type Template = {
  readonly asked: TemplateAsked;
  readonly wetWidthUm: number;
  readonly wetHeightUm: number;
  /** The paper as it lies: upright, or on its side when that takes fewer sheets. */
  readonly pageWidthUm: number;
  readonly pageHeightUm: number;
  /** The part of each page that carries the drawing; its upper left corner is on the page. */
  readonly window: TemplateSpot & { readonly widthUm: number; readonly heightUm: number };
  readonly sheetsAcross: number;
  readonly sheetsDown: number;
  readonly sheets: readonly TemplateSheet[];
  /** Where crosses stand on every sheet that reaches there, to lay one sheet over another by. */
  readonly registerMarks: readonly TemplateSpot[];
  /** Where parts meet, from the outline’s left and upper edge. */
  readonly cutsAtXUm: readonly number[];
  readonly cutsAtYUm: readonly number[];
};

/** Why a template was not laid out. */
export type TemplateRefusal =
  | ClayRefusal
  | { code: 'parts_out_of_range'; most: number }
  | { code: 'too_many_sheets'; sheets: number; most: number };

/** The most parts in a row, and the most sheets that one template takes. */
export const partsMost = 40;
/** See {@link partsMost}. */
export const sheetsMost = 120;

/** By how much neighbouring sheets show the same, and the blank round the outline. */
export const overlapUm = 15_000;
const rimUm = 5_000;
/** What a printer leaves white at each edge, and the strip at the foot for ruler and letter. */
const edgeUm = 10_000;
/** The height of the strip at the foot of each sheet. */
export const footUm = 26_000;

/** Says in a full sentence why a template was not laid out. */
export function templateRefusalMessage(refusal: TemplateRefusal): string {
  if (refusal.code === 'parts_out_of_range') {
    return `A template has 1 to ${refusal.most} parts in a row.`;
  }
  if (refusal.code === 'too_many_sheets') {
    return (
      `That would take ${refusal.sheets} sheets; ${refusal.most} at most are drawn here. ` +
      'Have one as large as that printed on a roll, or make a template for each part.'
    );
  }
  return clayRefusalMessage(refusal);
}

/**
 * Lays a template out: the outline in wet size, in the middle of as few sheets as it takes.
 *
 * @returns refuses, in this order: a size of zero or less or a shrinkage out of range, parts out of
 *   range, too many sheets
 * @source ASTM C326 for the wet size, as {@link wetUm}; margins and overlap are common practice
 * @example 150 × 150 mm at '12' on Letter // 170_455 µm square, one sheet
 */
export function layOutTemplate(asked: TemplateAsked): Result<Template, TemplateRefusal> {
  const width = wetUm(asked.firedWidthUm, asked.shrinkagePercent);
  if (!width.ok) return width;
  const height = wetUm(asked.firedHeightUm, asked.shrinkagePercent);
  if (!height.ok) return height;
  const parts = [asked.partsAcross, asked.partsDown];
  if (!parts.every((each) => Number.isInteger(each) && each >= 1 && each <= partsMost)) {
    return refuse({ code: 'parts_out_of_range', most: partsMost });
  }
  const [wetWidthUm, wetHeightUm] = [width.value, height.value];
  const upright = templatePapers[asked.paper];
  const onItsSide = { widthUm: upright.heightUm, heightUm: upright.widthUm };
  const lays = [upright, onItsSide].map((page) => lay(page, wetWidthUm, wetHeightUm));
  const [first, second] = lays;
  const best = second && first && second.count < first.count ? second : first;
  if (!best || best.count > sheetsMost) {
    return refuse({ code: 'too_many_sheets', sheets: best?.count ?? 0, most: sheetsMost });
  }
  const { across, down } = best;
  return ok({
    ...{ asked, wetWidthUm, wetHeightUm, window: best.window },
    ...{ pageWidthUm: best.page.widthUm, pageHeightUm: best.page.heightUm },
    ...{ sheetsAcross: across.starts.length, sheetsDown: down.starts.length },
    sheets: sheetsOf(across, down),
    registerMarks: marksOf(across, down),
    cutsAtXUm: cutsIn(wetWidthUm, asked.partsAcross),
    cutsAtYUm: cutsIn(wetHeightUm, asked.partsDown),
  });
}

type Page = { readonly widthUm: number; readonly heightUm: number };
/** Where sheets begin along one side of the drawing, and how much of it each shows. */
type Row = { readonly starts: readonly number[]; readonly shownUm: number };

function lay(page: Page, wetWidthUm: number, wetHeightUm: number) {
  const window = {
    ...{ xUm: edgeUm, yUm: edgeUm, widthUm: page.widthUm - 2 * edgeUm },
    heightUm: page.heightUm - 2 * edgeUm - footUm,
  };
  const across = spread(wetWidthUm, window.widthUm);
  const down = spread(wetHeightUm, window.heightUm);
  return { page, window, across, down, count: across.starts.length * down.starts.length };
}

function spread(outlineUm: number, shownUm: number): Row {
  const whole = outlineUm + 2 * rimUm;
  const step = shownUm - overlapUm;
  const count = Math.max(1, Math.ceil((whole - overlapUm) / step));
  const blank = count * step + overlapUm - whole;
  const first = -rimUm - Math.floor(blank / 2);
  return { starts: Array.from({ length: count }, (_, at) => first + at * step), shownUm };
}

function sheetsOf(across: Row, down: Row): TemplateSheet[] {
  const [columns, rows] = [across.starts.length, down.starts.length];
  const letterAt = (column: number, row: number) => {
    const isThere = column >= 0 && column < columns && row >= 0 && row < rows;
    return isThere ? sheetLetter(row * columns + column) : null;
  };
  return down.starts.flatMap((yUm, row) =>
    across.starts.map((xUm, column) => ({
      ...{ xUm, yUm, letter: sheetLetter(row * columns + column) },
      ...{ leftLetter: letterAt(column - 1, row), rightLetter: letterAt(column + 1, row) },
      ...{ aboveLetter: letterAt(column, row - 1), belowLetter: letterAt(column, row + 1) },
    })),
  );
}

/**
 * The letter of a sheet: A to Z, then AA, AB and so on.
 *
 * @param place from 0
 */
export function sheetLetter(place: number): string {
  const last = String.fromCharCode(65 + (place % 26));
  return place < 26 ? last : sheetLetter(Math.floor(place / 26) - 1) + last;
}

function marksOf(across: Row, down: Row): TemplateSpot[] {
  const middleOf = ({ starts }: Row) => starts.slice(1).map((start) => start + overlapUm / 2);
  const besides = ({ starts, shownUm }: Row) =>
    starts.flatMap((start) => [1, 3].map((quarter) => Math.round(start + (quarter * shownUm) / 4)));
  const [seamsX, seamsY] = [middleOf(across), middleOf(down)];
  return [
    ...seamsX.flatMap((xUm) => [...besides(down), ...seamsY].map((yUm) => ({ xUm, yUm }))),
    ...seamsY.flatMap((yUm) => besides(across).map((xUm) => ({ xUm, yUm }))),
  ];
}

function cutsIn(wholeUm: number, parts: number): number[] {
  return Array.from({ length: parts - 1 }, (_, at) => Math.round((wholeUm * (at + 1)) / parts));
}
