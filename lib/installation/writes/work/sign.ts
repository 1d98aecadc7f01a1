import 'server-only';
import { isAllowed, type Doer } from '@/lib/access/rules';
import { readHandOverFacts } from '@/lib/commissions/reads/agreement/hand-over';
import { handOverBody } from '@/lib/commissions/rules/agreement/hand-over';
import {
  readyHandOver,
  type HandOverToSign,
} from '@/lib/commissions/writes/agreement/hand-over-sign';
import { addHandOver } from '@/lib/commissions/writes/hand-over';
import { dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import type { WorkEntryOf } from '@/lib/installation/input/work/entry';
import type { OrderLoaded } from '@/lib/installation/reads/work/load-order';
import {
  handsOver,
  mayHaveItSigned,
  missingBeforeSigning,
} from '@/lib/installation/rules/work/before-signing';
import type { AnyWorkRefusal, WorkRefusal } from '@/lib/installation/rules/work/refusals';
import { heldTicks, tickedWithin, wordsSaid } from '@/lib/installation/rules/work/ticks';
import { setAfterCare } from '@/lib/installation/writes/care/set';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { openOrder } from './open-order';

type Signing = WorkEntryOf<'sign'>;
type Signed = { id: string; receiptNumber: number | null };

/**
 * Hands a piece over by the collector's signature on the work order, and sets the looks after it,
 * in one transaction. Only whoever goes along may have it signed, or whoever hands over anyway.
 *
 * @param device what their browser says it is
 * @returns refuses, in this order: a drawing that cannot be read, a key used for something else, no
 *   such appointment, called off, nothing to hand over, not of the crew, signed already, something
 *   still missing, other words above the name than in the book, a balance that wants the owner's
 *   word; then as a hand-over does
 */
export async function signOrder(
  doer: Doer,
  entry: Signing,
  device: string,
): Promise<Result<Signed, AnyWorkRefusal>> {
  const { signedName, signedCapacity, signedAs, drawing, parts, fixings, careGiven } = entry;
  const signature = { signedName, signedCapacity, signedAs, drawing };
  const ready = await readyHandOver({ parts, fixings, careGiven, signature }, device);
  if (!ready.ok) return ready;
  const sign = ready.value;
  invariant(sign, 'A work order is signed by somebody.');
  const command = { key: entry.id, name: 'signOrder', staffId: doer.actor.id, at: doer.at };
  return onceOnly<Signed, AnyWorkRefusal>({ ...command, input: entry }, async (tx) => {
    const open = await openOrder(tx, entry.appointmentId);
    if (!open.ok) return open;
    const refusal = await refusalToSign(tx, doer, { entry, order: open.value });
    return refusal ? refuse(refusal) : addSigned(tx, doer, { entry, order: open.value, sign });
  });
}

async function refusalToSign(
  tx: Tx,
  doer: Doer,
  { entry, order }: { entry: Signing; order: OrderLoaded },
): Promise<WorkRefusal | null> {
  const { kind, commissionId, handOver } = order;
  if (!handsOver(kind) || commissionId === null) return { code: 'nothing_to_hand_over' };
  if (!mayHaveItSigned(doer.actor, order.crewIds)) return { code: 'not_of_the_crew' };
  if (handOver) {
    const where = { id: handOver.recordedById };
    const by = await tx.staff.findUnique({ where, select: { name: true } });
    const { signedBy, at } = handOver;
    return { code: 'signed_already', signedBy, at, by: by?.name ?? 'somebody' };
  }
  const missing = missingBeforeSigning({
    ...order,
    weightG: order.facts.weightG,
    held: heldTicks(order.ticks),
  });
  if (missing.length > 0) return { code: 'still_missing', missing };
  return (await readWhatStands(tx, entry, commissionId)) ? null : { code: 'words_changed' };
}

/** Whether what stood above the name is what the book says. */
async function readWhatStands(tx: Tx, entry: Signing, commissionId: string): Promise<boolean> {
  const { signedName: takenBy, readOn: handedOn, parts, fixings, careGiven, remarks } = entry;
  const facts = await readHandOverFacts(tx, commissionId);
  const said = { takenBy, handedOn, parts, fixings, careGiven, remarks };
  return handOverBody({ ...facts, ...said }) === entry.read;
}

type ToSign = { entry: Signing; order: OrderLoaded; sign: HandOverToSign };

async function addSigned(
  tx: Tx,
  doer: Doer,
  { entry, order, sign }: ToSign,
): Promise<Result<Signed, AnyWorkRefusal>> {
  const { appointmentId, remarks, signedName: signedBy, readOn } = entry;
  const { commissionId, bookedAt } = order;
  invariant(commissionId, 'Only a commission is handed over.');
  const gallery = await getGallery(tx);
  const signedAt = tickedWithin(entry.at, { bookedAt, receivedAt: doer.at });
  const handedOn = await countsOn(tx, commissionId, dayOf(signedAt, gallery.timeZone));
  const handed = await addHandOver(tx, doer, {
    ...{ commissionId, signedBy, handedOn, remarks },
    evenIfOwed: wordsSaid(heldTicks(order.ticks), 'owner_word'),
    sign: { ...sign, readOn },
    byOrder: { appointmentId, signedAt },
  });
  if (!handed.ok) {
    // What is owed is not for everybody's eyes, and whose word it takes is the same for all.
    const isOwed = handed.refusal.code === 'balance_still_owed';
    return isOwed ? refuse({ code: 'owner_says_first', phone: phoneFor(doer, gallery) }) : handed;
  }
  await setAfterCare(tx, doer, { commissionId, handedOn, order });
  // The codes of their doors were for this day alone.
  await tx.appointment.update({ where: { id: appointmentId }, data: { codes: '' } });
  return ok({ id: entry.id, receiptNumber: handed.value.receiptNumber });
}

/** The day in the books: that of the signature, or of a payment that came in before it was sent. */
async function countsOn(tx: Tx, commissionId: string, signedOn: Day): Promise<Day> {
  const last = await tx.commissionPayment.findFirst({
    where: { commissionId },
    select: { receivedOn: true },
    orderBy: { receivedOn: 'desc' },
  });
  const paidOn = last ? dayFromDate(last.receivedOn) : signedOn;
  return paidOn > signedOn ? paidOn : signedOn;
}

/** The owner needs no number to call. */
function phoneFor({ actor }: Doer, gallery: { phone: string }): string {
  return isAllowed(actor.roles, 'commissions.hand_over') ? '' : gallery.phone;
}
