import type { Day } from '@/lib/dates/rules';
import type { DiscountKind, LineKind, TenderKind } from '@/lib/ledger/rules';
import { plainCents, type Cents } from '@/lib/money/rules';
import type { TaxKind } from '@/lib/tax/rules';
import type { NamedColumn } from './columns';

/** What a column of a file of sales can say. */
export type SalesColumn = (typeof salesColumnNames)[number];

const salesColumnNames = [
  ...['sale', 'sold at', 'sold on', 'channel', 'place', 'tax place', 'person', 'person key'],
  ...['sold by', 'delivery', 'deliver to', 'no tax because'],
  ...['kind', 'code', 'title', 'what', 'quantity', 'price each', 'discounts', 'net', 'tax kind'],
  ...['taxed', 'tax', 'cost each', 'numbers', 'taxes', 'tenders', 'total'],
] as const;

const otherNames: Partial<Record<SalesColumn, readonly string[]>> = {
  sale: ['receipt', 'receipt number', 'number'],
  'sold on': ['date', 'day'],
  person: ['collector', 'customer', 'name'],
  code: ['sku'],
  quantity: ['pieces', 'qty'],
  'price each': ['price', 'unit price'],
  tenders: ['tender', 'paid by', 'payment'],
};

/** The columns in the order in which they are written. */
export const salesColumns: readonly NamedColumn<SalesColumn>[] = salesColumnNames.map((column) => ({
  column,
  also: otherNames[column] ?? [],
}));

/** What was taken off a line. */
export type FiledDiscount = { kind: DiscountKind; amountCents: Cents; reason: string };
/** What one authority was owed. */
export type FiledTax = {
  authority: string;
  ratePercent: string;
  taxableCents: Cents;
  taxCents: Cents;
};
/** How it was paid. */
export type FiledTender = {
  kind: TenderKind;
  amountCents: Cents;
  givenCents: Cents | null;
  reference: string;
};

/** One line of a sale as a file says it; money in cents before tax. */
export type FiledLine = {
  kind: LineKind;
  code: string;
  title: string;
  what: string;
  quantity: number;
  unitPriceCents: Cents;
  discounts: readonly FiledDiscount[];
  netCents: Cents;
  taxKind: TaxKind;
  taxableCents: Cents;
  taxCents: Cents;
  unitCostCents: Cents | null;
  numbers: readonly number[];
};

/** A sale as a file says it. */
export type FiledSale = {
  receipt: string;
  soldAt: Date;
  soldOn: Day;
  channel: string;
  place: string;
  taxPlace: string;
  person: string;
  personKey: string;
  soldBy: string;
  delivery: string;
  deliverTo: string;
  exemptWhy: string;
  lines: readonly FiledLine[];
  taxes: readonly FiledTax[];
  tenders: readonly FiledTender[];
  totalCents: Cents;
};

/**
 * Sales as rows of a file, the heading first: one row for each line; taxes, tenders and total stand
 * on the first line of a sale, one to a line of their cell.
 */
export function salesRows(sales: readonly FiledSale[]): string[][] {
  return [[...salesColumnNames], ...sales.flatMap(rowsOf)];
}

function rowsOf(sale: FiledSale): string[][] {
  const head = [
    ...[sale.receipt, sale.soldAt.toISOString(), sale.soldOn, sale.channel, sale.place],
    ...[sale.taxPlace, sale.person, sale.personKey, sale.soldBy, sale.delivery, sale.deliverTo],
    sale.exemptWhy,
  ];
  const foot = [
    sale.taxes.map(taxText).join('\n'),
    sale.tenders.map(tenderText).join('\n'),
    plainCents(sale.totalCents),
  ];
  return sale.lines.map((line, at) => [...head, ...lineCells(line), ...(at === 0 ? foot : blank)]);
}

const blank = ['', '', ''];

function lineCells(line: FiledLine): string[] {
  return [
    ...[spaced(line.kind), line.code, line.title, line.what, String(line.quantity)],
    plainCents(line.unitPriceCents),
    line.discounts.map(discountText).join('\n'),
    plainCents(line.netCents),
    spaced(line.taxKind),
    plainCents(line.taxableCents),
    plainCents(line.taxCents),
    line.unitCostCents === null ? '' : plainCents(line.unitCostCents),
    line.numbers.join(' '),
  ];
}

/** A word of several parts as it is written in a file. */
export function spaced(word: string): string {
  return word.replaceAll('_', ' ');
}

/** A discount as one line of a cell. */
export function discountText({ kind, amountCents, reason }: FiledDiscount): string {
  return `${spaced(kind)} ${plainCents(amountCents)} ${oneLine(reason)}`;
}

/** What one authority was owed, as one line of a cell. */
export function taxText({ authority, ratePercent, taxableCents, taxCents }: FiledTax): string {
  const sums = `${ratePercent}% of ${plainCents(taxableCents)} is ${plainCents(taxCents)}`;
  return `${oneLine(authority)} ${sums}`;
}

/** How it was paid, as one line of a cell. */
export function tenderText({ kind, amountCents, givenCents, reference }: FiledTender): string {
  const given = givenCents === null ? '' : ` of ${plainCents(givenCents)}`;
  const said = reference === '' ? '' : ` ref ${oneLine(reference)}`;
  return `${spaced(kind)} ${plainCents(amountCents)}${given}${said}`;
}

function oneLine(text: string): string {
  return text.replace(/\s*[\r\n]+\s*/g, ' ');
}

/**
 * Reads what {@link taxText} wrote.
 *
 * @returns null when the text is anything else
 */
export function readTaxText(text: string): FiledTax | null {
  const match = /^(.*) (\d+(?:\.\d+)?)% of (\d+\.\d\d) is (\d+\.\d\d)$/.exec(text);
  if (!match) return null;
  const [, authority = '', ratePercent = '', taxable = '', tax = ''] = match;
  return { authority, ratePercent, taxableCents: exact(taxable), taxCents: exact(tax) };
}

const tenderWords = /^(cash|card|cheque|bank transfer|on account)$/;

/** Whether a tender's kind can come from earlier books: money, or what is still owed. */
export function readTenderKind(text: string): FiledTender['kind'] | null {
  const match = tenderWords.exec(text.toLowerCase());
  return match ? (match[1]?.replace(' ', '_') as FiledTender['kind']) : null;
}

/**
 * Reads what {@link tenderText} wrote.
 *
 * @returns null when the text is anything else, also for vouchers, deposits and layaways, whose
 *   papers a file does not hold
 */
export function readTenderText(text: string): FiledTender | null {
  const match = /^([a-z ]+) (\d+\.\d\d)(?: of (\d+\.\d\d))?(?: ref (.*))?$/i.exec(text);
  const kind = readTenderKind(match?.[1] ?? '');
  if (!match || !kind) return null;
  const [, , amount = '', given, reference = ''] = match;
  const givenCents = given === undefined ? null : exact(given);
  return { kind, amountCents: exact(amount), givenCents, reference };
}

/**
 * Reads what {@link discountText} wrote.
 *
 * @returns null when the text is anything else
 */
export function readDiscountText(text: string): FiledDiscount | null {
  const kinds = 'line|slip|trade|set|gallery share|wholesale';
  const match = new RegExp(`^(${kinds}) (\\d+\\.\\d\\d) (.+)$`).exec(text);
  if (!match) return null;
  const [, kind = '', amount = '', reason = ''] = match;
  const named = kind.replace(' ', '_') as DiscountKind;
  return { kind: named, amountCents: exact(amount), reason };
}

function exact(amount: string): Cents {
  return BigInt(amount.replace('.', ''));
}
