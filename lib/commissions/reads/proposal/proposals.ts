import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { proposalOf, proposalSelect, type ProposalShown } from './facts';

/** Every proposal of a commission, the newest first; for those who see money. */
export async function listProposals(actor: Actor, commissionId: string): Promise<ProposalShown[]> {
  assertAllowed(actor, 'commissions.see_money');
  const rows = await db().proposal.findMany({
    where: { commissionId },
    select: proposalSelect,
    orderBy: { version: 'desc' },
    take: 60,
  });
  return rows.map(proposalOf);
}

const step = z.object({ words: z.string(), basis: z.string(), cents: z.string() });
const keptBuildUp = z.object({
  said: z.record(z.string(), z.union([z.string(), z.array(z.string())])),
  steps: z.array(step),
});

/** How the price of a proposal was built up, as it was kept; for the owner's eyes. */
export type BuildUpKept = {
  said: Readonly<Record<string, string | string[]>>;
  steps: readonly { words: string; basis: string; cents: bigint }[];
  areaCents: bigint;
  costCents: bigint;
};

/** The build-up of one proposal; null when there is none with this id. */
export async function readBuildUp(actor: Actor, proposalId: string): Promise<BuildUpKept | null> {
  assertAllowed(actor, 'commissions.propose');
  const row = await db().proposal.findUnique({
    where: { id: proposalId },
    select: { buildUp: true, areaCents: true, costCents: true },
  });
  if (!row) return null;
  const { said, steps } = keptBuildUp.parse(row.buildUp);
  const { areaCents, costCents } = row;
  const told = steps.map(({ cents, ...words }) => ({ ...words, cents: BigInt(cents) }));
  return { said, steps: told, areaCents, costCents };
}
