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
  taxHeld: '2100',
  salesOfPieces: '4000',
  commissionsHandedOver: '4010',
} as const;

/** The code of one of our accounts. */
export type AccountCode = (typeof accounts)[keyof typeof accounts];

/** Money as it comes in: what lies in the drawer, at the card company, or at the bank. */
export type MoneyKind = 'cash' | 'card' | 'cheque' | 'bank_transfer';

/** Every way in which a sale can be paid, with money now, money before, or money later. */
export type TenderKind = MoneyKind | 'deposit' | 'on_account';

/** One line of an entry: debit is positive, credit is negative, in cents; never zero. */
export type PostingLine = {
  account: AccountCode;
  amountCents: Cents;
  /** For sales tax held: whose it is. */
  authority?: string;
  /** For deposits and for what is owed: by which commission. */
  commissionId?: string;
};

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

/** What the ledger has to know of a sale. */
export type SaleForLedger = {
  lines: readonly { kind: 'piece' | 'commission'; netCents: Cents }[];
  taxes: readonly { authority: string; taxCents: Cents }[];
  tenders: readonly { kind: TenderKind; amountCents: Cents }[];
  /** The commission that is handed over by it, if it is one. */
  commissionId?: string;
};

/**
 * The postings of a completed sale: what was paid against what was earned and the tax held.
 *
 * A deposit that was taken before stops being a debt here, and what is still owed begins to be
 * owed. Amounts of nothing are left out.
 *
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2
 * @example a sale of 18,000.00 at 6 %: cash +19,080.00, sales −18,000.00, tax held −1,080.00
 */
export function saleEntry(sale: SaleForLedger): PostingLine[] {
  const paid = sale.tenders.map((tender) => paidLine(tender, sale.commissionId));
  const earned = earnedLines(sale);
  const held = sale.taxes.map((tax) => ({
    account: accounts.taxHeld,
    amountCents: -tax.taxCents,
    authority: tax.authority,
  }));
  return [...paid, ...earned, ...held].filter((line) => line.amountCents !== 0n);
}

function paidLine(
  tender: { kind: TenderKind; amountCents: Cents },
  commissionId: string | undefined,
): PostingLine {
  const { kind, amountCents } = tender;
  if (kind !== 'deposit' && kind !== 'on_account') {
    return { account: accountOfMoney[kind], amountCents };
  }
  const account = kind === 'deposit' ? accounts.deposits : accounts.owedByCollectors;
  return { account, amountCents, ...(commissionId === undefined ? {} : { commissionId }) };
}

function earnedLines(sale: SaleForLedger): PostingLine[] {
  const netOf = (kind: 'piece' | 'commission') =>
    sumCents(sale.lines.filter((line) => line.kind === kind).map((line) => line.netCents));
  return [
    { account: accounts.salesOfPieces, amountCents: -netOf('piece') },
    { account: accounts.commissionsHandedOver, amountCents: -netOf('commission') },
  ];
}

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
