import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

/** Whom a referral fee goes to, and how much in a hundred of the work alone. */
export type Referral = { readonly collectorId: string; readonly percent: string };

/**
 * The referral fee that was settled on for a commission.
 *
 * The fee is a share of the work alone, not of delivery, hanging or tax.
 *
 * @returns null when nobody brought them, when the share is not settled, and when it is 0
 */
export async function referralOf(
  tx: Prisma.TransactionClient,
  commissionId: string,
): Promise<Referral | null> {
  const row = await tx.commission.findUnique({
    where: { id: commissionId },
    select: { broughtById: true, broughtPercent: true },
  });
  if (!row?.broughtById || !row.broughtPercent?.greaterThan(0)) return null;
  return { collectorId: row.broughtById, percent: row.broughtPercent.toString() };
}
