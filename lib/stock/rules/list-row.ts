import type { z } from 'zod';
import { gtinInput, kindInput, makingInput, nameInput, skuInput } from '@/lib/catalogue/input';
import type { CatalogueEntry } from '@/lib/catalogue/rules/piece';
import { centsInput } from '@/lib/money/input';
import { lengthInputIn, weightInputIn } from '@/lib/units/input';
import type { LengthSystem } from '@/lib/units/rules';
import type { ListColumn, ListHeading } from './list-columns';

/** What one line of a stock list says of its piece; what it leaves empty is not there. */
export type ListedPiece = Partial<CatalogueEntry>;

/** What is wrong with one cell, as a full sentence. */
export type RowFault = { column: ListColumn; sentence: string };

/** One line of the file, read. `line` is the line in the file as a person counts, heading = 1. */
export type ReadRow = {
  line: number;
  /** As it is written, where it could not be read. */
  code: string;
  listed: ListedPiece;
  /** How many are said to be here; undefined when nothing is said. */
  here: number | undefined;
  faults: readonly RowFault[];
};

/** The most of one piece that a place can hold. */
export const hereMost = 100_000;

/**
 * Reads one line of a stock list.
 *
 * @param line where it begins in the file
 * @param defaultSystem what a length or weight without a unit means: inches and pounds, or
 *   millimetres and kilograms
 * @returns the piece's facts, and a sentence for each cell that could not be read
 */
export function readListRow(
  cells: readonly string[],
  heading: ListHeading,
  { line, defaultSystem }: { line: number; defaultSystem: LengthSystem },
): ReadRow {
  const faults: RowFault[] = [];
  const cellOf = (column: ListColumn) => {
    const place = heading.columns.get(column)?.place;
    return place === undefined ? '' : (cells[place] ?? '').trim();
  };
  const read = <Value>(column: ListColumn, schema: z.ZodType<Value>, text = cellOf(column)) => {
    if (text === '' && column !== 'code') return undefined;
    const parsed = schema.safeParse(text);
    if (parsed.success) return parsed.data;
    const sentence = parsed.error.issues[0]?.message ?? 'This could not be read.';
    faults.push({ column, sentence });
    return undefined;
  };
  const code = read('code', skuInput);
  const listed = given({
    title: read('title', nameInput),
    kind: read('kind', kindInput),
    colourway: read('colourway', nameInput),
    ...measuresOf({ heading, cellOf, read, defaultSystem }),
    priceCents: read('price', centsInput),
    costCents: read('cost', centsInput),
    gtin: read('barcode', gtinInput),
    making: read('making', makingInput),
  });
  const here = hereOf(cellOf('here'), faults);
  if (cells.slice(heading.cells).some((cell) => cell.trim() !== '')) faults.push(tooManyCells);
  return { line, code: code ?? cellOf('code'), listed, here, faults };
}

const tooManyCells: RowFault = {
  column: 'code',
  sentence:
    'This line has more cells than the heading. A comma inside a cell needs quotation marks ' +
    'around the cell.',
};

type Reading = {
  heading: ListHeading;
  cellOf: (column: ListColumn) => string;
  read: <Value>(column: ListColumn, schema: z.ZodType<Value>, text?: string) => Value | undefined;
  defaultSystem: LengthSystem;
};

function measuresOf({ heading, cellOf, read, defaultSystem }: Reading) {
  const length = (column: 'width' | 'height' | 'depth') => {
    const text = cellOf(column);
    const unit = heading.columns.get(column)?.unit ?? '';
    const said = unit === '' ? cellOf('unit') : unit;
    return read(column, lengthInputIn(defaultSystem), withUnit(text, said));
  };
  const weight = withUnit(cellOf('weight'), heading.columns.get('weight')?.unit ?? '');
  return {
    widthUm: length('width'),
    heightUm: length('height'),
    depthUm: length('depth'),
    weightG: read('weight', weightInputIn(defaultSystem === 'in' ? 'lb' : 'kg'), weight),
  };
}

/** A bare number gets the unit that its column or line names; a cell's own unit goes first. */
function withUnit(text: string, unit: string): string {
  return unit !== '' && /[\d¼½¾⅛⅜⅝⅞]$/.test(text) ? `${text} ${unit}` : text;
}

function hereOf(text: string, faults: RowFault[]): number | undefined {
  if (text === '') return undefined;
  const digits = text.replace(/^(\d{1,3})((?:,\d{3})+)$/, (whole) => whole.replaceAll(',', ''));
  const count = /^\d{1,7}(?:\.0+)?$/.test(digits) ? Number(digits) : Number.NaN;
  if (count <= hereMost) return count;
  faults.push({
    column: 'here',
    sentence: `How many are here is a whole number from 0 to ${hereMost.toLocaleString('en-US')}.`,
  });
  return undefined;
}

/** Leaves out what is undefined, so that "not said" and "said to be nothing" stay apart. */
function given(facts: { [Key in keyof ListedPiece]: ListedPiece[Key] | undefined }): ListedPiece {
  const said = Object.entries(facts).filter(([, fact]) => fact !== undefined);
  return Object.fromEntries(said);
}
