import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type {
  BoxInput,
  ProposeBoxesInput,
  RemoveBoxInput,
  WeighBoxesInput,
} from '@/lib/sending/input/boxes';
import { countParts, type BoxKept, type ShipmentKept } from '@/lib/sending/reads/stored';
import {
  boxesMost,
  partFault,
  proposeFor,
  reckonedWeightG,
  type BoxToKeep,
} from '@/lib/sending/rules/boxes';
import type { SendingRefusal } from '@/lib/sending/rules/refusals';
import { readContents, type ContentTold } from '@/lib/sending/rules/typed/contents';
import { readPieces } from '@/lib/sending/rules/typed/pieces';
import type { LengthSystem } from '@/lib/units/rules';
import { carryOut, findOpen, tell, type SendingAnswer } from './carry-out';

/** How many boxes a shipment has now. */
export type Boxed = { number: number; boxes: number };

/**
 * Makes boxes and crates for what is to go, in the place of those that were there.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, and what
 *   {@link proposeStep} refuses
 */
export async function proposeShipmentBoxes(
  doer: Doer,
  input: ProposeBoxesInput,
): Promise<SendingAnswer<Boxed>> {
  return carryOut<Boxed>(doer, { name: 'proposeShipmentBoxes', input }, (tx) =>
    proposeStep(tx, doer, input),
  );
}

/**
 * The step of {@link proposeShipmentBoxes}: joins the caller's transaction, asks nobody for leave.
 *
 * @returns refuses, in this order: no such shipment, it has left, a list that does not read, a part
 *   that the drawing does not have, too many boxes
 */
export async function proposeStep(
  tx: Tx,
  doer: Doer,
  asked: Omit<ProposeBoxesInput, 'requestKey'>,
): Promise<Result<Boxed, SendingRefusal>> {
  const found = await findOpen(tx, doer, asked.shipmentId);
  if (!found.ok) return found;
  const { shipment, gallery } = found.value;
  const pieces = readPieces(asked.pieces, gallery.lengthUnit);
  if (!pieces.ok) return pieces;
  const fault = partFault(pieces.value, [], await countParts(tx, shipment.commissionId));
  if (fault) return refuse(fault);
  const proposed = proposeFor(pieces.value);
  if (!proposed.ok) return proposed;

  await tx.crate.deleteMany({ where: { shipmentId: shipment.id } });
  for (const [at, box] of proposed.value.entries()) {
    await keepBox(tx, { shipmentId: shipment.id, position: at + 1, box, scaleG: null, note: '' });
  }
  const boxes = proposed.value.length;
  await tell(tx, doer, { shipment, did: 'had boxes proposed for a shipment', facts: { boxes } });
  return ok({ number: shipment.number, boxes });
}

type ToKeep = {
  shipmentId: string;
  position: number;
  box: BoxToKeep;
  scaleG: number | null;
  note: string;
};

async function keepBox(tx: Tx, { box, ...row }: ToKeep): Promise<void> {
  const { contents, ...measures } = box;
  const id = newId();
  await tx.crate.create({ data: { id, ...row, ...measures }, select: { id: true } });
  await tx.crateContent.createMany({ data: contentRows(id, contents) });
}

/** Contents as rows of a box, in their order. */
export function contentRows(crateId: string, contents: readonly ContentTold[]) {
  return contents.map(({ words, pieces, partNumber, weightG, layer }, at) => ({
    ...{ crateId, position: at + 1, words, pieces, partNumber, weightG, layer },
  }));
}

/**
 * Keeps a box as somebody measured and filled it: a new one, or one that is there.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, and what
 *   {@link boxStep} refuses
 */
export async function putBox(doer: Doer, input: BoxInput): Promise<SendingAnswer<Boxed>> {
  return carryOut<Boxed>(doer, { name: 'putBox', input }, (tx) => boxStep(tx, doer, input));
}

/**
 * The step of {@link putBox}: joins the caller's transaction, asks nobody for leave.
 *
 * @returns refuses, in this order: no such shipment, it has left, no such box, contents that do not
 *   read, a part that lies elsewhere or is not on the drawing, too many boxes
 */
