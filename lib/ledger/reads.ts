import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, monthRange, type Day, type Month } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import type { EntryPaper, JournalEntryShown } from './rules';

/** How many entries a page of the journal shows. */
export const journalPageSize = 100;
/** The most entries that one month's file holds. */
const journalMost = 100_000;

/** A stretch of the journal of one month. */
export type Journal = {
  month: Month;
  entries: JournalEntryShown[];
  /** How many entries the month has, and what their debits come to. */
  entryCount: number;
  debitCents: Cents;
  page: number;
  pageCount: number;
};

const entryColumns = {
  number: true,
  on: true,
  at: true,
  memo: true,
  paper: true,
  sale: { select: { number: true } },
  payment: { select: { number: true, commission: { select: { number: true } } } },
  goodsReturn: { select: { number: true } },
  drawerCount: { select: { number: true } },
  pettyCash: { select: { number: true } },
  settlement: { select: { sale: { select: { number: true } } } },
  referralFee: { select: { sale: { select: { number: true } } } },
  postings: {
    orderBy: { id: 'asc' },
    select: {
      amountCents: true,
      authority: true,
      account: { select: { code: true, name: true } },
      commission: { select: { number: true } },
    },
  },
} as const;

/** A page of a month's journal, in the order of days; pages count from 1. */
export async function listJournal(actor: Actor, month: Month, page: number): Promise<Journal> {
  assertAllowed(actor, 'books.see');
  const on = onDaysOf(month);
  const [entryCount, debits] = await Promise.all([
    db().journalEntry.count({ where: { on } }),
    db().posting.aggregate({
      where: { entry: { on }, amountCents: { gt: 0n } },
      _sum: { amountCents: true },
    }),
  ]);
  const pageCount = Math.max(1, Math.ceil(entryCount / journalPageSize));
  const shown = Math.min(Math.max(1, page), pageCount);
  const entries = await readEntries(month, (shown - 1) * journalPageSize, journalPageSize);
  const debitCents = debits._sum.amountCents ?? 0n;
  return { month, entries, entryCount, debitCents, page: shown, pageCount };
}

/** A whole month of the journal, for a file. */
export async function listJournalOfMonth(actor: Actor, month: Month): Promise<JournalEntryShown[]> {
  assertAllowed(actor, 'books.see');
  return readEntries(month, 0, journalMost);
}

async function readEntries(month: Month, skip: number, take: number): Promise<JournalEntryShown[]> {
  const entries = await db().journalEntry.findMany({
    where: { on: onDaysOf(month) },
    orderBy: [{ on: 'asc' }, { number: 'asc' }],
    skip,
    take,
    select: entryColumns,
  });
  return entries.map(({ number, at, memo, on, postings, ...papers }) => ({
    ...{ number, at, memo },
    on: dayFromDate(on),
    paper: paperOf(papers),
    postings: postings.map(({ account, commission, ...posting }) => ({
      ...posting,
      account: account.code,
      accountName: account.name,
      commissionNumber: commission?.number ?? null,
    })),
  }));
}

function onDaysOf(month: Month) {
  const { fromOn, untilOn } = monthRange(month);
  return { gte: dateFromDay(fromOn), lt: dateFromDay(untilOn) };
}

type Numbered = { number: number } | null;
type OfSale = { sale: { number: number } } | null;

type Papers = {
  /** The model's name. */
  paper: string;
  sale: Numbered;
  payment: { number: number; commission: { number: number } } | null;
  goodsReturn: Numbered;
  drawerCount: Numbered;
  pettyCash: Numbered;
  settlement: OfSale;
  referralFee: OfSale;
};

function paperOf(papers: Papers): EntryPaper {
  const { sale, payment, goodsReturn, drawerCount, pettyCash, settlement, referralFee } = papers;
  if (sale) return { kind: 'receipt', number: sale.number };
  if (payment) {
    const { number, commission } = payment;
    return { kind: 'payment', number, commissionNumber: commission.number };
  }
  if (goodsReturn) return { kind: 'return', number: goodsReturn.number };
  if (drawerCount) return { kind: 'drawer_count', number: drawerCount.number };
  if (pettyCash) return { kind: 'small_cash', number: pettyCash.number };
  if (settlement) return { kind: 'settlement', receiptNumber: settlement.sale.number };
  if (referralFee) return { kind: 'referral_fee', receiptNumber: referralFee.sale.number };
  return { kind: 'other', name: nameOfPaper[papers.paper] ?? papers.paper };
}

/** Papers that have no page of their own, by their model's name. */
const nameOfPaper: Readonly<Record<string, string>> = {
  Credit: 'store credit',
  ReferralFee: 'referral fee',
};

const balanceRow = z.object({
  code: z.string(),
  name: z.string(),
  nature: z.enum(['asset', 'liability', 'income', 'expense', 'equity']),
  balanceCents: z.bigint(),
});

/** What one account holds: debit positive, credit negative, in cents. */
export type AccountBalance = z.infer<typeof balanceRow>;

/** Every account on a day, and the sum of them all, which is nothing. */
export type TrialBalance = { on: Day; accounts: AccountBalance[]; sumCents: Cents };

/** What every account holds at the end of a day. */
export async function getTrialBalance(actor: Actor, on: Day): Promise<TrialBalance> {
  assertAllowed(actor, 'books.see');
  const rows = await db().$queryRaw`
    SELECT account.code, account.name, account.nature::text AS nature,
      coalesce(sum(posting."amountCents") FILTER (WHERE entry.id IS NOT NULL), 0)::bigint
        AS "balanceCents"
    FROM "Account" account
    LEFT JOIN "Posting" posting ON posting."accountCode" = account.code
    LEFT JOIN "JournalEntry" entry ON entry.id = posting."entryId" AND entry."on" <= ${on}::date
    GROUP BY account.code ORDER BY account.code`;
  const accounts = z.array(balanceRow).parse(rows);
  return { on, accounts, sumCents: sumCents(accounts.map((account) => account.balanceCents)) };
}
