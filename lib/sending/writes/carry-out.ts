import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { allow, type Doer, type NotAllowed, type Permission } from '@/lib/access/rules';
import { recordAudit, type Fact } from '@/lib/audit/writes';
import { dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { loadShipment, type ShipmentKept } from '@/lib/sending/reads/stored';
import type { SendingRefusal } from '@/lib/sending/rules/refusals';
import { isOpen } from '@/lib/sending/rules/way';

/** A command about sending: its name, what the form said with its key, and the right it takes. */
export type SendingCommand = {
  name: string;
  input: { requestKey: string };
  permission?: Permission;
};

/** What a command about sending answers. */
export type SendingAnswer<Answer> = Result<Answer, SendingRefusal | NotAllowed | KeyRefusal>;

/** Runs one command about sending: asks whether the doer may, then does it once. */
export async function carryOut<Answer extends Prisma.InputJsonValue>(
  doer: Doer,
  { name, input, permission }: SendingCommand,
  work: (tx: Tx) => Promise<Result<Answer, SendingRefusal>>,
): Promise<SendingAnswer<Answer>> {
  const allowed = allow(doer.actor, permission ?? 'sending.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  return onceOnly<Answer, SendingRefusal>(
    { key, name, staffId: doer.actor.id, input: said, at: doer.at },
    work,
  );
}

/** A shipment as a command finds it, with the gallery and the day it is there. */
export type FoundShipment = { shipment: ShipmentKept; gallery: Gallery; today: Day };

/**
 * Finds a shipment inside a transaction. Two that change one shipment at once wait for one another.
 *
 * @returns refuses `no_such_shipment`
 */
export async function findForWriting(
  tx: Tx,
  doer: Doer,
  shipmentId: string,
): Promise<Result<FoundShipment, SendingRefusal>> {
  const shipment = await loadShipment(tx, shipmentId);
  if (!shipment) return refuse({ code: 'no_such_shipment' });
  const gallery = await getGallery(tx);
  return ok({ shipment, gallery, today: dayOf(doer.at, gallery.timeZone) });
}

/**
 * Finds a shipment whose boxes may still be changed.
 *
 * @returns refuses, in this order: no such shipment, it has left
 */
export async function findOpen(
  tx: Tx,
  doer: Doer,
  shipmentId: string,
): Promise<Result<FoundShipment, SendingRefusal>> {
  const found = await findForWriting(tx, doer, shipmentId);
  if (!found.ok || isOpen(found.value.shipment.events)) return found;
  return refuse({ code: 'left_already' });
}

/**
 * Writes one line of a shipment's history; where it belongs to a commission, of that commission's
 * too. Joins the caller's transaction.
 */
export async function tell(
  tx: Tx,
  doer: Doer,
  line: {
    shipment: { id: string; number: number; commissionId: string | null };
    did: string;
    facts: Readonly<Record<string, Fact>>;
  },
): Promise<void> {
  const { shipment, did } = line;
  const facts = { shipment: shipment.number, ...line.facts };
  await recordAudit(tx, doer, { did, subject: 'Shipment', subjectId: shipment.id, facts });
  if (shipment.commissionId !== null) {
    const subjectId = shipment.commissionId;
    await recordAudit(tx, doer, { did, subject: 'Commission', subjectId, facts });
  }
}
