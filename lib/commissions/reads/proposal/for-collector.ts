import 'server-only';
import { db } from '@/lib/platform/db/client';
import { sentProposal, type ProposalShown } from './facts';

/**
 * The newest proposal that went out, for the collector's own page: whoever opened the link of this
 * commission may see it. Nothing of how its price was built up is in it.
 */
export async function proposalForCollector(commissionId: string): Promise<ProposalShown | null> {
  return sentProposal(db(), commissionId);
}
