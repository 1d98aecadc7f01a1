import { ok, refuse, type Result } from '@/lib/platform/result';
import type { FileRefusal } from './refusals';

/** A column by its name, with the other names that people give it. */
export type NamedColumn<Name extends string> = { column: Name; also: readonly string[] };

/** Where each known column stands, and the headings that mean nothing here. */
export type Heading<Name extends string> = {
  places: ReadonlyMap<Name, number>;
  passedOver: readonly string[];
  /** How many cells the heading line has. */
  cells: number;
};

/**
 * Reads a heading line: the columns in any order and any case.
 *
 * @param needed columns without which the file says nothing
 * @returns refuses, in this order: a column that stands twice, one that is needed and missing
 * @example headingOf(['NAME', 'Shelf'], columns, ['name']) // passes over 'Shelf'
 */
export function headingOf<Name extends string>(
  cells: readonly string[],
  columns: readonly NamedColumn<Name>[],
  needed: readonly Name[],
): Result<Heading<Name>, FileRefusal> {
  const places = new Map<Name, number>();
  const passedOver: string[] = [];
  for (const [place, cell] of cells.entries()) {
    const name = cell
      .trim()
      .toLowerCase()
      .replace(/[\s_]+/g, ' ');
    const known = columns.find((each) => each.column === name || each.also.includes(name));
    if (!known) {
      if (name !== '') passedOver.push(cell.trim());
      continue;
    }
    if (places.has(known.column)) return refuse({ code: 'column_twice', column: known.column });
    places.set(known.column, place);
  }
  const missing = needed.find((column) => !places.has(column));
  if (missing !== undefined) return refuse({ code: 'column_missing', column: missing });
  return ok({ places, passedOver, cells: cells.length });
}

/** The text of a line's cell, trimmed; empty where the file has no such column. */
export function cellOf<Name extends string>(
  heading: Heading<Name>,
  cells: readonly string[],
  column: Name,
): string {
  const place = heading.places.get(column);
  return place === undefined ? '' : (cells[place] ?? '').trim();
}

/** One line of a file: as a person counts, the heading is line 1. */
export type FileLine = { line: number; cells: readonly string[] };

/** What is wrong with one cell, as a full sentence. */
export type CellFault = { column: string; sentence: string };

/** The fault of a line that is longer than its heading; none for any other. */
export function tooLong<Name extends string>(
  heading: Heading<Name>,
  cells: readonly string[],
): CellFault[] {
  if (cells.slice(heading.cells).every((cell) => cell.trim() === '')) return [];
  const sentence =
    'This line has more cells than the heading. A comma inside a cell needs quotation marks ' +
    'around the cell.';
  return [{ column: 'line', sentence }];
}
