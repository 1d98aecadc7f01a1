import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { AskForMoneyInput, WithdrawAskInput } from '@/lib/commissions/input/money';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findForWriting,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from '@/lib/commissions/writes/carry-out';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Money that was asked for, by the number of its paper. */
export type Asked = {
  instalmentId: string;
  position: number;
  number: number;
  commissionNumber: number;
};

/** Money to ask for, in cents; for a step of the plan, or for anything else. */
export type InstalmentToAsk = {
  commissionId: string;
  name: string;
  amountCents: Cents;
  dueOn: Day;
  stepPosition?: number | null | undefined;
};

/**
 * Asks the collector for money: the deposit, a further part, the rest. What falls due when it hangs
 * is asked for after the hand-over.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, not agreed yet, due before it is asked for, no such step, a step that was
 *   asked for already, more than is left to ask for
 */
export async function askForMoney(
  doer: Doer,
  input: AskForMoneyInput,
): Promise<Result<Asked, AnyRefusal>> {
  const { requestKey, ...asked } = input;
  const command = {
    name: 'askForMoney',
    permission: 'commissions.take_money',
    key: requestKey,
    input: asked,
  } as const;
  return carryOut(doer, command, (tx) => addInstalment(tx, doer, asked));
}

/** The step of {@link askForMoney}: joins the caller's transaction, asks nobody for leave. */
export async function addInstalment(
  tx: Tx,
  doer: Doer,
  asked: InstalmentToAsk,
): Promise<Result<Asked, CommissionRefusal>> {
  const found = await findNotEnded(tx, doer, asked.commissionId);
  if (!found.ok) return found;
  const { today } = found.value;
  const leftCents = await leftToAskCents(tx, found.value);
  if (leftCents === null) return refuse({ code: 'not_agreed_yet' });
  if (asked.dueOn < today) return refuse({ code: 'due_before_asked', askedOn: today });
  const ofStep = refusalOfStep(found.value, asked.stepPosition ?? null);
  if (ofStep) return refuse(ofStep);
  if (asked.amountCents > leftCents) return refuse({ code: 'more_than_to_ask', leftCents });

  const { commissionId, name, amountCents, dueOn, stepPosition = null } = asked;
  const position = (await tx.instalment.count({ where: { commissionId } })) + 1;
  const { id, number } = await tx.instalment.create({
    data: {
      ...{ commissionId, position, name, amountCents, stepPosition, at: doer.at },
      askedOn: dateFromDay(today),
      dueOn: dateFromDay(dueOn),
      askedById: doer.actor.id,
    },
    select: { id: true, number: true },
  });
  const did = 'asked for money';
  await tellHistory(tx, doer, { commissionId, did, facts: { name, amountCents, dueOn, number } });
  return ok({ instalmentId: id, position, number, commissionNumber: found.value.number });
}

async function findNotEnded(
  tx: Tx,
  doer: Doer,
  commissionId: string,
): Promise<Result<FoundCommission, CommissionRefusal>> {
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const { ending } = found.value.facts;
  return ending ? refuse({ code: 'ended_early', endedOn: ending.endedOn }) : found;
}

function refusalOfStep(
  { facts }: FoundCommission,
  stepPosition: number | null,
): CommissionRefusal | null {
  if (stepPosition === null) return null;
  const step = facts.plan.find(({ position }) => position === stepPosition);
  if (!step) return { code: 'unknown_step' };
  const isAsked = facts.asked.some((each) => each.stepPosition === stepPosition);
  return isAsked ? { code: 'step_asked_already', name: step.name } : null;
}

async function leftToAskCents(tx: Tx, found: FoundCommission): Promise<Cents | null> {
  const { id, facts, today, gallery } = found;
  const now = { on: today, roundBy: gallery.roundTaxBy };
  const totalCents = facts.handOver?.totalCents ?? (await readTotal(tx, id, now))?.totalCents;
  if (totalCents === undefined) return null;
  const leftCents = totalCents - sumCents(facts.asked.map((each) => each.amountCents));
  return leftCents > 0n ? leftCents : 0n;
}

/**
 * Takes back what was asked for, when it was by mistake; nothing may have come in for it.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, not asked for, paid for in part
 */
export async function withdrawAsk(
  doer: Doer,
  input: WithdrawAskInput,
): Promise<Result<{ commissionNumber: number }, AnyRefusal>> {
  const { requestKey, ...withdrawn } = input;
  const { commissionId, instalmentId, why } = withdrawn;
  const command = {
    name: 'withdrawAsk',
    permission: 'commissions.take_money',
    key: requestKey,
    input: withdrawn,
  } as const;
  return carryOut(doer, command, async (tx) => {
    const found = await findNotEnded(tx, doer, commissionId);
    if (!found.ok) return found;
    const asked = await tx.instalment.findFirst({
      where: { id: instalmentId, commissionId, withdrawn: null },
      select: {
        name: true,
        payments: { select: { amountCents: true, refunds: { select: { amountCents: true } } } },
      },
    });
    if (!asked) return refuse({ code: 'unknown_ask' as const });
    const backCents = asked.payments.flatMap(({ refunds }) =>
      refunds.map((each) => each.amountCents),
    );
    const cameIn = asked.payments.map(({ amountCents }) => amountCents);
    const paidCents = sumCents(cameIn) - sumCents(backCents);
    if (paidCents > 0n) return refuse({ code: 'ask_is_paid' as const, paidCents });
    await tx.instalmentWithdrawn.create({
      data: { instalmentId, why, staffId: doer.actor.id, at: doer.at },
      select: { instalmentId: true },
    });
    const did = 'took back what was asked for';
    await tellHistory(tx, doer, { commissionId, did, facts: { name: asked.name, why } });
    return ok({ commissionNumber: found.value.number });
  });
}
