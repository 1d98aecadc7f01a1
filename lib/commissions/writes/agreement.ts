import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { AgreeInput } from '@/lib/commissions/input/money';
import { readCommissionTax } from '@/lib/commissions/reads/agreement/tax';
import type { CommissionTaxAs } from '@/lib/commissions/rules/agreement/tax';
import {
  clayFrom,
  handshakeBody,
  type HandshakeSaid,
  type SignedWhere,
} from '@/lib/commissions/rules/agreement/paper';
import { paidCents } from '@/lib/commissions/rules/facts';
import { decideAgreement, type DepositAgreed } from '@/lib/commissions/rules/money/sums';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { lineWords } from '@/lib/commissions/rules/proposal/lines';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { currencyNamed, type Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from './carry-out';
import { sha256Of } from '@/lib/commissions/reads/content';

/** An agreement to write down; the price in cents before tax. */
export type AgreementToWrite = {
  commissionId: string;
  priceCents: Cents;
  deposit: DepositAgreed;
  taxPlaceId: string;
  promisedOn: Day | null;
  agreedOn: Day;
  agreedBy: string;
  /** Where it was signed; left out for somewhere else. */
  signedWhere?: SignedWhere | undefined;
  /** How the tax looks at it; left out for a piece that is hung. */
  taxAs?: CommissionTaxAs | undefined;
  cancelNotice?: boolean | undefined;
};

/** The version that was written, and its deposit in cents as text. */
export type AgreementWritten = {
  version: number;
  depositCents: string;
  commissionNumber: number;
};

/**
 * Writes down what was agreed on a paper of its own, without a proposal. There is one agreement;
 * what changes after it is a change order.
 *
 * Signed at the collector's home, no clay may be cut before the days to cancel are over.
 *
 * A deposit in percent is a share of the price with its tax on the day of the agreement, rounded up.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, agreed already, a day to come, an unknown tax place, then as {@link decideAgreement}
 */
export async function agree(
  doer: Doer,
  input: AgreeInput,
): Promise<Result<AgreementWritten, AnyRefusal>> {
  const { requestKey, ...agreement } = input;
  const command = {
    name: 'agree',
    permission: 'commissions.agree',
    key: requestKey,
    input: agreement,
  } as const;
  return carryOut(doer, command, (tx) => addAgreement(tx, doer, agreement));
}

/** The step of {@link agree}: joins the caller's transaction, asks nobody for leave. */
export async function addAgreement(
  tx: Tx,
  doer: Doer,
  agreement: AgreementToWrite,
): Promise<Result<AgreementWritten, CommissionRefusal>> {
  const found = await findOpen(tx, doer, agreement.commissionId);
  if (!found.ok) return found;
  const { commissionId, priceCents, taxPlaceId, agreedBy, agreedOn, promisedOn } = agreement;
  if (found.value.facts.agreement) {
    return refuse({ code: 'agreed_already', agreedOn: found.value.facts.agreement.agreedOn });
  }
  if (agreedOn > found.value.today) return refuse({ code: 'day_to_come', on: agreedOn });
  const { taxAs = 'goods_hung' } = agreement;
  const taxCents = await siteTaxCents(tx, found.value, { ...agreement, taxAs });
  if (taxCents === null) return refuse({ code: 'unknown_tax_place' });
  const decided = decideAgreement(agreement, taxCents, paidCents(found.value.facts));
  if (!decided.ok) return decided;

  const { signedWhere = 'elsewhere', cancelNotice = false } = agreement;
  const clayFromOn = clayFrom(signedWhere, agreedOn);
  const depositCents = decided.value;
  const paper = paperOf(found.value, { ...agreement, signedWhere, taxAs, depositCents });
  await tx.agreement.create({
    data: {
      ...{ commissionId, version: 1, priceCents, taxPlaceId, agreedBy },
      ...{ depositCents, taxAs, at: doer.at },
      ...{ body: paper, contentSha256: sha256Of(paper), signedWhere, cancelNotice },
      clayFromOn: clayFromOn && dateFromDay(clayFromOn),
      promisedOn: promisedOn && dateFromDay(promisedOn),
      agreedOn: dateFromDay(agreedOn),
      recordedById: doer.actor.id,
      lines: {
        create: [{ position: 1, kind: 'work', words: lineWords.work, amountCents: priceCents }],
      },
      steps: { create: handshakePlan(priceCents + taxCents, depositCents) },
    },
    select: { id: true },
  });
  await tx.commission.update({
    where: { id: commissionId },
    data: { taxAs },
    select: { id: true },
  });
  const did = 'wrote down the agreement';
  const facts = { priceCents, depositCents, promisedOn, agreedBy, clayFromOn };
  await tellHistory(tx, doer, { commissionId, did, facts });
  const { number: commissionNumber } = found.value;
  return ok({ version: 1, depositCents: depositCents.toString(), commissionNumber });
}

function paperOf(
  { number: commissionNumber, title, gallery }: FoundCommission,
  said: Omit<HandshakeSaid, 'commissionNumber' | 'title'>,
): string {
  const telling = { currency: currencyNamed(gallery.currency) };
  return handshakeBody({ ...said, commissionNumber, title }, telling);
}

/** The deposit when it is agreed, and the rest before it is handed over. */
function handshakePlan(totalCents: Cents, depositCents: Cents) {
  const steps = [
    { name: 'Deposit', event: 'agreed', amountCents: depositCents },
    { name: 'Balance', event: 'before_hand_over', amountCents: totalCents - depositCents },
  ] as const;
  return steps
    .filter((step) => step.amountCents > 0n)
    .map((step, at) => ({ ...step, position: at + 1, percent: null }));
}

async function siteTaxCents(
  tx: Tx,
  found: FoundCommission,
  agreement: AgreementToWrite & { taxAs: CommissionTaxAs },
): Promise<Cents | null> {
  const { taxPlaceId, agreedOn: on, priceCents: cents, taxAs } = agreement;
  const place = await tx.taxPlace.findUnique({ where: { id: taxPlaceId }, select: { id: true } });
  if (!place) return null;
  const where = { taxPlaceId, on, taxAs, roundBy: found.gallery.roundTaxBy };
  return (await readCommissionTax(tx, [{ kind: 'work', cents }], where)).taxCents;
}
