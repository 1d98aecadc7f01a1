import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { noteProof } from '@/lib/sales/writes/keep-proof';
import type { WayInput } from '@/lib/sending/input/way';
import type { ShipmentKept } from '@/lib/sending/reads/stored';
import type { SendingRefusal } from '@/lib/sending/rules/refusals';
import { dayOfEvent, decideWay, type WayFacts } from '@/lib/sending/rules/way';
import { eventWords } from '@/lib/sending/rules/words';
import { carryOut, findForWriting, tell, type SendingAnswer } from './carry-out';
import { fileToKeep, readyPictures, type ReadyPicture } from '@/lib/files/ready';

/** What happened to a shipment, by its number. */
export type OnItsWay = { number: number; kind: WayInput['kind'] };

/**
 * Writes down what became of a shipment: packed, sent, arrived, fetched, called off, or a note.
 *
 * Where it is a sale’s, the carrier’s slip on its receipt is kept with it.
 *
 * @returns refuses, in this order: a drawing that cannot be kept, not allowed, a key used for
 *   something else, and what {@link wayStep} refuses
 */
export async function noteWay(doer: Doer, input: WayInput): Promise<SendingAnswer<OnItsWay>> {
  const drawing = await readyDrawing(input);
  if (!drawing.ok) return drawing;
  const sha256 = drawing.value?.sha256 ?? null;
  const said = { ...input, ...('drawing' in input ? { drawing: sha256 } : {}) };
  return carryOut<OnItsWay>(doer, { name: 'noteWay', input: said }, (tx) =>
    wayStep(tx, doer, { ...input, picture: drawing.value }),
  );
}

async function readyDrawing(input: WayInput): Promise<Result<ReadyPicture | null, SendingRefusal>> {
  if (input.kind !== 'fetched' || input.signedAs !== 'drawn') return ok(null);
  const { drawing } = input;
  const bytes = Uint8Array.from(Buffer.from(drawing.slice(drawing.indexOf(',') + 1), 'base64'));
  const ready = await readyPictures([new Blob([bytes])]);
  const [picture] = ready.ok ? ready.value : [];
  return picture ? ok(picture) : refuse({ code: 'drawing_not_kept' });
}

/**
 * The step of {@link noteWay}: joins the caller's transaction, asks nobody for leave.
 *
 * @returns refuses, in this order: no such shipment, and what {@link decideWay} refuses
 */
export async function wayStep(
  tx: Tx,
  doer: Doer,
  said: WayInput & { picture: ReadyPicture | null },
): Promise<Result<OnItsWay, SendingRefusal>> {
  const found = await findForWriting(tx, doer, said.shipmentId);
  if (!found.ok) return found;
  const { shipment, today } = found.value;
  const { kind, on, words, picture } = said;
  const decided = decideWay(factsOf(shipment), kind, { on, today });
  if (!decided.ok) return decided;

  const file = picture && (await keepFile(tx, fileToKeep(picture, doer.at)));
  await tx.shipmentEvent.create({
    data: {
      ...{ shipmentId: shipment.id, kind, words, drawingId: file?.id ?? null },
      ...{ on: dateFromDay(on), tracking: trackingIn(said), takenBy: takenByIn(said) },
      ...{ staffId: doer.actor.id, at: doer.at },
    },
    select: { id: true },
  });
  await keepCarriersSlip(tx, doer, { shipment, said });
  const facts = { on, tracking: trackingIn(said) };
  await tell(tx, doer, { shipment, did: `noted a shipment: ${eventWords[kind]}`, facts });
  return ok({ number: shipment.number, kind });
}

function factsOf({ how, carrier, events, boxes, sale }: ShipmentKept): WayFacts {
  const empty = boxes.find(({ contents }) => contents.length === 0);
  return {
    ...{ how, carrier, events, boxes: boxes.length },
    ...{ emptyBox: empty?.position ?? null, soldOn: sale?.soldOn ?? null },
  };
}

function trackingIn(said: WayInput): string {
  return said.kind === 'sent' || said.kind === 'noted' ? said.tracking : '';
}

function takenByIn(said: WayInput): string {
  if (said.kind === 'arrived') return said.takenBy;
  if (said.kind !== 'fetched') return '';
  const { signedName, signedCapacity } = said;
  return signedCapacity === '' ? signedName : `${signedName}, for ${signedCapacity}`;
}

/** A sale that is sent has its carrier’s slip on the receipt, which tax asks for: it is kept along. */
async function keepCarriersSlip(
  tx: Tx,
  doer: Doer,
  { shipment, said }: { shipment: ShipmentKept; said: WayInput },
): Promise<void> {
  const { saleId, how, carrier, events } = shipment;
  if (saleId === null) return;
  const sentOn = said.kind === 'sent' ? said.on : dayOfEvent(events, 'sent');
  if (sentOn === null) return;
  const tracking = [...events.map((event) => event.tracking), trackingIn(said)];
  const arrivedOn: Day | null = said.kind === 'arrived' ? said.on : dayOfEvent(events, 'arrived');
  await noteProof(tx, doer, {
    ...{ saleId, sentOn, arrivedOn },
    carrier: how === 'carrier' ? carrier : 'our own van',
    number: tracking.findLast((each) => each !== '') ?? '',
  });
}
