import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer } from '@/lib/access/rules';
import type { AskForChangesInput } from '@/lib/commissions/input/colours/showing';
import { readRoundTerms } from '@/lib/commissions/reads/colours/round-terms';
import { roundsOf, shownSince, type Rounds } from '@/lib/commissions/rules/colours/rounds';
import type { Spot } from '@/lib/commissions/rules/content';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import type { ApprovalWay } from '@/lib/commissions/rules/words';
import { addSignedExtraRound } from '@/lib/commissions/writes/agreement/extra-round';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from '@/lib/commissions/writes/carry-out';
import { readySignature, type ReadySignature } from '@/lib/commissions/writes/signature';
import { dateFromDay } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { findShown, type ShownToAnswer } from './shown';

/** Changes that were asked for: the round they open, and what it costs, in cents as text. */
export type ChangesAsked = { round: number | null; feeCents: string; commissionNumber: number };

/** Changes to ask for, to exactly what was looked at. */
export type ChangesToAsk = {
  commissionId: string;
  what: 'sketch' | 'colour_tile';
  shownId: string;
  contentSha256: string;
  words: string;
  spots: readonly (Spot & { words: string })[];
  askedBy: string;
  how: ApprovalWay;
  agreesFee: boolean;
  /** The name under what a further round costs, as it was given; on their page their typed name. */
  signature?: ReadySignature | null | undefined;
  device: string;
};

/**
 * Asks for changes instead of saying yes: by marking spots, in words, or both. A round beyond those
 * included has its price, which is told before and agreed to in the same form; once there is an
 * agreement it becomes a change order, signed by that form: by their typed name on their page, and
 * before the gallery as it is signed there.
 *
 * @param device what their browser says it is
 * @returns refuses, in this order: not allowed, a signature that cannot be read, a key used for
 *   something else, unknown, ended early, handed over, nothing shown of that letter, another content,
 *   approved already, a sketch that was shown since, nothing asked, a price that is not agreed to, a
 *   change order that nobody signs
 */
export async function askForChanges(
  doer: AnyDoer,
  input: AskForChangesInput,
  device = '',
): Promise<Result<ChangesAsked, AnyRefusal>> {
  const { requestKey, how, signature, ...asked } = input;
  const { commissionId } = asked;
  const ready = signature ? await readySignature(signature) : ok(null);
  if (!ready.ok) return ready;
  const command = {
    name: 'askForChanges',
    permission: 'commissions.write',
    key: requestKey,
    input: { ...asked, how, signedAs: signature?.signedAs ?? null },
    onTheirPage: { commissionId },
  } as const;
  const way = isAtPage(doer) ? ('on_their_page' as const) : (how ?? 'in_person');
  const said = { ...asked, how: way, signature: ready.value, device };
  return carryOut(doer, command, (tx) => addChangesAsked(tx, doer, said));
}

/** The step of {@link askForChanges}: joins the caller's transaction, asks nobody for leave. */
export async function addChangesAsked(
  tx: Tx,
  doer: AnyDoer,
  asked: ChangesToAsk,
): Promise<Result<ChangesAsked, CommissionRefusal>> {
  const found = await findOpen(tx, doer, asked.commissionId);
  if (!found.ok) return found;
  const shown = await findShown(tx, asked);
  const refusal = refusalToAsk(found.value, shown, asked);
  if (refusal || !shown) return refuse(refusal ?? { code: 'nothing_shown' });
  const rounds = await roundOf(tx, found.value, { shown, asked });
  const charge = decideCharge(doer, asked, {
    rounds,
    isAgreed: found.value.facts.agreement !== null,
  });
  if (!charge.ok) return charge;
  const id = await keep(tx, doer, { found: found.value, asked, rounds });
  if (charge.value) {
    const extra = await chargeRound(tx, doer, { asked, id, ...charge.value });
    if (!extra.ok) return extra;
  }
  const { next: round, feeCents } = rounds ?? { next: null, feeCents: 0n };
  await tellAsked(tx, doer, { asked, label: shown.label, round, feeCents });
  return ok({ round, feeCents: feeCents.toString(), commissionNumber: found.value.number });
}

