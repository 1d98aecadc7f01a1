import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import type { RoundTerms } from '@/lib/commissions/rules/colours/rounds';

/** How many rounds are included: by the agreement, else by the newest proposal, else by the usual terms. */
export async function readRoundTerms(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<RoundTerms> {
  const select = { roundsIncluded: true, extraRoundCents: true } as const;
  const where = { commissionId };
  const row =
    (await from.agreement.findFirst({
      where: { ...where, proposalId: { not: null } },
      select,
      orderBy: { version: 'desc' },
    })) ?? (await from.proposal.findFirst({ where, select, orderBy: { version: 'desc' } }));
  const { roundsIncluded, extraRoundCents } = row ?? (await readCommissionTerms(from));
  return { included: roundsIncluded, extraCents: extraRoundCents };
}
