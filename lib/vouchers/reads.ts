import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import type { CreditKind } from './rules';
import { readCode } from './rules/code';

/** A voucher or a store credit as it is now. */
export type CreditNow = {
  creditId: string;
  code: string;
  kind: CreditKind;
  balanceCents: Cents;
  expiresOn: Day | null;
  collector: { id: string; name: string } | null;
  note: string;
  createdAt: Date;
};

/** What is read of a credit. */
export const creditColumns = {
  id: true,
  code: true,
  kind: true,
  balanceCents: true,
  expiresOn: true,
  note: true,
  createdAt: true,
  collector: { select: { id: true, name: true } },
} as const;

type CreditRow = Omit<CreditNow, 'creditId' | 'expiresOn'> & { id: string; expiresOn: Date | null };

/** A row of the table as everybody else reads it. */
export function creditOf({ id: creditId, expiresOn, ...row }: CreditRow): CreditNow {
  return { creditId, ...row, expiresOn: expiresOn && dayFromDate(expiresOn) };
}

/**
 * The voucher or store credit of a number, typed or scanned, with what is on it now; null when
 * nobody has that number, or it cannot be one.
 *
 * The caller has asked whether the person may know it.
 */
export async function readCredit(
  from: Prisma.TransactionClient,
  code: string,
): Promise<CreditNow | null> {
  const read = readCode(code);
  if (!read.ok) return null;
  const row = await from.credit.findUnique({
    where: { code: read.value },
    select: creditColumns,
  });
  return row && creditOf(row);
}
