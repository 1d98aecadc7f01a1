import { notFound } from 'next/navigation';
import type { Actor } from '@/lib/access/rules';
import { shipmentNumberInput } from '@/lib/sending/input/shipment';
import { findShipment, type ShipmentTold } from '@/lib/sending/reads/shipments';

/** The address of a shipment’s pages. */
export type ShipmentAddress<More extends object = object> = Readonly<{
  params: Promise<{ number: string } & More>;
}>;

/** The shipment that an address names; shows "not here" when there is none. */
export async function readShipmentOf(
  actor: Actor,
  params: Promise<{ number: string }>,
): Promise<ShipmentTold> {
  const number = shipmentNumberInput.safeParse((await params).number);
  const shipment = number.success ? await findShipment(actor, number.data) : null;
  return shipment ?? notFound();
}

/** What a shipment is called on its pages: `Shipment 12`. */
export function shipmentName({ number }: { number: number }): string {
  return `Shipment ${number}`;
}
