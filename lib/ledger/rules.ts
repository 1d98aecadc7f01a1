import type { Cents } from '@/lib/money/rules';
import { sumCents } from '@/lib/money/rules';
import type { Day } from '@/lib/dates/rules';

/** The accounts that every gallery here begins with, by what they hold. */
export const accounts = {
  cashDrawer: '1000',
  cardClearing: '1010',
  cheques: '1020',
  bank: '1030',
  owedByCollectors: '1100',
  deposits: '2000',
  layawayHeld: '2010',
  orderDeposits: '2020',
  taxHeld: '2100',
  vouchers: '2200',
  storeCredit: '2210',
  referralFeesOwed: '2300',
  salesOfPieces: '4000',
  commissionsHandedOver: '4010',
  deliveryCharged: '4020',
  workCharged: '4030',
  otherSales: '4040',
  restockingFees: '4050',
  depositsKept: '4060',
  discountsGiven: '4800',
  broughtBack: '4900',
  referralFees: '6100',
  gallerySharesGiven: '6200',
  smallExpenses: '6300',
  drawerDifferences: '6900',
} as const;

/** The code of one of our accounts. */
export type AccountCode = (typeof accounts)[keyof typeof accounts];

/** Money as it comes in: what lies in the drawer, at the card company, or at the bank. */
export type MoneyKind = 'cash' | 'card' | 'cheque' | 'bank_transfer';

/** Every way in which a sale can be paid, with money now, money before, or money later. */
export type TenderKind =
  MoneyKind | 'voucher' | 'store_credit' | 'deposit' | 'layaway' | 'on_account';

/** What a line of a slip is. */
export type LineKind =
  | 'piece'
  | 'commission'
  | 'typed'
  | 'shipping'
  | 'installation'
  | 'design_work'
  | 'voucher'
  | 'instalment'
  | 'order_deposit'
  | 'layaway_payment';

/** Where a discount comes from. */
export type DiscountKind = 'line' | 'slip' | 'trade' | 'set' | 'gallery_share' | 'wholesale';

/** The papers under which money is owed or owing, by their ids. */
export type PostingPapers = {
  commissionId?: string;
  orderId?: string;
  layawayId?: string;
  creditId?: string;
  collectorId?: string;
};

/** One line of an entry: debit is positive, credit is negative, in cents; never zero. */
export type PostingLine = {
  account: AccountCode;
  amountCents: Cents;
  /** For sales tax held: whose it is. */
  authority?: string;
} & PostingPapers;

/** One entry of the journal, before it is written. */
export type EntryToPost = {
  /** The day in the gallery's own zone to which it belongs. */
  on: Day;
  at: Date;
  /** One sentence that a bookkeeper understands a year later. */
  memo: string;
  /** The paper that it comes from, by model name and id. */
  paper: string;
  paperId: string;
  staffId: string | null;
  postings: readonly PostingLine[];
};

/** Where money of each kind lies after it came in. */
export const accountOfMoney: Record<MoneyKind, AccountCode> = {
  cash: accounts.cashDrawer,
  card: accounts.cardClearing,
  cheque: accounts.cheques,
  bank_transfer: accounts.bank,
};

/** Money that came in for a commission. */
export type PaymentForLedger = { kind: MoneyKind; amountCents: Cents; commissionId: string };

/**
 * The postings of money taken before the piece is handed over: a debt to the collector until then.
 *
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2
 * @example 5,500.00 by card: card clearing +5,500.00, collectors' deposits −5,500.00
 */
export function depositEntry(payment: PaymentForLedger): PostingLine[] {
  return moneyInFor(payment, accounts.deposits);
}

/** The postings of money that comes in after the hand-over: less is owed by the collector. */
export function settlementEntry(payment: PaymentForLedger): PostingLine[] {
  return moneyInFor(payment, accounts.owedByCollectors);
}

/**
 * The postings of money for a commission, whatever is owed at that moment: so much less is owed by
 * the collector, and what is more than that is a debt to them.
 *
 * @param owedCents what the books keep as owed by the collector; nothing before the hand-over
 * @example 100.00 in cash, 60.00 owed: drawer +100.00, owed by collectors −60.00, deposits −40.00
 */
export function receivedEntry(payment: PaymentForLedger, owedCents: Cents): PostingLine[] {
  const { amountCents } = payment;
  if (owedCents <= 0n) return depositEntry(payment);
  if (amountCents <= owedCents) return settlementEntry(payment);
  const { kind, commissionId } = payment;
  return [
    { account: accountOfMoney[kind], amountCents },
    { account: accounts.owedByCollectors, amountCents: -owedCents, commissionId },
    { account: accounts.deposits, amountCents: owedCents - amountCents, commissionId },
  ];
}

function moneyInFor(payment: PaymentForLedger, answer: AccountCode): PostingLine[] {
  const { kind, amountCents, commissionId } = payment;
  return [
    { account: accountOfMoney[kind], amountCents },
    { account: answer, amountCents: -amountCents, commissionId },
  ];
}

/** Whether postings can stand as an entry: two or more, none of them nothing, together nothing. */
export function entryBalances(postings: readonly PostingLine[]): boolean {
  const amounts = postings.map((posting) => posting.amountCents);
  return amounts.length >= 2 && amounts.every((cents) => cents !== 0n) && sumCents(amounts) === 0n;
}

/**
 * An amount as the books write it: in the debit column or in the credit column, never in both.
 *
 * @example inColumns(-500n) // { debitCents: null, creditCents: 500n }; nothing at all is a debit of 0
 */
export function inColumns(cents: Cents): { debitCents: Cents | null; creditCents: Cents | null } {
  if (cents < 0n) return { debitCents: null, creditCents: -cents };
  return { debitCents: cents, creditCents: null };
}

/** One posting as the journal shows it: debit positive, credit negative, in cents. */
export type JournalPosting = {
  account: string;
  accountName: string;
  amountCents: Cents;
  authority: string | null;
  commissionNumber: number | null;
};

/** The paper that an entry comes from, as a page can link to it. */
export type EntryPaper =
  | { kind: 'receipt'; number: number }
  | { kind: 'payment'; number: number; commissionNumber: number }
  | { kind: 'return' | 'drawer_count' | 'small_cash'; number: number }
  | { kind: 'settlement' | 'referral_fee'; receiptNumber: number }
  | { kind: 'other'; name: string };

/** One entry of the journal with its postings, debits first. */
export type JournalEntryShown = {
  number: number;
  on: Day;
  at: Date;
  memo: string;
  paper: EntryPaper;
  postings: JournalPosting[];
};
