import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { accounts } from '@/lib/ledger/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import type { PiecesOfMoney } from './rules';

/** The most counts that the list shows. */
export const countsListed = 14;

/** What the books say is in the drawer at this moment, in cents. */
export async function readInDrawer(from: Prisma.TransactionClient): Promise<Cents> {
  const sum = await from.posting.aggregate({
    where: { accountCode: accounts.cashDrawer },
    _sum: { amountCents: true },
  });
  return sum._sum.amountCents ?? 0n;
}

/** What the books say is in the drawer now, for a page. */
export async function findInDrawer(actor: Actor): Promise<Cents> {
  assertAllowed(actor, 'receipts.see');
  return readInDrawer(db());
}

/** A count of the drawer as it was written down. */
export type CountKept = {
  number: number;
  on: Day;
  at: Date;
  by: string;
  expectedCents: Cents;
  countedCents: Cents;
  floatCents: Cents;
  bankedCents: Cents;
  cardTotalCents: Cents | null;
  pieces: PiecesOfMoney;
  reason: string;
};

const columns = {
  ...{ number: true, on: true, at: true, expectedCents: true, countedCents: true },
  ...{ floatCents: true, bankedCents: true, cardTotalCents: true, pieces: true, reason: true },
  staffId: true,
} as const;

type Row = Prisma.DrawerCountGetPayload<{ select: typeof columns }>;

/** The counts of the drawer before one of them, or all; the newest first, at most 14. */
export async function listCounts(actor: Actor, before?: number): Promise<CountKept[]> {
  assertAllowed(actor, 'receipts.see');
  const rows = await db().drawerCount.findMany({
    where: before === undefined ? {} : { number: { lt: before } },
    orderBy: { number: 'desc' },
    take: countsListed,
    select: columns,
  });
  const names = await staffNames(rows.map((row) => row.staffId));
  return rows.map((row) => countOf(row, names));
}

/** The count of that number and the one before it; null when there is none. */
export async function findCount(
  actor: Actor,
  number: number,
): Promise<{ count: CountKept; before: CountKept | null } | null> {
  assertAllowed(actor, 'receipts.see');
  const [row, earlier] = await db().drawerCount.findMany({
    where: { number: { lte: number } },
    orderBy: { number: 'desc' },
    take: 2,
    select: columns,
  });
  if (row?.number !== number) return null;
  const names = await staffNames([row, ...(earlier ? [earlier] : [])].map((each) => each.staffId));
  return { count: countOf(row, names), before: earlier ? countOf(earlier, names) : null };
}

/** The newest count; null before the first. */
export async function findLastCount(actor: Actor): Promise<CountKept | null> {
  assertAllowed(actor, 'receipts.see');
  const row = await db().drawerCount.findFirst({ orderBy: { number: 'desc' }, select: columns });
  return row && countOf(row, await staffNames([row.staffId]));
}

async function staffNames(ids: readonly string[]): Promise<Map<string, string>> {
  const rows = await db().staff.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
  });
  return new Map(rows.map(({ id, name }) => [id, name]));
}

function countOf({ staffId, on, pieces, ...row }: Row, names: Map<string, string>): CountKept {
  return { ...row, on: dayFromDate(on), by: names.get(staffId) ?? '', pieces: piecesOf(pieces) };
}

function piecesOf(json: unknown): PiecesOfMoney {
  const entries = typeof json === 'object' && json !== null ? Object.entries(json) : [];
  return Object.fromEntries(
    entries.filter((entry): entry is [string, number] => typeof entry[1] === 'number'),
  );
}
