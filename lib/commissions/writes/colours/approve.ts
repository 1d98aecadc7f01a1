import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer, type Doer } from '@/lib/access/rules';
import type { ApproveInput, SignYesInput } from '@/lib/commissions/input/colours/showing';
import { seenInHandStatement, sketchStatement } from '@/lib/commissions/rules/colours/words';
import { shownSince } from '@/lib/commissions/rules/colours/rounds';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import type { ApprovalWay } from '@/lib/commissions/rules/words';
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
import { findShown, type ShownToAnswer } from './shown';

/** A yes that was written down. */
export type YesWritten = { approvalId: string; commissionNumber: number };

/** A yes to exactly one sketch or colour tile, as it was looked at. */
export type YesToWrite = {
  commissionId: string;
  what: 'sketch' | 'colour_tile';
  shownId: string;
  contentSha256: string;
  approvedBy: string;
  how: ApprovalWay;
  /** Null: today. */
  approvedOn: Day | null;
  light?: string | undefined;
  signature?: ReadySignature | undefined;
  device?: string | undefined;
};

/**
 * Writes down a yes. It binds to the whole content that was looked at: picture, words, areas, range.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, nothing shown of that letter, another content, approved already, a sketch
 *   that was shown since, a day to come, a day before it was shown
 * @example two people write down the same yes at once: one is kept, the other is told who and when
 */
export async function approve(
  doer: Doer,
  input: ApproveInput,
): Promise<Result<YesWritten, AnyRefusal>> {
  const { requestKey, ...yes } = input;
  const command = {
    name: 'approve',
    permission: 'commissions.write',
    key: requestKey,
    input: yes,
  } as const;
  return carryOut(doer, command, (tx) => addApproval(tx, doer, yes));
}

/**
 * Somebody says yes themselves and signs: the collector on their own page, or on our screen.
 *
 * A picture is no colour: a tile takes the twin in their hand, and that they say they looked at it.
 *
 * @param device what their browser says it is
 * @returns refuses as {@link approve}, and for a tile, after unknown: not looked at in the hand, and
 *   after approved already: its twin was not given
 */
export async function signYes(
  doer: AnyDoer,
  input: SignYesInput,
  device = '',
): Promise<Result<YesWritten, AnyRefusal>> {
  const signature = await readySignature(input);
  if (!signature.ok) return signature;
  const { requestKey, commissionId, what, shownId, contentSha256, light, seenInHand } = input;
  const said = { commissionId, what, shownId, contentSha256, light };
  const command = {
    name: 'signYes',
    permission: 'commissions.write',
    key: requestKey,
    input: { ...said, seenInHand, signedName: input.signedName },
    onTheirPage: { commissionId },
  } as const;
  const yes = {
    ...{ ...said, approvedBy: input.signedName, approvedOn: null, device },
    how: isAtPage(doer) ? ('on_their_page' as const) : ('in_person' as const),
    signature: signature.value,
  };
  return carryOut(doer, command, async (tx) =>
    what === 'colour_tile' && seenInHand !== 'yes'
      ? refuse({ code: 'not_seen_in_hand' as const })
      : addApproval(tx, doer, yes),
  );
}

/** The step of both: joins the caller's transaction, asks nobody for leave. */
export async function addApproval(
  tx: Tx,
  doer: AnyDoer,
  yes: YesToWrite,
): Promise<Result<YesWritten, CommissionRefusal>> {
  const found = await findOpen(tx, doer, yes.commissionId);
  if (!found.ok) return found;
  const { facts, today, number: commissionNumber } = found.value;
  const shown = await findShown(tx, yes);
  const approvedOn = yes.approvedOn ?? today;
  const refusal = refusalToApprove(shown, yes, { facts, today, approvedOn });
  if (refusal || !shown) return refuse(refusal ?? { code: 'nothing_shown' });
  const { commissionId, contentSha256, approvedBy, how, what, shownId } = yes;
  const { id } = await tx.approval.create({
    data: {
      ...{ commissionId, contentSha256, approvedBy, how, light: yes.light ?? '', at: doer.at },
      fileSha256: shown.fileSha256,
      ...(what === 'sketch' ? { sketchId: shownId } : { colourTileId: shownId }),
      approvedOn: dateFromDay(approvedOn),
      recordedById: staffIdOf(doer),
      signatureId: await signatureOf(tx, doer, yes),
    },
    select: { id: true },
  });
  const name = what === 'sketch' ? 'sketch' : 'colour tile';
  const did = `${isAtPage(doer) ? 'said' : 'wrote down the'} yes to ${name} ${shown.label}`;
  const told = { approvedBy, how, approvedOn, sha256: contentSha256 };
  await tellHistory(tx, doer, { commissionId, did, facts: told });
  return ok({ approvalId: id, commissionNumber });
}

async function signatureOf(tx: Tx, doer: AnyDoer, yes: YesToWrite): Promise<string | null> {
  if (!yes.signature) return null;
  const { commissionId, contentSha256, device = '', what } = yes;
  const statement = what === 'sketch' ? sketchStatement : seenInHandStatement;
  return addSignature(tx, doer, yes.signature, { commissionId, contentSha256, statement, device });
}

type Looked = { facts: CommissionFacts; today: Day; approvedOn: Day };

function refusalToApprove(
  shown: ShownToAnswer | null,
  yes: YesToWrite,
  { facts, today, approvedOn }: Looked,
): CommissionRefusal | null {
  if (!shown) return { code: 'nothing_shown' };
  if (shown.contentSha256 !== yes.contentSha256) return { code: 'other_picture' };
  if (shown.yes) return { code: 'approved_already', ...shown.yes };
  const newer = yes.what === 'sketch' ? shownSince(facts, shown.label) : null;
  if (newer !== null) return { code: 'newer_shown', label: `sketch ${newer}` };
  if (yes.how === 'on_their_page' && yes.what === 'colour_tile' && !shown.isGiven) {
    return { code: 'twin_not_given' };
  }
  if (approvedOn > today) return { code: 'day_to_come', on: approvedOn };
  if (approvedOn < shown.shownOn) {
    return { code: 'before_it_was_shown', shownOn: shown.shownOn };
  }
  return null;
}
