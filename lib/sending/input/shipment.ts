import { z } from 'zod';
import { centsInput } from '@/lib/money/input';

const shortText = (most: number) =>
  z.string().trim().max(most, `At most ${most} characters, please.`).prefault('');
const noId = z.union([z.uuid(), z.literal('').transform(() => null)]).prefault('');

const whereTo = {
  how: z.enum(['carrier', 'by_us', 'fetched'], { error: 'Choose how it gets there.' }),
  carrierRuleId: noId,
  carrier: shortText(80),
  toName: shortText(120),
  toAddress: shortText(400),
  toPhone: shortText(40),
  insuredCents: centsInput
    .refine((cents) => cents <= 100_000_000_00n, 'That is more than can be written here.')
    .prefault('0'),
  insuredBy: shortText(120),
  note: shortText(1_000),
};

/** The form that begins a shipment: of a commission, of a sale that is sent, or to a person. */
export const startShipmentInput = z.object({
  requestKey: z.uuid(),
  commissionId: noId,
  saleNumber: z
    .union([
      z.literal('').transform(() => null),
      z
        .string()
        .regex(/^[1-9]\d{0,8}$/)
        .transform(Number),
    ])
    .prefault(''),
  collectorId: noId,
  ...whereTo,
});

/** The form that changes how and where to something goes, before it leaves. */
export const changeShipmentInput = z.object({
  requestKey: z.uuid(),
  shipmentId: z.uuid(),
  ...whereTo,
});

/** The number of a shipment or a claim in an address. */
export const shipmentNumberInput = z
  .string()
  .regex(/^[1-9]\d{0,8}$/)
  .transform(Number);

/** See {@link startShipmentInput}. */
export type StartShipmentInput = z.output<typeof startShipmentInput>;
/** See {@link changeShipmentInput}. */
export type ChangeShipmentInput = z.output<typeof changeShipmentInput>;
