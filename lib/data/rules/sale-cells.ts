import { dayInput } from '@/lib/dates/input';
import { dayOf, instantOf, type Day } from '@/lib/dates/rules';
import { centsInput } from '@/lib/money/input';
import type { Cents } from '@/lib/money/rules';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { cellOf, tooLong, type CellFault, type FileLine, type Heading } from './columns';
import type { SalesColumn } from './sales-file';

/** A fault of a sale, and the line of the file where it stands. */
export type SaleFault = CellFault & { line: number };

/** What reading needs to know: the gallery's zone, and now, after which nothing was sold. */
export type ReadingSales = { zone: string; now: Date };

/** The cells of one line, and what is wrong with them. */
export class LineCells {
  readonly faults: SaleFault[];

  constructor(
    private readonly heading: Heading<SalesColumn>,
    private readonly of: FileLine,
  ) {
    this.faults = tooLong(heading, of.cells).map((fault) => ({ ...fault, line: of.line }));
    const card = of.cells.some((cell) => looksLikeCardNumber(cell));
    if (card) this.fault('tenders', 'This line holds what looks like the number of a card.');
  }

  text(column: SalesColumn): string {
    return cellOf(this.heading, this.of.cells, column);
  }

  fault(column: SalesColumn, sentence: string): void {
    this.faults.push({ line: this.of.line, column, sentence });
  }

  /** Null when nothing is said, or it cannot be read; then there is a fault. */
  cents(column: SalesColumn): Cents | null {
    const text = this.text(column);
    if (text === '') return null;
    const read = centsInput.safeParse(text);
    if (read.success) return read.data;
    this.fault(column, read.error.issues[0]?.message ?? 'This is no amount.');
    return null;
  }

  /** Each line of a cell. */
  list(column: SalesColumn): string[] {
    const text = this.text(column);
    return text === '' ? [] : text.split(/\s*[\r\n]+\s*/);
  }
}

/**
 * When a sale was: the instant where one is written, else noon of its day.
 *
 * @example neither is written // a fault at the day
 */
export function readWhen(cells: LineCells, how: ReadingSales): { soldAt: Date; soldOn: Day } {
  const { zone, now } = how;
  const soldOn = readDay(cells);
  const instant = readInstant(cells);
  if (cells.text('sold at') === '' && cells.text('sold on') === '') {
    cells.fault('sold on', 'Write the day on which it was sold.');
  }
  const soldAt = instant ?? instantOf(soldOn ?? dayOf(now, zone), '12:00', zone);
  if (soldAt > now) cells.fault('sold on', 'That day is still to come.');
  return { soldAt, soldOn: soldOn ?? dayOf(soldAt, zone) };
}

function readDay(cells: LineCells): Day | null {
  const text = cells.text('sold on');
  if (text === '') return null;
  const read = dayInput.safeParse(text);
  if (read.success) return read.data;
  cells.fault('sold on', read.error.issues[0]?.message ?? 'This is no day.');
  return null;
}

function readInstant(cells: LineCells): Date | null {
  const text = cells.text('sold at');
  if (text === '') return null;
  const isWritten = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,3})?Z$/.test(text);
  const instant = isWritten ? new Date(text) : null;
  if (instant && !Number.isNaN(instant.getTime())) return instant;
  cells.fault('sold at', 'Write the time as 2024-05-31T18:30:00Z, or leave it empty.');
  return null;
}
