import type { LineKind } from '@/lib/ledger/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { divideRounded, formatDecimal } from '@/lib/money/rules/decimal';
import type { TaxKind } from '@/lib/tax/rules';
import { cellOf, type FileLine, type Heading } from './columns';
import { LineCells, readWhen, type ReadingSales, type SaleFault } from './sale-cells';
import { readDiscountText, readTaxText, readTenderKind, readTenderText } from './sales-file';
import type { FiledLine, FiledSale, FiledTax, FiledTender, SalesColumn } from './sales-file';

/** A sale as it was read: its lines of the file, and what is wrong with them. */
export type SaleRead = {
  /** The first line of it in the file, and how many there are. */
  line: number;
  lines: number;
  /** Null when something is wrong. */
  sale: FiledSale | null;
  faults: readonly SaleFault[];
};

/**
 * Reads the lines of a file of sales: lines of the same receipt are one sale, a line without a
 * receipt is a sale of its own.
 *
 * A day without a time is taken as noon. Without the taxes by authority the tax of the lines goes
 * to one that is named after the earlier books; without amounts one way of paying pays the whole.
 */
export function readSales(
  heading: Heading<SalesColumn>,
  lines: readonly FileLine[],
  how: ReadingSales,
): SaleRead[] {
  const sales = new Map<string, FileLine[]>();
  for (const line of lines) {
    const receipt = cellOf(heading, line.cells, 'sale');
    const key = receipt === '' ? `line ${line.line}` : `sale ${receipt}`;
    const known = sales.get(key);
    if (known) known.push(line);
    else sales.set(key, [line]);
  }
  return Array.from(sales.values(), (group) => readSale(heading, group, how));
}

function readSale(
  heading: Heading<SalesColumn>,
  group: readonly FileLine[],
  how: ReadingSales,
): SaleRead {
  const cells = group.map((of) => new LineCells(heading, of));
  const [first] = cells;
  const line = group[0]?.line ?? 0;
  if (!first) return { line, lines: 0, sale: null, faults: [] };
  const when = readWhen(first, how);
  const lines = cells.map(readLine);
  const netCents = sumCents(lines.map((each) => each.netCents));
  const taxCents = sumCents(lines.map((each) => each.taxCents));
  const totalCents = netCents + taxCents;
  const taxes = readTaxes(cells, lines, taxCents);
  const tenders = readTenders(cells, totalCents);
  const said = first.cents('total');
  if (said !== null && said !== totalCents) {
    first.fault('total', 'The lines and their tax do not add up to this total.');
  }
  const text = (column: SalesColumn) => first.text(column);
  const sale: FiledSale = {
    ...{ receipt: text('sale'), ...when, channel: text('channel'), place: text('place') },
    ...{ taxPlace: text('tax place'), person: text('person'), personKey: text('person key') },
    ...{ soldBy: text('sold by'), delivery: text('delivery'), deliverTo: text('deliver to') },
    ...{ exemptWhy: text('no tax because'), lines, taxes, tenders, totalCents },
  };
  const faults = cells.flatMap((each) => each.faults);
  return { line, lines: group.length, sale: faults.length === 0 ? sale : null, faults };
}

const lineKinds = ['piece', 'typed', 'shipping', 'installation', 'design_work'] as const;
const taxKinds = ['goods', 'shipping', 'installation', 'design_work', 'none'] as const;
const quantityMost = 100_000;

function readLine(cells: LineCells): FiledLine {
  const code = cells.text('code').toUpperCase();
  const kind = readKind(cells, code);
  const title = cells.text('title');
  if (kind === 'piece' && code === '') cells.fault('code', 'A piece needs its code.');
  if (kind !== 'piece' && title === '') cells.fault('title', 'Write what it was.');
  if (title.length > 200) cells.fault('title', 'Say it in at most 200 letters.');
  const quantity = readQuantity(cells);
  const price = readPrice(cells, quantity);
  const taxCents = cells.cents('tax') ?? 0n;
  const taxableCents = cells.cents('taxed') ?? (taxCents > 0n ? price.netCents : 0n);
  if (taxableCents > price.netCents) cells.fault('taxed', 'No more is taxed than the net.');
  const numbers = cells
    .text('numbers')
    .split(/[\s,]+/)
    .filter((each) => each !== '')
    .map(Number);
  if (numbers.length > 0 && numbers.length !== quantity) {
    cells.fault('numbers', 'There are as many numbers as pieces.');
  }
  return {
    ...{ kind, code, title, what: cells.text('what').slice(0, 300), quantity, ...price },
    ...{ taxKind: readTaxKind(cells, kind), taxableCents, taxCents },
    ...{ unitCostCents: cells.cents('cost each'), numbers },
  };
}

