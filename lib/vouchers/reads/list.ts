import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { monthInstants, type Month } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { creditColumns, creditOf, readCredit, type CreditNow } from '../reads';
import type { CreditRoll } from '../rules';
import { readCode } from '../rules/code';

/** The most vouchers and credits that a list shows. */
export const creditsListed = 100;

/** The vouchers and credits that were looked for, and what all of them owe. */
export type CreditList = { credits: CreditNow[]; openCount: number; openCents: Cents };

/**
 * Vouchers and credits: those with something on them, the newest first; or, for letters, those
 * whose number, person or note holds them. At most 100.
 */
export async function listCredits(actor: Actor, find: string): Promise<CreditList> {
  assertAllowed(actor, 'receipts.see');
  const letters = find.trim();
  const [rows, open] = await Promise.all([
    db().credit.findMany({
      where: letters === '' ? { balanceCents: { gt: 0n } } : foundBy(letters),
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      take: creditsListed,
      select: creditColumns,
    }),
    db().credit.aggregate({
      where: { balanceCents: { gt: 0n } },
      _count: true,
      _sum: { balanceCents: true },
    }),
  ]);
  const openCents = open._sum.balanceCents ?? 0n;
  return { credits: rows.map(creditOf), openCount: open._count, openCents };
}

function foundBy(letters: string) {
  const code = readCode(letters);
  const contains = { contains: letters, mode: 'insensitive' as const };
  return {
    OR: [
      { code: code.ok ? code.value : { contains: letters.toUpperCase() } },
      { note: contains },
      { collector: { name: contains } },
    ],
  };
}

/** One movement of a voucher, and the paper that made it. */
export type CreditMove = {
  id: string;
  at: Date;
  amountCents: Cents;
  by: string;
  paper: { kind: 'receipt' | 'return'; number: number } | null;
};

/** A voucher or credit with everything that happened to it, the newest first. */
export type CreditPaper = CreditNow & { moves: CreditMove[]; firstCents: Cents };

/** The most movements that a voucher's page shows. */
const movesListed = 200;

/** The voucher or credit of a number with its movements; null when nobody has it. */
export async function findCredit(actor: Actor, code: string): Promise<CreditPaper | null> {
  assertAllowed(actor, 'receipts.see');
  const credit = await readCredit(db(), code);
  if (!credit) return null;
  const rows = await db().creditMovement.findMany({
    where: { creditId: credit.creditId },
    orderBy: { id: 'desc' },
    take: movesListed,
    select: {
      ...{ id: true, at: true, amountCents: true, staffId: true },
      sale: { select: { number: true } },
      goodsReturn: { select: { number: true } },
    },
  });
  const names = await staffNames(rows.map((row) => row.staffId));
  const moves = rows.map(({ id, staffId, sale, goodsReturn, ...move }): CreditMove => {
    const paper = sale
      ? ({ kind: 'receipt', number: sale.number } as const)
      : goodsReturn && ({ kind: 'return', number: goodsReturn.number } as const);
    return { ...move, id: id.toString(), by: names.get(staffId) ?? '', paper };
  });
  return { ...credit, moves, firstCents: moves.at(-1)?.amountCents ?? 0n };
}

async function staffNames(ids: readonly string[]): Promise<Map<string, string>> {
  const rows = await db().staff.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
  });
  return new Map(rows.map(({ id, name }) => [id, name]));
}

const rollRow = z.object({
  kind: z.enum(['voucher', 'store_credit']),
  openingCents: z.bigint(),
  soldCents: z.bigint(),
  givenCents: z.bigint(),
  usedCents: z.bigint(),
  takenBackCents: z.bigint(),
});

/** What a month did to the vouchers and to the store credits: opening to closing. */
export async function rollOfMonth(
  actor: Actor,
  month: Month,
  timeZone: string,
): Promise<CreditRoll[]> {
  assertAllowed(actor, 'receipts.see');
  const { fromAt, untilAt } = monthInstants(month, timeZone);
  const found = await db().$queryRaw`
    SELECT kinds.kind::text AS kind,
      coalesce(sum(moved."amountCents") FILTER (WHERE moved.at < ${fromAt}), 0)::bigint
        AS "openingCents",
      coalesce(sum(moved."amountCents") FILTER (WHERE moved.at >= ${fromAt}
        AND moved."amountCents" > 0 AND moved."saleId" IS NOT NULL), 0)::bigint AS "soldCents",
      coalesce(sum(moved."amountCents") FILTER (WHERE moved.at >= ${fromAt}
        AND moved."amountCents" > 0 AND moved."saleId" IS NULL), 0)::bigint AS "givenCents",
      coalesce(sum(moved."amountCents") FILTER (WHERE moved.at >= ${fromAt}
        AND moved."amountCents" < 0 AND moved."saleId" IS NOT NULL), 0)::bigint AS "usedCents",
      coalesce(sum(moved."amountCents") FILTER (WHERE moved.at >= ${fromAt}
        AND moved."amountCents" < 0 AND moved."saleId" IS NULL), 0)::bigint AS "takenBackCents"
    FROM unnest(enum_range(NULL::"CreditKind")) AS kinds(kind)
    LEFT JOIN "Credit" credit ON credit.kind = kinds.kind
    LEFT JOIN "CreditMovement" moved ON moved."creditId" = credit.id AND moved.at < ${untilAt}
    GROUP BY kinds.kind ORDER BY kinds.kind`;
  return z
    .array(rollRow)
    .parse(found)
    .map((row) => {
      const { openingCents, soldCents, givenCents, usedCents, takenBackCents } = row;
      const all = [openingCents, soldCents, givenCents, usedCents, takenBackCents];
      return { ...row, closingCents: sumCents(all) };
    });
}
