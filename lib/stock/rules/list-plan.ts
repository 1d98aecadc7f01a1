import { sameName, type CatalogueEntry, type CatalogueSku } from '@/lib/catalogue/rules/piece';
import type { ListColumn } from './list-columns';
import type { ListedPiece, ReadRow, RowFault } from './list-row';
import { marksFault, type KnownMarks } from './marks/list-marks';

/** A SKU as it is known before the list is brought in. `here` is on hand at the list's place. */
export type KnownPiece = CatalogueSku & KnownMarks & { id: string; here: number };

/** Whether a fact is one of the catalogue or the count. */
export type FactName = keyof CatalogueEntry | 'here';

/** One fact that the list would change. */
export type FactChange = { fact: FactName; from: FactValue; to: FactValue };
/** A fact: text, a measure, cents, or nothing. */
export type FactValue = string | number | bigint | null;

/** What a line of the list would do. */
export type PlannedRow =
  | { verdict: 'new'; line: number; code: string; piece: CatalogueSku; here: number }
  | {
      verdict: 'changed';
      line: number;
      code: string;
      known: KnownPiece;
      piece: CatalogueSku;
      changes: readonly FactChange[];
    }
  | { verdict: 'same'; line: number; code: string }
  | { verdict: 'refused'; line: number; code: string; faults: readonly RowFault[] };

/** What is known before: SKUs by their code, and whose barcode is whose. */
export type KnownStock = {
  pieces: ReadonlyMap<string, KnownPiece>;
  /** The code of the SKU that has a barcode. */
  codeOfGtin: ReadonlyMap<string, string>;
};

/**
 * What a stock list would do, line by line, in the order of the file.
 *
 * A line is refused for, in this order: cells that could not be read, a code or barcode that
 * stands twice in the file, a barcode that is another piece's, a new piece without what every
 * piece needs, a one-off of which there would be more than one, what would break the word of an
 * edition or the mark of a second. A cell left empty leaves a known
 * piece as it is.
 */
export function planStockList(rows: readonly ReadRow[], known: KnownStock): PlannedRow[] {
  const lines = { code: linesTwice(rows, (row) => row.code), gtin: linesTwice(rows, gtinOf) };
  return rows.map((row) => {
    const faults = [
      ...row.faults,
      ...twiceFaults(row, lines),
      ...barcodeFaults(row, known.codeOfGtin),
    ];
    return faults.length > 0 ? refusedRow(row, faults) : planRow(row, known.pieces.get(row.code));
  });
}

function gtinOf(row: ReadRow): string {
  return row.listed.gtin ?? '';
}

/** The lines of each text that stands in more than one of them. */
type LinesTwice = ReadonlyMap<string, readonly number[]>;

function linesTwice(rows: readonly ReadRow[], keyOf: (row: ReadRow) => string): LinesTwice {
  const firsts = new Map<string, number>();
  const twice = new Map<string, number[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const first = firsts.get(key);
    if (first === undefined) {
      if (key !== '') firsts.set(key, row.line);
      continue;
    }
    const found = twice.get(key) ?? [first];
    twice.set(key, found);
    found.push(row.line);
  }
  return twice;
}

type LinesOf = { code: LinesTwice; gtin: LinesTwice };

function twiceFaults(row: ReadRow, lines: LinesOf): RowFault[] {
  const faults: RowFault[] = [];
  for (const [column, found] of [
    ['code', lines.code.get(row.code)],
    ['barcode', lines.gtin.get(gtinOf(row))],
  ] as const) {
    if (!found) continue;
    const others = found.slice(0, 4).filter((line) => line !== row.line);
    const where = others.length === 1 ? `line ${others.join()}` : `lines ${others.join(', ')}`;
    faults.push({ column, sentence: `The same ${column} stands in ${where} too.` });
  }
  return faults;
}

function barcodeFaults(row: ReadRow, codeOfGtin: ReadonlyMap<string, string>): RowFault[] {
  const owner = codeOfGtin.get(gtinOf(row));
  if (owner === undefined || owner === row.code) return [];
  return [{ column: 'barcode', sentence: `This barcode is on ${owner} already.` }];
}

function planRow(row: ReadRow, known: KnownPiece | undefined): PlannedRow {
  return known ? planKnown(row, known) : planNew(row);
}