export async function boxStep(
  tx: Tx,
  doer: Doer,
  asked: Omit<BoxInput, 'requestKey'>,
): Promise<Result<Boxed, SendingRefusal>> {
  const found = await findOpen(tx, doer, asked.shipmentId);
  if (!found.ok) return found;
  const { shipment, gallery } = found.value;
  const parts = await countParts(tx, shipment.commissionId);
  const decided = decideBox(shipment, asked, { parts, unit: gallery.lengthUnit });
  if (!decided.ok) return decided;

  const { standing, position, box } = decided.value;
  const { scaleG, note } = asked;
  if (standing) await tx.crate.delete({ where: { id: standing.id }, select: { id: true } });
  await keepBox(tx, { shipmentId: shipment.id, position, box, scaleG, note });
  const did = standing ? 'changed a box of a shipment' : 'added a box to a shipment';
  await tell(tx, doer, { shipment, did, facts: { box: position, scaleG } });
  const boxes = shipment.boxes.length + (standing ? 0 : 1);
  return ok({ number: shipment.number, boxes });
}

type Decided = { standing: BoxKept | undefined; position: number; box: BoxToKeep };

function decideBox(
  shipment: ShipmentKept,
  asked: Omit<BoxInput, 'requestKey'>,
  { parts, unit }: { parts: number | null; unit: LengthSystem },
): Result<Decided, SendingRefusal> {
  const { crateId, kind, lengthUm, widthUm, heightUm, paddingUm } = asked;
  const { boxes } = shipment;
  const standing = boxes.find(({ id }) => id === crateId);
  if (crateId !== null && !standing) return refuse({ code: 'no_such_box' });
  const contents = readContents(asked.contents, unit);
  if (!contents.ok) return contents;
  const fault = partFault(contents.value, partsElsewhere(shipment, crateId), parts);
  if (fault) return refuse(fault);
  if (!standing && boxes.length >= boxesMost) {
    return refuse({ code: 'too_many_boxes', boxes: boxesMost + 1 });
  }
  const measures = { kind, lengthUm, widthUm, heightUm, paddingUm };
  const reckonedG = reckonedWeightG(measures, contents.value);
  const position = standing?.position ?? (boxes.at(-1)?.position ?? 0) + 1;
  return ok({ standing, position, box: { ...measures, reckonedG, contents: contents.value } });
}

/** The parts that lie in other boxes of a shipment, and in which. */
export function partsElsewhere(
  { boxes }: ShipmentKept,
  crateId: string | null,
): { partNumber: number; box: number }[] {
  return boxes
    .filter(({ id }) => id !== crateId)
    .flatMap(({ position, contents }) =>
      contents.flatMap(({ partNumber }) =>
        partNumber === null ? [] : [{ partNumber, box: position }],
      ),
    );
}

/**
 * Takes a box away with what is in it; the boxes behind it move up.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such shipment, it
 *   has left, no such box
 */
export async function removeBox(doer: Doer, input: RemoveBoxInput): Promise<SendingAnswer<Boxed>> {
  const { shipmentId, crateId } = input;
  return carryOut<Boxed>(doer, { name: 'removeBox', input }, async (tx) => {
    const found = await findOpen(tx, doer, shipmentId);
    if (!found.ok) return found;
    const { shipment } = found.value;
    const gone = shipment.boxes.find(({ id }) => id === crateId);
    if (!gone) return refuse({ code: 'no_such_box' });
    await tx.crate.delete({ where: { id: crateId }, select: { id: true } });
    await moveUp(tx, shipment, gone.position);
    await tell(tx, doer, {
      ...{ shipment, did: 'took a box out of a shipment' },
      facts: { box: gone.position },
    });
    return ok({ number: shipment.number, boxes: shipment.boxes.length - 1 });
  });
}

/** Closes the gap that a box left. */
export async function moveUp(tx: Tx, { boxes }: ShipmentKept, gap: number): Promise<void> {
  for (const { id, position } of boxes) {
    if (position <= gap) continue;
    await tx.crate.update({
      where: { id },
      data: { position: position - 1 },
      select: { id: true },
    });
  }
}

/**
 * Writes down what the scale says of boxes, by their number; an empty field takes a weight back.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such shipment, it
 *   has left, no such box
 */
export async function weighBoxes(
  doer: Doer,
  input: WeighBoxesInput,
): Promise<SendingAnswer<Boxed>> {
  const { shipmentId, scale } = input;
  return carryOut<Boxed>(doer, { name: 'weighBoxes', input }, async (tx) => {
    const found = await findOpen(tx, doer, shipmentId);
    if (!found.ok) return found;
    const { shipment } = found.value;
    for (const [position, scaleG] of Object.entries(scale)) {
      const box = shipment.boxes.find((each) => String(each.position) === position);
      if (!box) return refuse({ code: 'no_such_box' });
      if (box.scaleG === scaleG) continue;
      const where = { id: box.id };
      await tx.crate.update({ where, data: { scaleG }, select: { id: true } });
    }
    await tell(tx, doer, { shipment, did: 'put a shipment on the scale', facts: scale });
    return ok({ number: shipment.number, boxes: shipment.boxes.length });
  });
}