function readKind(cells: LineCells, code: string): LineKind {
  const said = cells.text('kind').toLowerCase().replaceAll(' ', '_');
  if (said === '') return code === '' ? 'typed' : 'piece';
  const known = lineKinds.find((kind) => kind === said);
  if (known) return known;
  cells.fault(
    'kind',
    'Pieces, things typed in, delivery and work are brought in; what belongs to a commission, a voucher or a deposit is not.',
  );
  return 'typed';
}

function readTaxKind(cells: LineCells, kind: LineKind): TaxKind {
  const said = cells.text('tax kind').toLowerCase().replaceAll(' ', '_');
  const usual = taxKinds.find((each) => each === kind) ?? 'goods';
  if (said === '') return usual;
  const known = taxKinds.find((each) => each === said);
  if (!known)
    cells.fault('tax kind', 'The tax kind is goods, shipping, installation or design work.');
  return known ?? usual;
}

function readQuantity(cells: LineCells): number {
  const text = cells.text('quantity');
  const quantity = text === '' ? 1 : /^\d{1,6}$/.test(text) ? Number(text) : 0;
  if (quantity >= 1 && quantity <= quantityMost) return quantity;
  cells.fault('quantity', 'Write a whole number of pieces, at least 1.');
  return 1;
}

const earlier = 'as in the earlier books';

function readPrice(cells: LineCells, quantity: number) {
  const pieces = BigInt(quantity);
  const each = cells.cents('price each');
  const net = cells.cents('net');
  if (each === null && net === null) cells.fault('net', 'Write what it came to before tax.');
  const unitPriceCents = each ?? divideRounded(net ?? 0n, pieces, 'up');
  const grossCents = unitPriceCents * pieces;
  const read = cells.list('discounts').map(readDiscountText);
  const named = read.filter((discount) => discount !== null);
  if (named.length < read.length) cells.fault('discounts', 'Write it as: line 5.00 a chip.');
  const namedCents = sumCents(named.map((discount) => discount.amountCents));
  const netCents = net ?? grossCents - namedCents;
  const offCents = grossCents - netCents;
  if (offCents < 0n) cells.fault('net', 'This is more than the pieces at their price.');
  if (named.length > 0 && namedCents !== offCents) {
    cells.fault('discounts', 'The discounts are not what lies between the price and the net.');
  }
  const whole = { kind: 'line' as const, amountCents: offCents, reason: earlier };
  const discounts = named.length > 0 ? named : offCents > 0n ? [whole] : [];
  return { unitPriceCents, netCents, discounts };
}

function readTaxes(
  cells: readonly LineCells[],
  lines: readonly FiledLine[],
  taxCents: Cents,
): FiledTax[] {
  const said = cells.flatMap((each) => each.list('taxes').map((text) => ({ each, text })));
  const taxes = said.flatMap(({ each, text }) => {
    const tax = readTaxText(text);
    if (!tax) each.fault('taxes', 'Write it as: State 6.5% of 100.00 is 6.50.');
    return tax ?? [];
  });
  if (said.length > 0) {
    const isWhole = sumCents(taxes.map((tax) => tax.taxCents)) === taxCents;
    if (!isWhole) cells[0]?.fault('taxes', 'The taxes do not add up to the tax of the lines.');
    return taxes;
  }
  const taxableCents = sumCents(lines.map((line) => line.taxableCents));
  if (taxCents === 0n || taxableCents <= 0n) return [];
  const units = divideRounded(taxCents * 10_000_000n, taxableCents, 'half-up');
  const ratePercent = formatDecimal({ units, scale: 5 });
  return [{ authority: 'Earlier books', ratePercent, taxableCents, taxCents }];
}

function readTenders(cells: readonly LineCells[], totalCents: Cents): FiledTender[] {
  const said = cells.flatMap((each) => each.list('tenders').map((text) => ({ each, text })));
  const [only] = said;
  const whole = only && readTenderKind(only.text);
  if (whole && said.every(({ text }) => text === only.text)) {
    if (totalCents === 0n) return [];
    return [{ kind: whole, amountCents: totalCents, givenCents: null, reference: '' }];
  }
  const tenders = said.flatMap(({ each, text }) => {
    const tender = readTenderText(text);
    if (!tender) {
      each.fault(
        'tenders',
        'Write cash, card, cheque, bank transfer or on account, alone or with an amount such as card 45.30.',
      );
    }
    return tender ?? [];
  });
  if (sumCents(tenders.map((tender) => tender.amountCents)) !== totalCents) {
    cells[0]?.fault('tenders', 'What was paid is not the total of the sale.');
  }
  return tenders;
}
