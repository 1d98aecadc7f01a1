import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import type { Actor, Doer } from '@/lib/access/rules';
import { logCommissionInput, type LogCommissionInput } from '@/lib/commissions/input/request';
import type { PaymentKind } from '@/lib/commissions/rules/words';
import { agree } from '@/lib/commissions/writes/agreement';
import { takePayment } from '@/lib/commissions/writes/money';
import { openCommissionJob } from '@/lib/commissions/writes/making';
import { logCommission } from '@/lib/commissions/writes/request';
import { approve } from '@/lib/commissions/writes/colours/approve';
import { showColourTile, showSketch, type Shown } from '@/lib/commissions/writes/colours/show';
import type { Day } from '@/lib/dates/rules';
import type { Result } from '@/lib/platform/result';
import type { OpenGallery } from '@/tests/database/sales/open-gallery';

/** The first day of these stories at the gallery, three in the afternoon. */
export function dayAt(day: Day): Date {
  return new Date(`${day}T23:00:00Z`);
}

/** Somebody doing something on a day. */
export function on(actor: Actor, day: Day): Doer {
  return { actor, at: dayAt(day) };
}

/** The value of what must not be refused here. */
export function done<Value>(result: Result<Value, { code: string }>): Value {
  if (!result.ok) throw new Error(`This was not to be refused: ${result.refusal.code}`);
  return result.value;
}

/** A small picture of one colour; another number, another picture. */
export async function aPicture(shade: number): Promise<Blob> {
  const background = { r: shade % 256, g: 120, b: 90 };
  const bytes = await sharp({ create: { width: 40, height: 30, channels: 3, background } })
    .png()
    .toBuffer();
  return new Blob([Uint8Array.from(bytes)]);
}

/** A request as the form sends it, for somebody new. */
export function aRequest(fields: Record<string, unknown> = {}): LogCommissionInput {
  return logCommissionInput.parse({
    requestKey: randomUUID(),
    title: 'Herons for the stair',
    newName: 'Marit Oland',
    ...fields,
  });
}

/** A commission that was asked for, and nothing more. */
export async function asked(actor: Actor, day: Day, fields: Record<string, unknown> = {}) {
  return done(await logCommission(on(actor, day), aRequest(fields)));
}

/** Agrees for a commission on a day. */
export async function agreed(
  gallery: OpenGallery,
  what: { commissionId: string; day: Day; priceCents: bigint; depositCents: bigint },
) {
  const { commissionId, day, priceCents, depositCents } = what;
  return done(
    await agree(on(gallery.owner, day), {
      ...{ requestKey: randomUUID(), commissionId, priceCents, taxPlaceId: gallery.taxPlaceId },
      deposit: { as: 'amount', amountCents: depositCents },
      promisedOn: null,
      agreedOn: day,
      agreedBy: 'Marit Oland',
    }),
  );
}

/** Shows a sketch of a shade. */
export async function sketched(actor: Actor, commissionId: string, day: Day, shade = 40) {
  const picture = await aPicture(shade);
  const shown = { requestKey: randomUUID(), commissionId, picture, note: '', shownOn: day };
  return done(await showSketch(on(actor, day), shown));
}

/** Shows a colour tile of a shade. */
export async function tiled(actor: Actor, commissionId: string, day: Day, shade = 200) {
  const picture = await aPicture(shade);
  const glazes = 'celadon, three coats, cone 6';
  const shown = { requestKey: randomUUID(), commissionId, picture, glazes, shownOn: day };
  return done(await showColourTile(on(actor, day), shown));
}

/** A yes as the form sends it. */
export function aYes(
  commissionId: string,
  what: 'sketch' | 'colour_tile',
  shown: Shown,
  approvedOn: Day,
) {
  return {
    ...{ requestKey: randomUUID(), commissionId, what, approvedOn },
    shownId: shown.id,
    contentSha256: shown.contentSha256,
    approvedBy: 'Marit Oland',
    how: 'signed_card' as const,
  };
}

/** A payment as the form sends it. */
export function aPayment(commissionId: string, amountCents: bigint, kind: PaymentKind = 'card') {
  return {
    ...{ requestKey: randomUUID(), commissionId, amountCents, kind },
    instalmentId: null,
    reference: '',
    paidBy: 'Marit Oland',
  };
}

/** A commission with its agreement, both yeses, its deposit and its job, ready for the clay. */
export async function readyForClay(gallery: OpenGallery, day: Day) {
  const { maker, owner } = gallery;
  const { commissionId, number } = await asked(maker, day);
  await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 500_000n });
  const sketch = await sketched(maker, commissionId, day);
  const tile = await tiled(maker, commissionId, day);
  done(await approve(on(maker, day), aYes(commissionId, 'sketch', sketch, day)));
  done(await approve(on(maker, day), aYes(commissionId, 'colour_tile', tile, day)));
  done(await takePayment(on(owner, day), aPayment(commissionId, 500_000n)));
  const job = done(
    await openCommissionJob(on(maker, day), {
      ...{ requestKey: randomUUID(), commissionId, pieces: 12, neededOn: null },
      technique: 'slab_relief',
    }),
  );
  return { commissionId, number, job, sketch, tile };
}
