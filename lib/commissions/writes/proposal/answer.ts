import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer, type Doer } from '@/lib/access/rules';
import type {
  AnswerProposalInput,
  NoteAnswerInput,
  SendProposalInput,
} from '@/lib/commissions/input/proposal/proposal';
import {
  proposalOf,
  proposalSelect,
  sentProposal,
  type ProposalShown,
} from '@/lib/commissions/reads/proposal/facts';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import {
  addSignature,
  readySignature,
  type ReadySignature,
} from '@/lib/commissions/writes/signature';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Which proposal went out, or was answered. */
export type ProposalActed = { version: number; commissionNumber: number };

/**
 * Notes that a proposal went out; only the newest version can.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, agreed already, no such proposal, a newer version, sent already, run out
 */
export async function sendProposal(
  doer: Doer,
  input: SendProposalInput,
): Promise<Result<ProposalActed, AnyRefusal>> {
  const { requestKey, ...sent } = input;
  const command = {
    name: 'sendProposal',
    permission: 'commissions.propose',
    key: requestKey,
    input: sent,
  } as const;
  return carryOut(doer, command, (tx) => addSent(tx, doer, sent));
}

/** The step of {@link sendProposal}: joins the caller's transaction, asks nobody for leave. */
export async function addSent(
  tx: Tx,
  doer: Doer,
  sent: Omit<SendProposalInput, 'requestKey'>,
): Promise<Result<ProposalActed, CommissionRefusal>> {
  const { commissionId, proposalId, how } = sent;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, today, number: commissionNumber } = found.value;
  if (facts.agreement) {
    return refuse({ code: 'agreed_already', agreedOn: facts.agreement.agreedOn });
  }
  const proposal = await findProposal(tx, commissionId, proposalId);
  if (!proposal) return refuse({ code: 'unknown_proposal' });
  const newest = facts.proposals.at(-1)?.version ?? 0;
  if (newest > proposal.version) return refuse({ code: 'newer_proposal', version: newest });
  if (proposal.sent) return refuse({ code: 'proposal_sent_already', sentOn: proposal.sent.on });
  const { validUntilOn, version } = proposal;
  if (validUntilOn < today) return refuse({ code: 'proposal_ran_out', validUntilOn });
  await tx.proposalSent.create({
    data: {
      ...{ proposalId, how, staffId: doer.actor.id, at: doer.at },
      sentOn: dateFromDay(today),
    },
    select: { proposalId: true },
  });
  await tellHistory(tx, doer, { commissionId, did: `sent proposal ${version}`, facts: { how } });
  return ok({ version, commissionNumber });
}

async function findProposal(
  tx: Tx,
  commissionId: string,
  id: string,
): Promise<ProposalShown | null> {
  const row = await tx.proposal.findFirst({
    where: { id, commissionId },
    select: proposalSelect,
  });
  return row && proposalOf(row);
}

/** An answer to exactly one proposal, as it was looked at. */
export type ProposalToAnswer = {
  commissionId: string;
  proposalId: string;
  contentSha256: string;
  accepted: boolean;
  words: string;
  answeredBy: string;
  answeredOn: Day | null;
  signature: ReadySignature | null;
  device: string;
  /** How it was said at the gallery; on their own page there is but one way. */
  how?: string;
};

/**
 * Writes down at the gallery what the collector said to a proposal.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, no such proposal, not sent, another content, a newer one that went out, answered
 *   already, a day to come, run out before that day
 */
export async function noteAnswer(
  doer: Doer,
  input: NoteAnswerInput,
): Promise<Result<ProposalActed, AnyRefusal>> {
  const { requestKey, accepted, how, words, ...said } = input;
  const command = {
    name: 'noteAnswer',
    permission: 'commissions.propose',
    key: requestKey,
    input: { ...said, accepted, how, words },
  } as const;
  const answer = {
    ...{ ...said, accepted: accepted === 'yes', words: words ?? '' },
    ...{ signature: null, device: '', how },
  };
  return carryOut(doer, command, (tx) => addAnswer(tx, doer, answer));
}

