import { expect } from 'vitest';
import { findSheet } from '@/lib/commissions/reads/sheet';
import type { CommissionMoney } from '@/lib/commissions/rules/money/sums';
import { invariant } from '@/lib/platform/invariant';
import type { OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql } from '@/tests/helpers/database';

/** What the books hold of one commission, by account, in cents; debits above zero. */
export type Books = Record<string, bigint>;

const entriesOf = `
  select "entryId" from "CommissionPayment" where "commissionId" = $1
  union select "entryId" from "CommissionRefund" where "commissionId" = $1
  union select "entryId" from "CommissionEnding" where "commissionId" = $1
  union select sale."entryId" from "HandOver" h join "Sale" sale on sale.id = h."saleId"
    where h."commissionId" = $1
  union select back."entryId" from "HandOver" h join "GoodsReturn" back on back."saleId" = h."saleId"
    where h."commissionId" = $1`;

/** The books of a commission by SQL of their own, from the entries of its papers. */
export async function booksOf(commissionId: string): Promise<Books> {
  const rows = await sql<{ account: string; cents: string }>(
    `select "accountCode" as account, sum("amountCents")::text as cents
     from "Posting" where "entryId" in (${entriesOf}) group by 1 having sum("amountCents") <> 0`,
    [commissionId],
  );
  return Object.fromEntries(rows.map(({ account, cents }) => [account, BigInt(cents)]));
}

const moneyAccounts = ['1000', '1010', '1020', '1030'];
const incomeAccounts = ['4010', '4020', '4030', '4050'];

function sumOf(books: Books, accounts: readonly string[]): bigint {
  return accounts.reduce((sum, account) => sum + (books[account] ?? 0n), 0n);
}

/** The sums that the page shows of a commission. */
export async function pageOf(gallery: OpenGallery, number: number): Promise<CommissionMoney> {
  const sheet = await findSheet(gallery.owner, number);
  invariant(sheet?.money, 'What is agreed has its sums.');
  return sheet.money;
}

/**
 * Whether the page says what the books say, to the cent: money, deposits held, owed by the collector,
 * earned, kept, tax. Nothing but these accounts is touched, and all books together come to nothing.
 *
 * @returns the sums of the page
 */
export async function agreeWithBooks(
  gallery: OpenGallery,
  { commissionId, number }: { commissionId: string; number: number },
): Promise<CommissionMoney> {
  const [money, books, facts] = [
    await pageOf(gallery, number),
    await booksOf(commissionId),
    await factsBySql(commissionId),
  ];
  const isOver = facts.handed || facts.ended;
  const known = [...moneyAccounts, ...incomeAccounts, '1100', '2000', '2100', '2210', '4060'];
  expect({
    // What became a store credit is theirs and lies there.
    inHand: sumOf(books, [...moneyAccounts, '2210']),
    held: -(books['2000'] ?? 0n),
    owed: books['1100'] ?? 0n,
    earned: -sumOf(books, incomeAccounts),
    kept: -(books['4060'] ?? 0n),
    tax: -(books['2100'] ?? 0n),
    other: Object.keys(books).filter((account) => !known.includes(account)),
    asked: facts.askedCents,
  }).toEqual({
    inHand: money.paidCents,
    held: isOver ? money.overpaidCents : money.paidCents,
    owed: isOver ? money.owedCents : 0n,
    earned: facts.handed ? money.priceCents : 0n,
    kept: facts.ended ? money.totalCents : 0n,
    tax: facts.handed ? money.taxCents : 0n,
    other: [],
    asked: money.invoicedCents,
  });
  expect(money.owedCents - money.overpaidCents).toBe(money.totalCents - money.paidCents);
  const [all] = await sql<{ cents: string }>(
    'select coalesce(sum("amountCents"), 0)::text as cents from "Posting"',
  );
  expect(all?.cents).toBe('0');
  return money;
}

async function factsBySql(commissionId: string) {
  const [row] = await sql<{ handed: boolean; ended: boolean; asked: string }>(
    `select exists (select 1 from "HandOver" where "commissionId" = $1) as handed,
       exists (select 1 from "CommissionEnding" where "commissionId" = $1) as ended,
       (select coalesce(sum("amountCents"), 0)::text from "Instalment" i where "commissionId" = $1
          and not exists (select 1 from "InstalmentWithdrawn" w where w."instalmentId" = i.id)) as asked`,
    [commissionId],
  );
  invariant(row, 'One row comes back.');
  const { handed, ended, asked } = row;
  return { handed, ended, askedCents: BigInt(asked) };
}
