import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { newId } from '@/lib/platform/new-id';
import type { MoveContentsInput } from '@/lib/sending/input/boxes';
import type { BoxKept, ContentKept, ShipmentKept } from '@/lib/sending/reads/stored';
import { boxesMost, reckonedWeightG } from '@/lib/sending/rules/boxes';
import type { SendingRefusal } from '@/lib/sending/rules/refusals';
import { contentRows, type Boxed } from './boxes';
import { carryOut, findOpen, tell, type SendingAnswer } from './carry-out';

/**
 * Puts some of what is in a box into another, on top of what lies there, or into a new one of the
 * same make. Both have to go on the scale again.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such shipment, it
 *   has left, no such box, nothing chosen or something that is there no more, too many boxes, a box
 *   that would be left empty
 */
export async function moveContents(
  doer: Doer,
  input: MoveContentsInput,
): Promise<SendingAnswer<Boxed>> {
  const { shipmentId, fromId, contentIds, toId } = input;
  return carryOut<Boxed>(doer, { name: 'moveContents', input }, async (tx) => {
    const found = await findOpen(tx, doer, shipmentId);
    if (!found.ok) return found;
    const { shipment } = found.value;
    const decided = decideMove(shipment, { fromId, contentIds, toId });
    if (!decided.ok) return decided;
    const { from, to, stays, goes } = decided.value;
    const toPosition = to?.position ?? (shipment.boxes.at(-1)?.position ?? 0) + 1;
    await refill(tx, from, stays);
    if (to) await refill(tx, to, onTop(to.contents, goes));
    else await addLike(tx, { shipment, like: from, position: toPosition }, onTop([], goes));
    await tell(tx, doer, {
      ...{ shipment, did: 'put things into another box of a shipment' },
      facts: { from: from.position, to: toPosition, lines: goes.length },
    });
    return ok({ number: shipment.number, boxes: shipment.boxes.length + (to ? 0 : 1) });
  });
}

type Move = {
  from: BoxKept;
  /** Null for a new one. */
  to: BoxKept | null;
  stays: readonly ContentKept[];
  goes: readonly ContentKept[];
};

function decideMove(
  { boxes }: ShipmentKept,
  asked: Pick<MoveContentsInput, 'fromId' | 'contentIds' | 'toId'>,
): Result<Move, SendingRefusal> {
  const from = boxes.find(({ id }) => id === asked.fromId);
  const to = boxes.find(({ id }) => id === asked.toId) ?? null;
  const isNowhere = asked.toId !== 'new' && (to === null || to === from);
  if (!from || isNowhere) return refuse({ code: 'no_such_box' });
  const goes = from.contents.filter(({ id }) => asked.contentIds.includes(id));
  const isGone = goes.length === 0 || goes.length < new Set(asked.contentIds).size;
  if (isGone) return refuse({ code: 'changed_meanwhile' });
  if (to === null && boxes.length >= boxesMost) {
    return refuse({ code: 'too_many_boxes', boxes: boxesMost + 1 });
  }
  const stays = from.contents.filter((content) => !goes.includes(content));
  if (stays.length === 0) return refuse({ code: 'nothing_in_it' });
  return ok({ from, to, stays, goes });
}

/** What comes lies in a layer of its own, on top. */
function onTop(lying: readonly ContentKept[], coming: readonly ContentKept[]): ContentKept[] {
  const top = Math.max(0, ...lying.map(({ layer }) => layer));
  return [...lying, ...coming.map((content) => ({ ...content, layer: top + 1 }))];
}

async function refill(tx: Tx, box: BoxKept, contents: readonly ContentKept[]): Promise<void> {
  await tx.crateContent.deleteMany({ where: { crateId: box.id } });
  await tx.crateContent.createMany({ data: contentRows(box.id, contents) });
  const data = { reckonedG: reckonedWeightG(box, contents), scaleG: null };
  await tx.crate.update({ where: { id: box.id }, data, select: { id: true } });
}

async function addLike(
  tx: Tx,
  { shipment, like, position }: { shipment: ShipmentKept; like: BoxKept; position: number },
  contents: readonly ContentKept[],
): Promise<void> {
  const { kind, lengthUm, widthUm, heightUm, paddingUm } = like;
  const id = newId();
  const reckonedG = reckonedWeightG(like, contents);
  await tx.crate.create({
    data: {
      ...{ id, shipmentId: shipment.id, position, kind, lengthUm, widthUm, heightUm },
      ...{ paddingUm, reckonedG },
    },
    select: { id: true },
  });
  await tx.crateContent.createMany({ data: contentRows(id, contents) });
}
