import { ok, refuse, type Result } from '@/lib/platform/result';

/** What a column of a stock list can say. */
export type ListColumn =
  | 'code'
  | 'title'
  | 'kind'
  | 'width'
  | 'height'
  | 'depth'
  | 'unit'
  | 'colourway'
  | 'price'
  | 'cost'
  | 'weight'
  | 'here'
  | 'barcode'
  | 'making';

/** The columns in the order of the blank list, with the other names that people give them. */
export const listColumns: readonly { column: ListColumn; also: readonly string[] }[] = [
  { column: 'code', also: ['sku', 'sku code', 'piece code'] },
  { column: 'title', also: ['design', 'name', 'design title'] },
  { column: 'kind', also: ['type', 'kind of piece'] },
  { column: 'width', also: ['wide', 'w'] },
  { column: 'height', also: ['high', 'h'] },
  { column: 'depth', also: ['deep', 'd'] },
  { column: 'unit', also: ['units', 'length unit'] },
  { column: 'colourway', also: ['colorway', 'colour', 'color', 'glaze'] },
  { column: 'price', also: ['retail price', 'retail'] },
  { column: 'cost', also: ['cost of making'] },
  { column: 'weight', also: [] },
  { column: 'here', also: ['count', 'how many', 'on hand', 'quantity', 'how many are here'] },
  { column: 'barcode', also: ['gtin', 'ean', 'upc'] },
  { column: 'making', also: [] },
];

/** A column of this file: at which place it stands, and the unit its heading names. */
export type PlacedColumn = { place: number; unit: string };

/** What the heading line of a file says. */
export type ListHeading = {
  columns: ReadonlyMap<ListColumn, PlacedColumn>;
  /** Headings that mean nothing here, as they are written. */
  passedOver: readonly string[];
  /** How many cells the heading line has. */
  cells: number;
};

/** Why a heading line was not taken. */
export type HeadingRefusal =
  | { code: 'no_code_column'; found: readonly string[] }
  | { code: 'column_twice'; column: ListColumn };

/**
 * Reads the heading line of a stock list: the columns in any order and any case, a unit in
 * brackets where there is one, `Width (mm)`.
 *
 * @returns refuses, in this order: a column that stands twice, no column for the code
 * @example readHeading(['Code', 'Price', 'Shelf']) // passes over 'Shelf'
 */
export function readHeading(cells: readonly string[]): Result<ListHeading, HeadingRefusal> {
  const columns = new Map<ListColumn, PlacedColumn>();
  const passedOver: string[] = [];
  for (const [place, cell] of cells.entries()) {
    const { name, unit } = partsOf(cell);
    const known = listColumns.find((each) => each.column === name || each.also.includes(name));
    if (!known) {
      if (cell.trim() !== '') passedOver.push(cell.trim());
      continue;
    }
    if (columns.has(known.column)) return refuse({ code: 'column_twice', column: known.column });
    columns.set(known.column, { place, unit });
  }
  if (!columns.has('code')) {
    return refuse({ code: 'no_code_column', found: cells.map((cell) => cell.trim()) });
  }
  return ok({ columns, passedOver, cells: cells.length });
}

function partsOf(heading: string): { name: string; unit: string } {
  const match = /^([^()[\]]*?)\s*(?:[([]\s*([^()[\]]*?)\s*[)\]])?$/.exec(heading.trim());
  const name = (match?.[1] ?? heading)
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
  return { name, unit: match?.[2]?.toLowerCase() ?? '' };
}
