import { sameName } from '@/lib/catalogue/rules/piece';
import type { CellFault } from './columns';
import type { FiledLine, FiledSale } from './sales-file';
import type { SaleFault } from './sale-cells';
import type { SaleRead } from './sales-read';

/** A SKU as the sales of earlier books need to know it. */
export type KnownSku = {
  skuId: string;
  designId: string;
  title: string;
  what: string;
  making: 'open_stock' | 'one_off' | 'edition';
  costCents: bigint | null;
  /** On hand anywhere. */
  onHand: number;
  /** Whether its edition is stated, so that its pieces move by number. */
  isNumbered: boolean;
  /** Numbers that stand somewhere now. */
  numbersHere: readonly number[];
};

/** What is known before sales are brought in; names as {@link sameName} compares them. */
export type KnownForSales = {
  skus: ReadonlyMap<string, KnownSku>;
  peopleByKey: ReadonlySet<string>;
  peopleByName: ReadonlyMap<string, readonly string[]>;
  places: ReadonlyMap<string, string>;
  taxPlaces: ReadonlyMap<string, string>;
  staff: ReadonlyMap<string, string>;
  /** How many sales are known of an instant and a total, by {@link saleMark}. */
  sold: ReadonlyMap<string, number>;
  /** The counter and the gallery's own tax place. */
  usual: { placeId: string; taxPlaceId: string };
};

/** A line with its SKU. */
export type LineToBring = FiledLine & { sku: KnownSku | null };

/** A sale with the ids of everything that it names. */
export type SaleToBring = Omit<FiledSale, 'lines' | 'channel' | 'delivery'> & {
  channel: 'counter' | 'fair' | 'shipped';
  delivery: 'taken' | 'sent' | 'installed';
  placeId: string;
  taxPlaceId: string;
  collectorId: string | null;
  staffId: string | null;
  lines: readonly LineToBring[];
};

/** What one sale of the file would do; `lines` are its lines in the file. */
export type PlannedSale = { line: number; lines: number; name: string } & (
  | { verdict: 'new'; sale: SaleToBring }
  | { verdict: 'same' }
  | { verdict: 'refused'; faults: readonly SaleFault[] }
);

/** One word for a sale by when it was and what it came to. */
export function saleMark(sale: { soldAt: Date; totalCents: bigint }): string {
  return `${sale.soldAt.toISOString()} ${sale.totalCents}`;
}

/**
 * What a file of sales would do, sale by sale.
 *
 * A sale of the same instant and total that is known is the same; of two alike in the file the
 * second is the same only when two are known. Refused, in this order: cells that cannot be read,
 * a piece that is not in the catalogue, numbers of an edition that are missing or here, a one-off
 * that stands here, a channel or delivery that is none, a place or person nobody knows.
 */
export function planSales(read: readonly SaleRead[], known: KnownForSales): PlannedSale[] {
  const met = new Map<string, number>();
  return read.map(({ line, lines, sale, faults }): PlannedSale => {
    const name = sale ? nameOf(sale) : '';
    const row = { line, lines, name };
    if (!sale) return { ...row, verdict: 'refused', faults };
    const mark = saleMark(sale);
    const nth = (met.get(mark) ?? 0) + 1;
    met.set(mark, nth);
    if (nth <= (known.sold.get(mark) ?? 0)) return { ...row, verdict: 'same' };
    const found: CellFault[] = [];
    const whole = bringable(sale, known, found);
    if (found.length === 0) return { ...row, verdict: 'new', sale: whole };
    return { ...row, verdict: 'refused', faults: found.map((fault) => ({ ...fault, line })) };
  });
}

function nameOf(sale: FiledSale): string {
  const titles = sale.lines.map((line) => line.title || line.code);
  return titles.length > 2 ? `${titles.slice(0, 2).join(', ')} and more` : titles.join(', ');
}

function bringable(sale: FiledSale, known: KnownForSales, faults: CellFault[]): SaleToBring {
  const lines = sale.lines.map((line) => withSku(line, known, faults));
  const named = (column: string, name: string, of: ReadonlyMap<string, string>, usual: string) => {
    if (name === '') return usual;
    const id = of.get(sameName(name));
    if (id === undefined) faults.push({ column, sentence: `Nothing here is called “${name}”.` });
    return id ?? usual;
  };
  return {
    ...sale,
    lines,
    channel: oneOf('channel', sale.channel, ['counter', 'fair', 'shipped'], faults),
    delivery: oneOf('delivery', sale.delivery, ['taken', 'sent', 'installed'], faults),
    placeId: named('place', sale.place, known.places, known.usual.placeId),
    taxPlaceId: named('tax place', sale.taxPlace, known.taxPlaces, known.usual.taxPlaceId),
    collectorId: personOf(sale, known, faults),
    staffId: known.staff.get(sameName(sale.soldBy)) ?? null,
  };
}

function oneOf<Word extends string>(
  column: string,
  said: string,
  words: readonly [Word, ...Word[]],
  faults: CellFault[],
): Word {
  if (said === '') return words[0];
  const found = words.find((word) => word === said.toLowerCase());
  if (found) return found;
  faults.push({ column, sentence: `It is one of these: ${words.join(', ')}.` });
  return words[0];
}

function withSku(line: FiledLine, known: KnownForSales, faults: CellFault[]): LineToBring {
  if (line.kind !== 'piece') return { ...line, sku: null };
  const sku = known.skus.get(line.code);
  if (!sku) {
    const sentence = `No piece has the code ${line.code}. Bring the stock list in first.`;
    faults.push({ column: 'code', sentence });
    return { ...line, sku: null };
  }
  if (sku.making === 'one_off' && (sku.onHand > 0 || line.quantity > 1)) {
    const sentence = 'A one-off exists once; it cannot have been sold and stand here.';
    faults.push({ column: 'code', sentence });
  }
  if (sku.isNumbered && line.numbers.length !== line.quantity) {
    faults.push({ column: 'numbers', sentence: 'A piece of an edition needs its number.' });
  }
  if (line.numbers.some((number) => !sku.isNumbered || sku.numbersHere.includes(number))) {
    const sentence = 'No such number was sold: it is here, or the piece has no numbers.';
    faults.push({ column: 'numbers', sentence });
  }
  return { ...line, title: line.title || sku.title, what: line.what || sku.what, sku };
}

function personOf(sale: FiledSale, known: KnownForSales, faults: CellFault[]): string | null {
  const key = sale.personKey.toLowerCase();
  if (key !== '' && known.peopleByKey.has(key)) return key;
  if (sale.person === '' && key === '') return null;
  const found = known.peopleByName.get(sameName(sale.person)) ?? [];
  const [only] = found;
  if (only !== undefined && found.length === 1) return only;
  const sentence =
    found.length > 1
      ? `Several people are called “${sale.person}”. Write the key of the one who is meant.`
      : `Nobody called “${sale.person}” is known. Bring the people in first.`;
  faults.push({ column: 'person', sentence });
  return null;
}
