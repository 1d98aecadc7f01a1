import 'server-only';
import { isAllowed, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { endHold } from '@/lib/holds/writes';
import type { Cents } from '@/lib/money/rules';
import type { KeyRefusal, Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { ReturnRefusal } from '@/lib/returns/rules/refusals';
import { giveBackPayments } from '@/lib/returns/writes/give-back-payments';
import type { Tender } from '@/lib/sales/rules/tenders';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { readTaxSetting } from '@/lib/tax/reads';
import type { CancelLayawayInput, HandOverInput } from '../input';
import type { LayawayFacts } from '../reads/facts';
import { priceLayaway } from '../rules';
import type { AnyLayawayRefusal, LayawayRefusal } from '../rules/refusals';
import { carryOut, findRunning, type Setting } from './carry-out';

/** The receipt of a hand-over. */
export type HandedOver = { saleId: string; receipt: number };

/**
 * Hands a layaway over that is paid off: the sale is made now, at the agreed prices and the tax of
 * today, and what was paid before pays it.
 *
 * @returns the receipt's number; refuses, in this order: not allowed, a key used for something
 *   else, unknown, ended, no tax rate kept, something still to be paid, more paid than it comes
 *   to, a total other than the one shown
 * @source house rule: revenue is recognised when the piece is handed over
 */
export async function handOverLayaway(
  doer: Doer,
  input: HandOverInput,
): Promise<Result<HandedOver, AnyLayawayRefusal>> {
  const command = { name: 'handOverLayaway', input };
  return carryOut<HandedOver, LayawayRefusal>(doer, command, async (tx, setting) => {
    const found = await findRunning(tx, input.layawayId, setting.todayOn);
    if (!found.ok) return found;
    const refusal = refusalToHandOver(found.value, input.shownTotal);
    return refusal ? refuse(refusal) : sell(tx, doer, { layaway: found.value, setting });
  });
}

function refusalToHandOver({ money }: LayawayFacts, shownCents: Cents): LayawayRefusal | null {
  const { remainingCents, tooMuchCents, totalCents } = money;
  if (remainingCents > 0n) return { code: 'not_paid_off', remainingCents };
  if (tooMuchCents > 0n) return { code: 'paid_too_much', tooMuchCents };
  if (shownCents === totalCents) return null;
  return { code: 'price_changed', shownCents, nowCents: totalCents };
}

async function sell(
  tx: Tx,
  doer: Doer,
  { layaway, setting }: { layaway: LayawayFacts; setting: Setting },
): Promise<Result<HandedOver, LayawayRefusal>> {
  const { id: layawayId, number, taxPlaceId, collector } = layaway;
  const { gallery, todayOn } = setting;
  const tax = await readTaxSetting(tx, { taxPlaceId, on: todayOn });
  if (tax.parts.length === 0 && tax.isRegistered) {
    return refuse({ code: 'no_tax_rate', place: tax.place });
  }
  const priced = priceLayaway(layaway.lines, tax, gallery.roundTaxBy);
  const paid = { amountCents: priced.totalCents, givenCents: null, reference: '', layawayId };
  const tenders: Tender[] = [{ kind: 'layaway', ...paid }];
  const [sale] = await recordSales(tx, doer, [
    {
      ...{ ...priced, tenders, channel: 'counter', placeId: gallery.counterId, taxPlaceId },
      ...{ collectorId: collector.id, soldOn: todayOn },
    },
  ]);
  invariant(sale, 'A layaway that is paid off is handed over.');
  const { saleId, number: receipt } = sale;
  await end(tx, doer, { layawayId, why: '' });
  const facts = { number, receipt, totalCents: priced.totalCents };
  await tell(tx, doer, { layawayId, did: 'handed over a layaway', facts });
  return ok({ saleId, receipt });
}

/** What went back and what was kept when a layaway was cancelled, in cents as text. */
export type Cancelled = { number: number; given: string; kept: string; creditCode: string | null };

/** Why a layaway was not cancelled. */
export type CancelRefusal = LayawayRefusal | ReturnRefusal | NotAllowed | KeyRefusal;

/**
 * Cancels a layaway: its pieces are free again, and the money goes back less what its terms keep.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, may not give money
 *   back, unknown, ended, more kept than was paid, something kept by anybody but the owner, and
 *   what giving back refuses
 * @example 150.00 paid and 20.00 kept: 130.00 goes back
 */
export async function cancelLayaway(
  doer: Doer,
  input: CancelLayawayInput,
): Promise<Result<Cancelled, CancelRefusal>> {
  const command = { name: 'cancelLayaway', input };
  return carryOut<Cancelled, CancelRefusal>(doer, command, async (tx, { todayOn }) => {
    const { layawayId, keep: keepCents, why, how } = input;
    if (!isAllowed(doer.actor.roles, 'counter.give_back')) {
      return refuse({ code: 'not_allowed', permission: 'counter.give_back' });
    }
    const found = await findRunning(tx, layawayId, todayOn);
    if (!found.ok) return found;
    const refusal = refusalToKeep(doer, keepCents, found.value.money.paidCents);
    if (refusal) return refuse(refusal);

    const freed = await freePieces(tx, doer, found.value);
    if (!freed.ok) return freed;
    const back = await giveBack(tx, doer, { layaway: found.value, keepCents, why, how });
    if (!back.ok) return back;
    await end(tx, doer, { layawayId, why });
    const { number } = found.value;
    const facts = { number, why, given: back.value.given, kept: back.value.kept };
    await tell(tx, doer, { layawayId, did: 'cancelled a layaway', facts });
    return ok({ number, ...back.value });
  });
}

function refusalToKeep(doer: Doer, keepCents: Cents, paidCents: Cents): LayawayRefusal | null {
  if (keepCents === 0n) return null;
  if (paidCents === 0n) return { code: 'nothing_paid' };
  if (keepCents > paidCents) return { code: 'keeps_more_than_paid', paidCents, keepCents };
  const isOwner = isAllowed(doer.actor.roles, 'settings.keep');
  return isOwner ? null : { code: 'keeping_is_the_owners' };
}

async function freePieces(
  tx: Tx,
  doer: Doer,
  layaway: LayawayFacts,
): Promise<Result<true, LayawayRefusal>> {
  for (const holdId of layaway.lines.flatMap((line) => line.holdIds)) {
    const ended = await endHold(tx, doer, { holdId, how: 'released' });
    if (!ended.ok) return refuse({ code: 'not_held', hold: ended.refusal });
  }
  return ok(true);
}

type Back = Omit<Cancelled, 'number'>;
type ToGiveBack = Pick<CancelLayawayInput, 'why' | 'how'> & {
  layaway: LayawayFacts;
  keepCents: Cents;
};

async function giveBack(
  tx: Tx,
  doer: Doer,
  { layaway, keepCents, why, how }: ToGiveBack,
): Promise<Result<Back, ReturnRefusal>> {
  if (layaway.money.paidCents === 0n) return ok({ given: '0', kept: '0', creditCode: null });
  const asked = { layawayId: layaway.id, keepCents, reason: why, how };
  const back = await giveBackPayments(tx, doer, asked);
  if (!back.ok) return back;
  const { givenCents, keptCents, credit } = back.value;
  const code = credit?.code ?? null;
  return ok({ given: givenCents.toString(), kept: keptCents.toString(), creditCode: code });
}

async function end(tx: Tx, doer: Doer, { layawayId, why }: { layawayId: string; why: string }) {
  const data = { endedAt: doer.at, endedWhy: why };
  await tx.layaway.update({ where: { id: layawayId }, data, select: { id: true } });
}

type Told = { layawayId: string; did: string; facts: Parameters<typeof recordAudit>[2]['facts'] };

async function tell(tx: Tx, doer: Doer, { layawayId, did, facts }: Told): Promise<void> {
  await recordAudit(tx, doer, { did, subject: 'Layaway', subjectId: layawayId, facts });
}