type Charge = { round: number; feeCents: Cents; signature: ReadySignature };

/** What becomes a change order of it: nothing while it is included, or before anything is agreed. */
function decideCharge(
  doer: AnyDoer,
  asked: ChangesToAsk,
  { rounds, isAgreed }: { rounds: Rounds | null; isAgreed: boolean },
): Result<Charge | null, CommissionRefusal> {
  if (!rounds || rounds.feeCents <= 0n) return ok(null);
  const { next: round, feeCents } = rounds;
  if (!asked.agreesFee) return refuse({ code: 'round_costs', round, feeCents });
  if (!isAgreed) return ok(null);
  const signature = signatureUnder(doer, asked);
  return signature
    ? ok({ round, feeCents, signature })
    : refuse({ code: 'round_not_signed', round });
}

async function tellAsked(
  tx: Tx,
  doer: AnyDoer,
  told: { asked: ChangesToAsk; label: string; round: number | null; feeCents: Cents },
): Promise<void> {
  const { asked, label, round, feeCents } = told;
  const { commissionId, what, askedBy: agreedBy, words: why } = asked;
  const did = `asked for changes to ${what === 'sketch' ? 'sketch' : 'colour tile'} ${label}`;
  await tellHistory(tx, doer, { commissionId, did, facts: { agreedBy, round, feeCents, why } });
}

function refusalToAsk(
  { facts }: FoundCommission,
  shown: ShownToAnswer | null,
  asked: ChangesToAsk,
): CommissionRefusal | null {
  if (!shown) return { code: 'nothing_shown' };
  if (shown.contentSha256 !== asked.contentSha256) return { code: 'other_picture' };
  if (shown.yes) return { code: 'approved_already', ...shown.yes };
  const newer = asked.what === 'sketch' ? shownSince(facts, shown.label) : null;
  if (newer !== null) return { code: 'newer_shown', label: `sketch ${newer}` };
  if (asked.words.trim() === '' && asked.spots.length === 0) return { code: 'nothing_asked' };
  return null;
}

async function roundOf(
  tx: Tx,
  found: FoundCommission,
  { shown, asked }: { shown: ShownToAnswer; asked: ChangesToAsk },
): Promise<Rounds | null> {
  if (asked.what !== 'sketch') return null;
  return roundsOf(found.facts, shown.label, await readRoundTerms(tx, found.id));
}

type Kept = { found: FoundCommission; asked: ChangesToAsk; rounds: Rounds | null };

async function keep(tx: Tx, doer: AnyDoer, { found, asked, rounds }: Kept): Promise<string> {
  const { commissionId, contentSha256, words, askedBy, how, what, shownId, spots } = asked;
  const { id } = await tx.changeAsked.create({
    data: {
      ...{ commissionId, contentSha256, words, askedBy, how, at: doer.at },
      ...(what === 'sketch' ? { sketchId: shownId } : { colourTileId: shownId }),
      askedOn: dateFromDay(found.today),
      ...{ round: rounds?.next ?? null, feeCents: rounds?.feeCents ?? 0n },
      linkId: isAtPage(doer) ? doer.page.linkId : null,
      recordedById: staffIdOf(doer),
      spots: { create: spots.map((spot, at) => ({ ...spot, position: at + 1 })) },
    },
    select: { id: true },
  });
  return id;
}

/** On their own page they type their name; before the gallery it is signed as they sign there. */
function signatureUnder(doer: AnyDoer, asked: ChangesToAsk): ReadySignature | null {
  if (!isAtPage(doer)) return asked.signature ?? null;
  const name = { signedName: asked.askedBy, signedCapacity: '' };
  return { ...name, signedAs: 'typed', drawing: null };
}

type Charged = Charge & { asked: ChangesToAsk; id: string };

async function chargeRound(tx: Tx, doer: AnyDoer, { asked, id, ...round }: Charged) {
  const { commissionId, device } = asked;
  return addSignedExtraRound(tx, doer, { commissionId, changeAskedId: id, device, ...round });
}
