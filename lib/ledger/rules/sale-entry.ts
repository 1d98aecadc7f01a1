import { sumCents, type Cents } from '@/lib/money/rules';
import {
  accountOfMoney,
  accounts,
  type AccountCode,
  type DiscountKind,
  type LineKind,
  type MoneyKind,
  type PostingLine,
  type PostingPapers,
  type TenderKind,
} from '../rules';

/** What the ledger has to know of a line: what it came to, and what was taken off before. */
export type LineForLedger = {
  kind: LineKind;
  netCents: Cents;
  discounts?: readonly { kind: DiscountKind; amountCents: Cents }[];
  /** An instalment that comes after the hand-over settles what is owed. */
  isAfterHandOver?: boolean;
} & PostingPapers;

/** What the ledger has to know of a sale. */
export type SaleForLedger = {
  lines: readonly LineForLedger[];
  taxes: readonly { authority: string; taxCents: Cents }[];
  tenders: readonly ({ kind: TenderKind; amountCents: Cents } & PostingPapers)[];
  /** The commission that is handed over by it, if it is one. */
  commissionId?: string;
  /** Whose account it goes on, for what is not paid at once. */
  collectorId?: string | null;
};

/**
 * The postings of a completed sale: what was paid against what was earned and the tax held.
 *
 * A deposit that was taken before stops being a debt here, what is still owed begins to be owed,
 * and money for later (a voucher, a deposit) becomes a debt. Sales stand before discounts, which
 * have an account of their own. Amounts of nothing are left out.
 *
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2
 * @example a sale of 18,000.00 at 6 %: cash +19,080.00, sales −18,000.00, tax held −1,080.00
 */
export function saleEntry(sale: SaleForLedger): PostingLine[] {
  const paid = sale.tenders.map((tender) => paidLine(tender, sale));
  const held = sale.taxes.map((tax) => ({
    account: accounts.taxHeld,
    amountCents: -tax.taxCents,
    authority: tax.authority,
  }));
  return addUp([...paid, ...sale.lines.flatMap(earnedLines), ...held]);
}

function paidLine(
  tender: SaleForLedger['tenders'][number],
  sale: Pick<SaleForLedger, 'commissionId' | 'collectorId'>,
): PostingLine {
  const { kind, amountCents } = tender;
  if (isMoney(kind)) return { account: accountOfMoney[kind], amountCents };
  const papers = papersOf({
    ...(sale.commissionId ? { commissionId: sale.commissionId } : {}),
    ...tender,
  });
  if (kind === 'on_account') {
    const collectorId = sale.collectorId ?? undefined;
    return {
      account: accounts.owedByCollectors,
      amountCents,
      ...papers,
      ...(collectorId === undefined ? {} : { collectorId }),
    };
  }
  if (kind === 'deposit') {
    const account = tender.orderId === undefined ? accounts.deposits : accounts.orderDeposits;
    return { account, amountCents, ...papers };
  }
  return { account: accountOfPromise[kind], amountCents, ...papers };
}

/** Whether a tender is money that came in now. */
export function isMoney(kind: TenderKind): kind is MoneyKind {
  return kind in accountOfMoney;
}

const accountOfPromise = {
  voucher: accounts.vouchers,
  store_credit: accounts.storeCredit,
  layaway: accounts.layawayHeld,
} as const;

/** Where a line's price is earned, or becomes a debt to the visitor. */
const accountOfLine: Record<LineKind, AccountCode> = {
  piece: accounts.salesOfPieces,
  commission: accounts.commissionsHandedOver,
  typed: accounts.otherSales,
  shipping: accounts.deliveryCharged,
  installation: accounts.workCharged,
  design_work: accounts.workCharged,
  voucher: accounts.vouchers,
  instalment: accounts.deposits,
  order_deposit: accounts.orderDeposits,
  layaway_payment: accounts.layawayHeld,
};

/** Lines that are money for later: no sale yet, never taxed, never discounted. */
export const kindsForLater: readonly LineKind[] = [
  'voucher',
  'instalment',
  'order_deposit',
  'layaway_payment',
];

/** Whether a line is one of the {@link kindsForLater}. */
export function isMoneyForLater(kind: LineKind): boolean {
  return kindsForLater.includes(kind);
}

/**
 * The postings of one line of a sale. A return posts them with the signs turned.
 *
 * @example a tile of 60.00 with 6.00 off: sales −60.00, discounts given +6.00
 */
export function earnedLines(line: LineForLedger): PostingLine[] {
  const discounts = line.discounts ?? [];
  const grossCents = sumCents([line.netCents, ...discounts.map((each) => each.amountCents)]);
  const account = line.isAfterHandOver ? accounts.owedByCollectors : accountOfLine[line.kind];
  const papers = isMoneyForLater(line.kind) ? papersOf(line) : {};
  return [
    { account, amountCents: -grossCents, ...papers },
    ...discounts.map(({ kind, amountCents }) => ({
      account: kind === 'gallery_share' ? accounts.gallerySharesGiven : accounts.discountsGiven,
      amountCents,
    })),
  ];
}

function papersOf(from: PostingPapers): PostingPapers {
  const { commissionId, orderId, layawayId, creditId, collectorId } = from;
  return {
    ...(commissionId === undefined ? {} : { commissionId }),
    ...(orderId === undefined ? {} : { orderId }),
    ...(layawayId === undefined ? {} : { layawayId }),
    ...(creditId === undefined ? {} : { creditId }),
    ...(collectorId === undefined ? {} : { collectorId }),
  };
}

/**
 * One posting for each account and paper: amounts of the same are added, nothing is left out but
 * what comes to nothing. The order of first appearance is kept.
 */
export function addUp(lines: readonly PostingLine[]): PostingLine[] {
  const sums = new Map<string, PostingLine>();
  for (const line of lines) {
    const { amountCents, ...rest } = line;
    const key = JSON.stringify(rest);
    const sum = sums.get(key);
    sums.set(key, { ...line, amountCents: (sum?.amountCents ?? 0n) + amountCents });
  }
  return Array.from(sums.values()).filter((line) => line.amountCents !== 0n);
}