/**
 * The collector answers a proposal on their own page, and signs; refuses as {@link noteAnswer}.
 *
 * @param device what their browser says it is
 */
export async function answerProposal(
  doer: AnyDoer,
  input: AnswerProposalInput,
  device = '',
): Promise<Result<ProposalActed, AnyRefusal>> {
  const { requestKey, commissionId, proposalId, contentSha256, accepted, words } = input;
  const signature = await readySignature(input);
  if (!signature.ok) return signature;
  const said = { commissionId, proposalId, contentSha256, words: words ?? '' };
  const command = {
    name: 'answerProposal',
    permission: 'commissions.propose',
    key: requestKey,
    input: { ...said, accepted, signedName: input.signedName },
    onTheirPage: { commissionId },
  } as const;
  const answer = {
    ...{ ...said, accepted: accepted === 'yes', answeredBy: input.signedName },
    ...{ answeredOn: null, signature: signature.value, device },
  };
  return carryOut(doer, command, (tx) => addAnswer(tx, doer, answer));
}

/** The step of both: joins the caller's transaction, asks nobody for leave. */
export async function addAnswer(
  tx: Tx,
  doer: AnyDoer,
  answer: ProposalToAnswer,
): Promise<Result<ProposalActed, CommissionRefusal>> {
  const found = await findOpen(tx, doer, answer.commissionId);
  if (!found.ok) return found;
  const { today, number: commissionNumber } = found.value;
  const proposal = await findProposal(tx, answer.commissionId, answer.proposalId);
  const newest = await sentProposal(tx, answer.commissionId);
  const answeredOn = answer.answeredOn ?? today;
  const refusal = refusalToAnswer(proposal, { answer, newest, today, answeredOn });
  if (refusal || !proposal) return refuse(refusal ?? { code: 'unknown_proposal' });
  const { commissionId, contentSha256, signature, device, accepted, answeredBy, words } = answer;
  const statement = accepted ? 'I accept this proposal.' : 'I do not accept this proposal.';
  const signed = { commissionId, contentSha256, statement, device };
  await tx.proposalAnswer.create({
    data: {
      ...{ proposalId: proposal.id, accepted, answeredBy, words, at: doer.at },
      answeredOn: dateFromDay(answeredOn),
      recordedById: staffIdOf(doer),
      signatureId: signature && (await addSignature(tx, doer, signature, signed)),
    },
    select: { proposalId: true },
  });
  const did = `${isAtPage(doer) ? 'said' : 'wrote down the'} ${accepted ? 'yes' : 'no'} to proposal ${proposal.version}`;
  const how = answer.how ?? 'on_their_page';
  const facts = { approvedBy: answeredBy, how, why: words, sha256: contentSha256 };
  await tellHistory(tx, doer, { commissionId, did, facts });
  return ok({ version: proposal.version, commissionNumber });
}

type Looked = {
  answer: ProposalToAnswer;
  newest: ProposalShown | null;
  today: Day;
  answeredOn: Day;
};

function refusalToAnswer(
  proposal: ProposalShown | null,
  { answer, newest, today, answeredOn }: Looked,
): CommissionRefusal | null {
  if (!proposal) return { code: 'unknown_proposal' };
  if (!proposal.sent) return { code: 'proposal_not_sent' };
  if (proposal.contentSha256 !== answer.contentSha256) return { code: 'other_proposal' };
  if (newest && newest.version > proposal.version) {
    return { code: 'newer_proposal', version: newest.version };
  }
  if (proposal.answer) {
    const { by: answeredBy, accepted } = proposal.answer;
    return { code: 'answered_already', answeredBy, accepted };
  }
  if (answeredOn > today) return { code: 'day_to_come', on: answeredOn };
  const { validUntilOn } = proposal;
  if (answer.accepted && validUntilOn < answeredOn)
    return { code: 'proposal_ran_out', validUntilOn };
  return null;
}
