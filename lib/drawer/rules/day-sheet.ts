import type { LineKind, TenderKind } from '@/lib/ledger/rules';
import { splitCents, sumCents, type Cents } from '@/lib/money/rules';

/** The bookkeeper's names for money that comes in, in the order of the sheet. */
export const moneyInNames = {
  goods: 'Sales of goods',
  tax: 'Sales tax',
  deposits: 'Deposits received',
  balances: 'Balances received',
  layaway: 'Layaway payments',
  vouchers: 'Gift vouchers sold',
  freight: 'Delivery charged',
  other: 'Installation, design work and other',
} as const;

/** One of the bookkeeper's names. */
export type MoneyIn = keyof typeof moneyInNames;

/** Every one of the names, in the order of the sheet. */
export const moneyInKinds = Object.keys(moneyInNames) as readonly MoneyIn[];

const nameOfLine: Readonly<Record<LineKind, MoneyIn>> = {
  piece: 'goods',
  typed: 'goods',
  commission: 'goods',
  shipping: 'freight',
  installation: 'other',
  design_work: 'other',
  voucher: 'vouchers',
  instalment: 'deposits',
  order_deposit: 'deposits',
  layaway_payment: 'layaway',
};

/** A sale as the sheet needs to know it. */
export type SaleOfDay = {
  number: number;
  taxCents: Cents;
  lines: readonly { kind: LineKind; netCents: Cents }[];
  tenders: readonly { kind: TenderKind; amountCents: Cents }[];
};

/** What a sale was for, by the bookkeeper's names; what comes to nothing is left out. */
export function purposesOf(sale: Pick<SaleOfDay, 'lines' | 'taxCents'>): Map<MoneyIn, Cents> {
  const sums = new Map<MoneyIn, Cents>();
  for (const { kind, netCents } of sale.lines) {
    const name = nameOfLine[kind];
    sums.set(name, (sums.get(name) ?? 0n) + netCents);
  }
  sums.set('tax', sale.taxCents);
  return new Map([...sums].filter(([, cents]) => cents !== 0n));
}

/** A way of paying that is money now: it lies in the drawer, at the card company or at the bank. */
export type NewMoney = 'cash' | 'card' | 'cheque' | 'bank_transfer';

/** The ways of paying with money now, in the order of the sheet. */
export const newMoneyKinds = ['cash', 'card', 'cheque', 'bank_transfer'] as const;

/** What came in, all names together, in cents. */
export function moneyInSum(moneyIn: Readonly<Record<MoneyIn, Cents>>): Cents {
  return sumCents(moneyInKinds.map((kind) => moneyIn[kind]));
}

/** Whether a tender is money that came in now; a voucher or a deposit came in before. */
export function isNewMoney(kind: TenderKind): kind is NewMoney {
  return kind === 'cash' || kind === 'card' || kind === 'cheque' || kind === 'bank_transfer';
}

/**
 * What the new money of a sale was for: shared over its purposes when part of it was paid with
 * money from before.
 *
 * @param among the ways of paying that are asked after: cash alone for the drawer
 * @example a tile of 100.00 and 8.00 tax, half by voucher: 50.00 for goods and 4.00 of tax are new
 */
export function newMoneyOf(
  sale: SaleOfDay,
  among: (kind: TenderKind) => boolean = isNewMoney,
): Map<MoneyIn, Cents> {
  const purposes = purposesOf(sale);
  const paid = sale.tenders.filter((tender) => among(tender.kind));
  const newCents = sumCents(paid.map((tender) => tender.amountCents));
  if (newCents === 0n) return new Map();
  const parts = splitCents(newCents, [...purposes.values()]);
  return new Map([...purposes.keys()].map((name, at) => [name, parts[at] ?? 0n]));
}

/** Adds up what many sales brought in, by the bookkeeper's names. */
export function addPurposes(each: readonly ReadonlyMap<MoneyIn, Cents>[]): Record<MoneyIn, Cents> {
  const sum = (name: MoneyIn): Cents => sumCents(each.map((one) => one.get(name) ?? 0n));
  return {
    goods: sum('goods'),
    tax: sum('tax'),
    deposits: sum('deposits'),
    balances: sum('balances'),
    layaway: sum('layaway'),
    vouchers: sum('vouchers'),
    freight: sum('freight'),
    other: sum('other'),
  };
}

/** A line of the drawer's sheet: what it was, and how much; below zero it went out. */
export type SheetLine = { words: string; cents: Cents };

/** What moved the cash since the drawer was counted before. */
export type CashMoved = {
  floatCents: Cents;
  cashIn: Readonly<Record<MoneyIn, Cents>>;
  refundedCents: Cents;
  petty: readonly { number: number; what: string; amountCents: Cents }[];
  /** What the books say is there. */
  expectedCents: Cents;
};

/**
 * The drawer's sheet down to what should be there, as it is added up with a pencil.
 *
 * What none of its lines explains is said too, so that the lines always come to the sum.
 *
 * @source common practice: the worked sheet of a day's end
 * @example 200.00 + 342.40 + 100.00 − 54.00 − 18.50 = 569.90
 */
export function sheetLines(moved: CashMoved): SheetLine[] {
  const { cashIn } = moved;
  const sales = sumCents([cashIn.goods, cashIn.tax, cashIn.freight, cashIn.other]);
  const lines: SheetLine[] = [
    { words: 'Cash sales, with their tax', cents: sales },
    { words: 'Cash deposits', cents: cashIn.deposits },
    { words: 'Cash balances', cents: cashIn.balances },
    { words: 'Cash layaway payments', cents: cashIn.layaway },
    { words: 'Cash for gift vouchers', cents: cashIn.vouchers },
    { words: 'Cash given back', cents: -moved.refundedCents },
    ...moved.petty.map(({ number, what, amountCents }) => ({
      words: `Small cash, slip ${number}: ${what}`,
      cents: -amountCents,
    })),
  ];
  const told = moved.floatCents + sumCents(lines.map((line) => line.cents));
  const rest = { words: 'Other entries of the books', cents: moved.expectedCents - told };
  return [
    { words: 'Float at open', cents: moved.floatCents },
    ...[...lines, rest].filter((line) => line.cents !== 0n),
  ];
}
