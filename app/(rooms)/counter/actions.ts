'use server';
import { revalidatePath } from 'next/cache';
import { redirect, RedirectType } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import type { FormState } from '@/app/ui/form-state';
import type { Doer } from '@/lib/access/rules';
import {
  addLineInput,
  changeInput,
  countInput,
  paymentLineInput,
  scanInput,
  throwInput,
  touchInput,
} from '@/lib/counter/input';
import { payInput } from '@/lib/counter/input/pay';
import { findCommissionId, findSlipBeingWritten } from '@/lib/counter/reads';
import { findAtCounter } from '@/lib/counter/reads/find';
import type { AnyCounterRefusal } from '@/lib/counter/rules/refusals';
import type { LineToPut } from '@/lib/counter/rules/slip';
import {
  changeOnSlip,
  putOnSlip,
  sellSlip,
  throwSlipAway,
  type ToChange,
} from '@/lib/counter/writes';
import { counterHref } from './address';
import { whyNotSold } from './why-not-sold';

/** What was scanned, or typed and sent: a whole code goes onto the slip, letters find. */
export const scan = formAction('counter.sell', scanInput, async (doer, input) => {
  const { requestKey, slipId, find, here } = input;
  const written = await findSlipBeingWritten(doer.actor, slipId);
  const openSlipId = written?.slip.id ?? null;
  const where = { placeId: written?.slip.placeId ?? null, at: doer.at };
  const found = await findAtCounter(doer.actor, find, where);
  if (found.kind === 'set') {
    const line = { kind: 'set', setId: found.set.setId, quantity: 1 } as const;
    return putOn(doer, { requestKey, slipId, line }, here);
  }
  if (found.kind !== 'exactly') return goTo(openSlipId, { find }, here);
  const { piece, number } = found;
  if (piece.onHand <= (written?.taken(piece.id) ?? 0)) {
    return goTo(openSlipId, { short: piece.code }, here);
  }
  const numbers = number === null ? {} : { numbers: [number] };
  const line = { kind: 'piece', skuId: piece.id, quantity: 1, ...numbers } as const;
  return putOn(doer, { requestKey, slipId, line }, here);
});

/** A piece or a set that was touched goes onto the slip. */
export const touch = formAction('counter.sell', touchInput, (doer, input) => putOn(doer, input));

/** Something without a tag goes onto the slip: freight, a voucher, what has no number. */
export const addLine = formAction('counter.sell', addLineInput, (doer, input) =>
  putOn(doer, input),
);

/** A payment for a commission goes onto the slip. */
export const addPaymentLine = formAction('counter.sell', paymentLineInput, async (doer, input) => {
  const { commission: number, amount: cents, ...slip } = input;
  const commissionId = await findCommissionId(doer.actor, number);
  if (commissionId === null) {
    const refusal = { code: 'unknown_commission_number', number } as const;
    return refused(await whyNotSold(refusal, 'commission'));
  }
  return putOn(doer, { ...slip, line: { kind: 'instalment', commissionId, cents } });
});

/** One more of a line, one less, or the line off the slip. */
export const changeCount = formAction('counter.sell', countInput, (doer, input) =>
  change(doer, input),
);

/** Anything else that is changed on a slip. */
export const changeTheSlip = formAction('counter.sell', changeInput, (doer, input) =>
  change(doer, input),
);

/** Throws a slip away that was never sold. */
export const throwAway = formAction('counter.sell', throwInput, async (doer, { slipId }) => {
  const thrown = await throwSlipAway(doer, slipId);
  if (!thrown.ok) return refused(await whyNotSold(thrown.refusal));
  revalidatePath('/counter', 'layout');
  redirect('/counter/aside', RedirectType.replace);
});

/** Takes the money for the slip; leads back to the counter, where the change stands. */
export const sell = formAction('counter.sell', payInput, async (doer, input) => {
  const sold = await sellSlip(doer, input);
  if (!sold.ok) return told(sold.refusal, input.slipId);
  revalidatePath('/', 'layout');
  redirect(`/counter?sold=${sold.value.number}`);
});

type Put = { requestKey: string; slipId: string; line: LineToPut };

async function putOn(
  doer: Doer,
  { requestKey, slipId, line }: Put,
  here?: '1',
): Promise<FormState> {
  const put = await putOnSlip(doer, { requestKey, slipId, line });
  if (!put.ok) return told(put.refusal, slipId);
  return goTo(put.value.slipId, {}, here);
}

async function change(doer: Doer, input: ToChange): Promise<FormState> {
  const changed = await changeOnSlip(doer, input);
  if (!changed.ok) return told(changed.refusal, input.slipId);
  const { does } = input.change;
  const isAside = does === 'aside' && input.change.asideAs !== null;
  return goTo(isAside ? null : changed.value.slipId);
}

/** A slip that is not as it was shown is shown as it is now; anything else is told in place. */
async function told(refusal: AnyCounterRefusal, slipId: string): Promise<FormState> {
  if (refusal.code === 'slip_changed_meanwhile') return goTo(slipId, { told: 'changed' });
  return refused(await whyNotSold(refusal));
}

/**
 * Leads to the slip. With `here`, a page that is open goes there by itself and keeps what is being
 * scanned meanwhile.
 */
function goTo(
  slipId: string | null,
  more: Readonly<Record<string, string>> = {},
  here?: '1',
): FormState {
  revalidatePath('/counter');
  const href = counterHref(slipId, more);
  if (here) return { kind: 'done', message: '', href };
  redirect(href, RedirectType.replace);
}
