import type { z } from 'zod';
import { gtinInput, kindInput, makingInput, nameInput, skuInput } from '@/lib/catalogue/input';
import type { CatalogueEntry } from '@/lib/catalogue/rules/piece';
import { centsInput } from '@/lib/money/input';
import { lengthInputIn, weightInputIn } from '@/lib/units/input';
import type { LengthSystem } from '@/lib/units/rules';
import type { ListColumn, ListHeading } from './list-columns';

/** What one line of a stock list says of its piece; undefined where it says nothing. */
export type ListedPiece = { [Fact in keyof CatalogueEntry]: CatalogueEntry[Fact] | undefined };

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
 * Makes the reader of a list's lines; it is handed a line's cells and the line where they begin.
 *
 * Most cells of a long list repeat, so that each text of a column is read once and remembered.
 *
 * @param defaultSystem what a length or weight without a unit means: inches and pounds, or
 *   millimetres and kilograms
 * @returns for each line the piece's facts, and a sentence for each cell that could not be read
 */
export function rowReader(
  heading: ListHeading,
  defaultSystem: LengthSystem,
): (cells: readonly string[], line: number) => ReadRow {
  const remembered = new Map<string, ReadCell>();
  const readCell: CellReader = (column, schema, text) => {
    if (column === 'code' || column === 'barcode') return cellOf(schema, text);
    const key = `${column} ${text}`;
    const known = remembered.get(key) ?? cellOf(schema, text);
    remembered.set(key, known);
    return known;
  };
  return (cells, line) => readRow(cells, line, { heading, defaultSystem, readCell });
}

type ReadCell = { value: unknown } | { sentence: string };
type CellReader = (column: ListColumn, schema: z.ZodType, text: string) => ReadCell;

function cellOf(schema: z.ZodType, text: string): ReadCell {
  const parsed = schema.safeParse(text);
  if (parsed.success) return { value: parsed.data };
  return { sentence: parsed.error.issues[0]?.message ?? 'This could not be read.' };
}

type ListReading = { heading: ListHeading; defaultSystem: LengthSystem; readCell: CellReader };

function readRow(cells: readonly string[], line: number, list: ListReading): ReadRow {
  const { heading, defaultSystem } = list;
  const faults: RowFault[] = [];
  const textOf = (column: ListColumn) => {
    const place = heading.columns.get(column)?.place;
    return place === undefined ? '' : (cells[place] ?? '').trim();
  };
  const read = <Schema extends z.ZodType>(
    column: ListColumn,
    schema: Schema,
    text = textOf(column),
  ) => {
    if (text === '' && column !== 'code') return undefined;
    const cell = list.readCell(column, schema, text);
    if ('value' in cell) return cell.value as z.output<Schema>;
    faults.push({ column, sentence: cell.sentence });
    return undefined;
  };
  const code = read('code', skuInput);
  const listed: ListedPiece = {
    title: read('title', nameInput),
    kind: read('kind', kindInput),
    colourway: read('colourway', nameInput),
    ...measuresOf({ heading, textOf, read, defaultSystem }),
    priceCents: read('price', centsInput),
    costCents: read('cost', centsInput),
    gtin: read('barcode', gtinInput),
    making: read('making', makingInput),
  };
  const here = hereOf(textOf('here'), faults);
  const isLonger = cells.slice(heading.cells).some((cell) => cell.trim() !== '');
  if (isLonger) faults.push(tooManyCells);
  return { line, code: code ?? textOf('code'), listed, here, faults: orNone(faults) };
}

/** One empty list for all lines without a fault: a long list has thousands of them. */
const none: readonly RowFault[] = [];

function orNone(faults: readonly RowFault[]): readonly RowFault[] {
  return faults.length === 0 ? none : faults;
}

const tooManyCells: RowFault = {
  column: 'code',
  sentence:
    'This line has more cells than the heading. A comma inside a cell needs quotation marks ' +
    'around the cell.',
};

type Reading = {
  heading: ListHeading;
  textOf: (column: ListColumn) => string;
  read: <Schema extends z.ZodType>(
    column: ListColumn,
    schema: Schema,
    text?: string,
  ) => z.output<Schema> | undefined;
  defaultSystem: LengthSystem;
};

/** Made once: thousands of cells are read by them. */
const lengthInputs = { in: lengthInputIn('in'), mm: lengthInputIn('mm') };
const weightInputs = { in: weightInputIn('lb'), mm: weightInputIn('kg') };

function measuresOf({ heading, textOf, read, defaultSystem }: Reading) {
  const length = (column: 'width' | 'height' | 'depth') => {
    const text = textOf(column);
    const unit = heading.columns.get(column)?.unit ?? '';
    const said = unit === '' ? textOf('unit') : unit;
    return read(column, lengthInputs[defaultSystem], withUnit(text, said));
  };
  const weight = withUnit(textOf('weight'), heading.columns.get('weight')?.unit ?? '');
  return {
    widthUm: length('width'),
    heightUm: length('height'),
    depthUm: length('depth'),
    weightG: read('weight', weightInputs[defaultSystem], weight),
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
