import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf } from '@/lib/dates/rules';
import { postEntry } from '@/lib/ledger/writes';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { CountDrawerInput, PettyCashInput } from './input';
import { readInDrawer } from './reads';
import { decideCount, differenceWords, pettyEntry, type DrawerRefusal } from './rules';

/**
 * Writes down the count of the drawer, books what is short or over, and what goes to the bank.
 * What comes after it belongs to the next count.
 *
 * @returns the number of its sheet; refuses, in this order: not allowed, a key used for something
 *   else, a card's number typed, and what {@link decideCount} refuses
 */
export async function countDrawer(
  doer: Doer,
  { requestKey, ...input }: CountDrawerInput,
): Promise<Result<{ number: number }, DrawerRefusal>> {
  const allowed = allow(doer.actor, 'counter.close_day');
  if (!allowed.ok) return allowed;
  const command = { key: requestKey, name: 'countDrawer', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ number: number }, DrawerRefusal>({ ...command, input }, (tx) =>
    count(tx, doer, input),
  );
}

async function count(
  tx: Tx,
  doer: Doer,
  input: Omit<CountDrawerInput, 'requestKey'>,
): Promise<Result<{ number: number }, DrawerRefusal>> {
  if (looksLikeCardNumber(input.reason)) return refuse({ code: 'card_number_typed' });
  const { timeZone } = await getGallery(tx);
  const decided = decideCount(await readInDrawer(tx), input);
  if (!decided.ok) return decided;

  const { postings, differenceCents, ...kept } = decided.value;
  const [id, on] = [newId(), dayOf(doer.at, timeZone)];
  const memo = `The drawer was counted. ${differenceWords(differenceCents)}. ${kept.reason}`.trim();
  const entry = { on, at: doer.at, memo, paper: 'DrawerCount', paperId: id };
  const staffId = doer.actor.id;
  const entryId = postings.length > 0 ? await postEntry(tx, { ...entry, staffId, postings }) : null;
  const { pieces, cardTotalCents } = input;
  const { number } = await tx.drawerCount.create({
    data: {
      id,
      on: dateFromDay(on),
      ...kept,
      pieces,
      cardTotalCents,
      staffId,
      at: doer.at,
      entryId,
    },
    select: { number: true },
  });
  await recordAudit(tx, doer, {
    ...{ did: 'counted the drawer', subject: 'DrawerCount', subjectId: id },
    facts: { number, ...kept },
  });
  return ok({ number });
}

/**
 * Writes down cash that was taken out of the drawer for something small, or put in.
 *
 * @returns the number of its slip; refuses, in this order: not allowed, a key used for something
 *   else, a card's number typed, more than is in the drawer
 */
export async function notePettyCash(
  doer: Doer,
  { requestKey, ...input }: PettyCashInput,
): Promise<Result<{ number: number }, DrawerRefusal>> {
  const allowed = allow(doer.actor, 'counter.close_day');
  if (!allowed.ok) return allowed;
  const command = { key: requestKey, name: 'notePettyCash', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ number: number }, DrawerRefusal>({ ...command, input }, (tx) =>
    petty(tx, doer, input),
  );
}

async function petty(
  tx: Tx,
  doer: Doer,
  { way, amount, what }: Omit<PettyCashInput, 'requestKey'>,
): Promise<Result<{ number: number }, DrawerRefusal>> {
  if (looksLikeCardNumber(what)) return refuse({ code: 'card_number_typed' });
  const inDrawerCents = await readInDrawer(tx);
  if (way === 'out' && amount > inDrawerCents) {
    return refuse({ code: 'more_than_in_drawer', inDrawerCents });
  }
  const amountCents = way === 'out' ? amount : -amount;
  const { timeZone } = await getGallery(tx);
  const [id, on] = [newId(), dayOf(doer.at, timeZone)];
  const staffId = doer.actor.id;
  const memo = way === 'out' ? `Out of the drawer: ${what}` : `Into the drawer: ${what}`;
  const entry = { on, at: doer.at, memo, paper: 'PettyCash', paperId: id, staffId };
  const entryId = await postEntry(tx, { ...entry, postings: pettyEntry(amountCents) });
  const { number } = await tx.pettyCash.create({
    data: { id, amountCents, what, on: dateFromDay(on), staffId, at: doer.at, entryId },
    select: { number: true },
  });
  const did = way === 'out' ? 'took small cash out' : 'put small cash in';
  const facts = { number, what, amountCents };
  await recordAudit(tx, doer, { did, subject: 'PettyCash', subjectId: id, facts });
  return ok({ number });
}
