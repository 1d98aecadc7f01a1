import 'server-only';
import { randomInt } from 'node:crypto';
import type { Doer } from '@/lib/access/rules';
import { livingIds } from '@/lib/collectors/reads/group';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { mayRunOut, type CreditKind } from './rules';
import { makeCode } from './rules/code';

/** A voucher or credit to be opened; its money comes with a movement. */
export type CreditToOpen = {
  kind: CreditKind;
  collectorId: string | null;
  note: string;
  /** The last day on which it holds; null when it does not run out. */
  expiresOn: Day | null;
};

/**
 * Opens a voucher or a store credit with a number of its own and nothing on it yet; joins the
 * caller's transaction. Selling it puts its money on, and so does {@link moveCredits}.
 *
 * @throws Error when a voucher would run out within five years: the caller asks `mayRunOut` first
 */
export async function openCredit(
  tx: Tx,
  doer: Doer,
  { kind, collectorId, note, expiresOn }: CreditToOpen,
): Promise<{ creditId: string; code: string }> {
  invariant(
    mayRunOut(dayOf(doer.at, 'UTC'), expiresOn),
    'A voucher holds for five years at least.',
  );
  const code = makeCode((below) => randomInt(below));
  const under = await livingIds(tx, [collectorId]);
  const { id: creditId } = await tx.credit.create({
    data: {
      ...{ code, kind, collectorId: collectorId && under(collectorId), note },
      expiresOn: expiresOn && dateFromDay(expiresOn),
      createdAt: doer.at,
    },
    select: { id: true },
  });
  return { creditId, code };
}

/** Money put on a voucher or credit (+) or taken off it (−), and the paper that did it. */
export type CreditChange = {
  creditId: string;
  amountCents: Cents;
  saleId?: string;
  returnId?: string;
};

/**
 * Puts money on credits, or takes it off; joins the caller's transaction.
 *
 * The database refuses, as `credit_never_below_zero`, to take off more than is there.
 */
export async function moveCredits(
  tx: Tx,
  doer: Doer,
  changes: readonly CreditChange[],
): Promise<void> {
  if (changes.length === 0) return;
  await tx.creditMovement.createMany({
    data: changes.map((change) => ({ ...change, staffId: doer.actor.id, at: doer.at })),
  });
}