const needed: readonly { fact: keyof CatalogueEntry; column: ListColumn; words: string }[] = [
  { fact: 'title', column: 'title', words: 'a title' },
  { fact: 'kind', column: 'kind', words: 'a kind' },
  { fact: 'widthUm', column: 'width', words: 'a width' },
  { fact: 'heightUm', column: 'height', words: 'a height' },
  { fact: 'colourway', column: 'colourway', words: 'a colourway' },
  { fact: 'priceCents', column: 'price', words: 'a price' },
];

function planNew({ line, code, listed, here = 0 }: ReadRow): PlannedRow {
  const { title, kind, widthUm, heightUm, colourway, priceCents } = listed;
  if (
    title === undefined ||
    kind === undefined ||
    widthUm === undefined ||
    heightUm === undefined ||
    colourway === undefined ||
    priceCents === undefined
  ) {
    const missing = needed.filter(({ fact }) => listed[fact] === undefined);
    const faults = missing.map(({ column, words }) => ({
      column,
      sentence: `A new piece needs ${words}.`,
    }));
    return { verdict: 'refused', line, code, faults };
  }
  const piece: CatalogueSku = {
    ...{ code, title, kind, widthUm, heightUm, colourway, priceCents },
    ...restOf(listed),
  };
  return onceFault(piece, here, line) ?? { verdict: 'new', line, code, piece, here };
}

function restOf(listed: ListedPiece) {
  return {
    depthUm: listed.depthUm ?? null,
    weightG: listed.weightG ?? null,
    costCents: listed.costCents ?? null,
    gtin: listed.gtin ?? null,
    making: listed.making ?? ('open_stock' as const),
  };
}

function planKnown(row: ReadRow, known: KnownPiece): PlannedRow {
  const { line, code } = row;
  const changes = changesOf(row, known);
  if (changes.length === 0) return { verdict: 'same', line, code };
  const piece = merged(row.listed, known);
  const here = row.here ?? known.here;
  const fault = marksFault({ making: piece.making, here }, known);
  if (fault) return refusedRow(row, [fault]);
  return onceFault(piece, here, line) ?? { verdict: 'changed', line, code, known, piece, changes };
}

/** What the line says, and for the rest what is known. */
function merged(listed: ListedPiece, known: KnownPiece): CatalogueSku {
  return {
    code: known.code,
    title: listed.title ?? known.title,
    kind: listed.kind ?? known.kind,
    colourway: listed.colourway ?? known.colourway,
    widthUm: listed.widthUm ?? known.widthUm,
    heightUm: listed.heightUm ?? known.heightUm,
    depthUm: listed.depthUm ?? known.depthUm,
    weightG: listed.weightG ?? known.weightG,
    priceCents: listed.priceCents ?? known.priceCents,
    costCents: listed.costCents ?? known.costCents,
    gtin: listed.gtin ?? known.gtin,
    making: listed.making ?? known.making,
  };
}

const namedFacts: readonly FactName[] = ['title', 'colourway'];

function changesOf({ listed, here }: ReadRow, known: KnownPiece): FactChange[] {
  const changes: FactChange[] = [];
  for (const fact of factOrder) {
    const to = fact === 'here' ? here : listed[fact];
    const from = known[fact];
    if (to === undefined || isSame(fact, from, to)) continue;
    changes.push({ fact, from, to });
  }
  return changes;
}

/** The facts in the order in which a change is told. */
export const factOrder: readonly FactName[] = [
  'title',
  'kind',
  'widthUm',
  'heightUm',
  'depthUm',
  'colourway',
  'priceCents',
  'costCents',
  'weightG',
  'gtin',
  'making',
  'here',
];

function isSame(fact: FactName, from: FactValue, to: FactValue): boolean {
  if (!namedFacts.includes(fact)) return from === to;
  return typeof from === 'string' && typeof to === 'string' && sameName(from) === sameName(to);
}

function onceFault(piece: CatalogueSku, here: number, line: number): PlannedRow | null {
  if (piece.making !== 'one_off' || here <= 1) return null;
  const sentence = 'A one-off exists once, so at most one is here.';
  return refusedRow({ line, code: piece.code }, [{ column: 'here', sentence }]);
}

function refusedRow(row: { line: number; code: string }, faults: readonly RowFault[]): PlannedRow {
  return { verdict: 'refused', line: row.line, code: row.code, faults };
}
