import type { Doer } from '@/lib/access/rules';
import { meanDepthUm } from '@/lib/commissions/rules/enquiry/cautions';
import { startingHours } from '@/lib/commissions/rules/proposal/terms';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import { addAnswer, addSent } from '@/lib/commissions/writes/proposal/answer';
import { addProposal, type ProposalToWrite } from '@/lib/commissions/writes/proposal/write';
import { addDays, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';

/** What is played of a proposal: written, sent, and answered where somebody answered. */
export type ProposalPlay = {
  tx: Tx;
  commissionTitle: string;
  owner: Doer;
  today: Day;
  taxPlaceId: string;
  understanding: string;
  widthUm: number;
  heightUm: number;
  pieces: number;
  /** Who said yes; left out where nobody answered yet. */
  acceptedBy?: string;
};

/** Writes a proposal for one of the demo's commissions that is not agreed yet, and sends it. */
export async function playProposal(play: ProposalPlay): Promise<void> {
  const { tx, commissionTitle: title, owner, acceptedBy } = play;
  const { id: commissionId } = await tx.commission.findFirstOrThrow({
    where: { title },
    select: { id: true },
  });
  const written = await addProposal(tx, owner, await proposalOf(play, commissionId));
  invariant(written.ok, 'The demo is not refused.');
  const { proposalId } = written.value;
  const sent = await addSent(tx, owner, { commissionId, proposalId, how: 'by mail' });
  invariant(sent.ok, 'The demo is not refused.');
  if (acceptedBy === undefined) return;
  const { contentSha256 } = await tx.proposal.findUniqueOrThrow({
    where: { id: proposalId },
    select: { contentSha256: true },
  });
  const answered = await addAnswer(tx, owner, {
    ...{ commissionId, proposalId, contentSha256, accepted: true, answeredBy: acceptedBy },
    ...{ words: 'Yes, gladly.', answeredOn: null, signature: null, device: '', how: 'by_mail' },
  });
  invariant(answered.ok, 'The demo is not refused.');
}

async function proposalOf(play: ProposalPlay, commissionId: string): Promise<ProposalToWrite> {
  const { tx, today, taxPlaceId, understanding, widthUm, heightUm, pieces } = play;
  const terms = await readCommissionTerms(tx);
  return {
    ...{ commissionId, understanding, taxPlaceId, widthUm, heightUm, depthUm: meanDepthUm, pieces },
    ...startingHours(terms.basis, { widthUm, heightUm }),
    ...{ coats: 3, firings: 4, framed: 'yes', otherCents: 0n, askedCents: null },
    ...{ crateCents: 0n, freightCents: 0n, travelCents: 8_000n, installationCents: 45_000n },
    apart: ['travel', 'installation'],
    designFeePercent: terms.designFeePercent,
    designFeeCredited: terms.designFeeCredited ? 'yes' : 'no',
    ...{ plan: [...terms.plan], taxAs: 'goods_hung', terms: terms.terms },
    ...{ roundsIncluded: terms.roundsIncluded, extraRoundCents: terms.extraRoundCents },
    ...{ readyFromOn: addDays(today, 90), readyToOn: addDays(today, 120) },
    ...{ validUntilOn: addDays(today, terms.validDays), notIncluded: terms.notIncluded },
  };
}
