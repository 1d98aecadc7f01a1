import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import type { StrikeOutInput, TakeBackInput } from './input';
import { readSoldSale } from './reads/sold-sale';
import { decideReturn, mayGoBeyond, type AskedReturn } from './rules';
import type { ReturnRefusal } from './rules/refusals';
import { recordReturn } from './writes/record-return';

/** What the counter is told: the number of the paper, what goes back, and a credit's number. */
export type TakenBack = { number: number; total: string; creditCode: string | null };

/**
 * Takes pieces of a sale back and gives the money back, as it was paid or as a store credit.
 *
 * @returns the return's number; refuses, in this order: not allowed, a key used for something
 *   else, a number no receipt has, a card's number typed, and what {@link decideReturn} refuses
 */
export async function takeBack(
  doer: Doer,
  { requestKey, ...input }: TakeBackInput,
): Promise<Result<TakenBack, ReturnRefusal>> {
  const { saleNumber, kind, how, feePercent, reason, lines } = input;
  const refunds = new Map(input.refunds.map(({ tenderId, ...refund }) => [tenderId, refund]));
  const amounts = new Map([...refunds].map(([id, { amountCents }]) => [id, amountCents]));
  const fee = { percent: feePercent };
  const asked = { kind, how, fee, reason, lines, refunds: amounts };
  const command = { key: requestKey, name: 'takeBack', input };
  return answerSale(doer, { command, saleNumber, asked });
}

/**
 * Strikes out a sale of today, as if it had not been: everything comes back as it was paid.
 *
 * @returns as {@link takeBack} does
 */
export async function strikeOut(
  doer: Doer,
  { requestKey, ...input }: StrikeOutInput,
): Promise<Result<TakenBack, ReturnRefusal>> {
  const { saleNumber, reason } = input;
  const whole = { lines: [], fee: { cents: 0n }, how: 'same_way', refunds: new Map() } as const;
  const asked: AskedReturn = { kind: 'voided', reason, ...whole };
  const command = { key: requestKey, name: 'strikeOut', input };
  return answerSale(doer, { command, saleNumber, asked });
}

type Answer = {
  command: { key: string; name: string; input: unknown };
  saleNumber: number;
  asked: AskedReturn;
};

async function answerSale(
  doer: Doer,
  { command, saleNumber, asked }: Answer,
): Promise<Result<TakenBack, ReturnRefusal>> {
  const allowed = allow(doer.actor, 'counter.give_back');
  if (!allowed.ok) return allowed;
  const sent = { ...command, staffId: doer.actor.id, at: doer.at };
  return onceOnly<TakenBack, ReturnRefusal>(sent, (tx) => answer(tx, doer, saleNumber, asked));
}

async function answer(
  tx: Tx,
  doer: Doer,
  number: number,
  asked: AskedReturn,
): Promise<Result<TakenBack, ReturnRefusal>> {
  const [sale, gallery] = [await readSoldSale(tx, { number }), await getGallery(tx)];
  if (!sale) return refuse({ code: 'unknown_sale' });
  if (looksLikeCardNumber(asked.reason)) return refuse({ code: 'card_number_typed' });
  const decided = decideReturn(sale, asked, {
    returnedOn: dayOf(doer.at, gallery.timeZone),
    returnDays: gallery.returnDays,
    mayGoBeyond: mayGoBeyond(doer.actor.roles),
  });
  if (!decided.ok) return decided;
  const recorded = await recordReturn(tx, doer, decided.value);
  return ok({
    number: recorded.number,
    total: decided.value.totalCents.toString(),
    creditCode: recorded.credit?.code ?? null,
  });
}
