import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate, dayOf } from '@/lib/dates/rules';
import { postEntry } from '@/lib/ledger/writes';
import { sumCents } from '@/lib/money/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { SettleAccountInput } from '../input/settling';
import {
  accountSettledEntry,
  decideSettlement,
  type SaleAccount,
  type Settlement,
  type SettlementRefusal,
} from '../rules/settling';

/** Money for one sale that was left open. */
export type SettlementToRecord = Settlement & { saleId: string };

/** The paper's number; what is owed after it, in cents as text. */
export type SettledAnswer = { settlementId: string; number: number; stillOwed: string };

/**
 * Takes money for a sale that was written down as owed: a shop's invoice, another gallery's
 * statement. Joins the caller's transaction; the caller has asked whether the doer may.
 *
 * @returns the paper; refuses, in this order: a sale nobody knows, and what
 *   {@link decideSettlement} refuses. Of two at once only what is owed is taken.
 */
export async function recordSettlement(
  tx: Tx,
  doer: Doer,
  settlement: SettlementToRecord,
): Promise<Result<SettledAnswer, SettlementRefusal>> {
  const account = await accountOf(tx, settlement.saleId);
  if (!account) return refuse({ code: 'unknown_sale' });
  const { timeZone } = await getGallery(tx);
  const decided = decideSettlement(account, settlement, dayOf(doer.at, timeZone));
  if (!decided.ok) return decided;

  const settlementId = newId();
  const { saleId, amountCents, kind, reference, receivedOn } = settlement;
  const entryId = await postEntry(tx, {
    ...{ on: receivedOn, at: doer.at, staffId: doer.actor.id },
    memo: `Received for sale ${account.number}${account.from === '' ? '' : ` from ${account.from}`}`,
    ...{ paper: 'SettlementPayment', paperId: settlementId },
    postings: accountSettledEntry(settlement, account.collectorId),
  });
  const { number } = await tx.settlementPayment.create({
    data: {
      ...{ id: settlementId, saleId, amountCents, kind, reference, entryId },
      ...{ receivedOn: dateFromDay(receivedOn), staffId: doer.actor.id, at: doer.at },
    },
    select: { number: true },
  });
  const stillOwed = decided.value.stillOwedCents.toString();
  const facts = { number, saleNumber: account.number, amountCents, kind, stillOwed };
  const did = 'received money for a sale on account';
  await recordAudit(tx, doer, { did, subject: 'Sale', subjectId: saleId, facts });
  return ok({ settlementId, number, stillOwed });
}

/**
 * The command around {@link recordSettlement}, for a form.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, and what the step
 *   refuses
 */
export async function settleAccount(
  doer: Doer,
  input: SettleAccountInput,
): Promise<Result<SettledAnswer, SettlementRefusal | NotAllowed | KeyRefusal>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, amount: amountCents, ...said } = input;
  const settlement = { ...said, amountCents };
  const name = 'settleAccount';
  const kept = { ...said, amount: amountCents.toString() };
  const command = { key, name, staffId: doer.actor.id, input: kept, at: doer.at };
  return onceOnly<SettledAnswer, SettlementRefusal>(command, (tx) =>
    recordSettlement(tx, doer, settlement),
  );
}

async function accountOf(
  tx: Tx,
  saleId: string,
): Promise<(SaleAccount & { number: number; from: string }) | null> {
  const sale = await tx.sale.findUnique({
    where: { id: saleId },
    select: {
      ...{ number: true, soldOn: true, collectorId: true },
      collector: { select: { name: true } },
      tenders: {
        where: { kind: 'on_account' },
        select: {
          amountCents: true,
          refunds: { where: { kind: 'on_account' }, select: { amountCents: true } },
        },
      },
      settlements: { select: { amountCents: true } },
    },
  });
  if (!sale) return null;
  const { number, collectorId, collector, tenders, settlements } = sale;
  const refunds = tenders.flatMap((tender) => tender.refunds);
  return {
    ...{ number, collectorId, from: collector?.name ?? '' },
    soldOn: dayFromDate(sale.soldOn),
    onAccountCents: sumCents(tenders.map((tender) => tender.amountCents)),
    takenOffCents: sumCents(refunds.map((refund) => refund.amountCents)),
    settledCents: sumCents(settlements.map((each) => each.amountCents)),
  };
}
