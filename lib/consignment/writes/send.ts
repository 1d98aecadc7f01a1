import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { ReadyPiece } from '@/lib/stock/rules/moves/move';
import { recordMove } from '@/lib/stock/writes/move';
import type { ConsignInput } from '../input';
import { readRetailOn, readRetailThere } from '../reads/retail';
import type { SendRefusal } from '../rules/refusals';

/** A consignment note that was written, by its number. */
export type NoteAnswer = { noteId: string; number: number; pieces: number };

/**
 * Sends what lies ready to another gallery, with a consignment note: pieces move to its place at
 * the retail prices of the day, and stay ours until they are paid.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a gallery nobody
 *   knows, one with which it was ended, and then what a move refuses, seconds among it
 */
export async function sendToGallery(
  doer: Doer,
  input: ConsignInput,
): Promise<Result<NoteAnswer, SendRefusal>> {
  return consign(doer, 'sendToGallery', input, false);
}

/**
 * Takes pieces back from another gallery, with a note: they move from its place to one of ours.
 *
 * @returns refuses as {@link sendToGallery}
 */
export async function bringBackFromGallery(
  doer: Doer,
  input: ConsignInput,
): Promise<Result<NoteAnswer, SendRefusal>> {
  return consign(doer, 'bringBackFromGallery', input, true);
}

async function consign(
  doer: Doer,
  name: string,
  { requestKey: key, ...input }: ConsignInput,
  isBack: boolean,
): Promise<Result<NoteAnswer, SendRefusal>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const command = { key, name, staffId: doer.actor.id, input, at: doer.at };
  return onceOnly<NoteAnswer, SendRefusal>(command, async (tx) => {
    const { timeZone } = await getGallery(tx);
    const movedOn = dayOf(doer.at, timeZone);
    return recordNote(tx, doer, { ...input, isBack, movedOn });
  });
}

type NoteToRecord = Omit<ConsignInput, 'requestKey'> & { isBack: boolean; movedOn: Day };

async function recordNote(
  tx: Tx,
  doer: Doer,
  note: NoteToRecord,
): Promise<Result<NoteAnswer, SendRefusal>> {
  const { consigneeId, placeId: ownId, ready, isBack, movedOn } = note;
  const consignee = await tx.consignee.findUnique({
    where: { id: consigneeId },
    select: { placeId: true, endedOn: true, collector: { select: { name: true } } },
  });
  if (!consignee) return refuse({ code: 'unknown_gallery' });
  const { name } = consignee.collector;
  if (consignee.endedOn) return refuse({ code: 'ended', name });
  const [fromId, toId] = isBack ? [consignee.placeId, ownId] : [ownId, consignee.placeId];
  const moved = await recordMove(tx, doer, { fromId, toId, ready, note: note.note, movedOn });
  if (!moved.ok) return moved;

  const noteId = newId();
  const { transferId, pieces } = moved.value;
  const lines = await linesOf(tx, { consigneeId, ready, isBack, on: movedOn });
  const { number } = await tx.consignmentNote.create({
    data: {
      ...{ id: noteId, consigneeId, transferId, isBack, at: doer.at },
      lines: { createMany: { data: lines } },
    },
    select: { number: true },
  });
  const did = isBack ? 'took pieces back from another gallery' : 'sent pieces to another gallery';
  const facts = { number, pieces, gallery: name };
  await recordAudit(tx, doer, { did, subject: 'ConsignmentNote', subjectId: noteId, facts });
  return ok({ noteId, number, pieces });
}

/** On its way out a piece has the price of the day; on its way back the one it went out with. */
async function linesOf(
  tx: Tx,
  asked: { consigneeId: string; ready: readonly ReadyPiece[]; isBack: boolean; on: Day },
) {
  const { consigneeId, ready, isBack, on } = asked;
  const codes = ready.map((piece) => piece.sku);
  const today = await readRetailOn(tx, { codes, on });
  const before = isBack ? await readRetailThere(tx, { consigneeId }) : new Map<string, bigint>();
  return ready.map(({ sku, quantity, number }, at) => {
    const piece = today.get(sku);
    invariant(piece, 'What moved is in the catalogue.');
    const retailCents = before.get(piece.skuId) ?? piece.retailCents;
    const { skuId } = piece;
    return { position: at + 1, skuId, quantity, editionNumber: number, retailCents };
  });
}
