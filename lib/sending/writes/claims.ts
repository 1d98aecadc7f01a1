import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, dayOf } from '@/lib/dates/rules';
import { fileToKeep } from '@/lib/files/ready';
import { keepFile } from '@/lib/files/writes';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { ClaimEventInput, ClaimInput } from '@/lib/sending/input/claims';
import { claimEventWords, decideClaim, decideClaimEvent } from '@/lib/sending/rules/claims';
import { limitsOf } from '@/lib/sending/rules/limits';
import { carryOut, findForWriting, tell, type SendingAnswer } from './carry-out';
import { readyAtMost } from './pictures';

/** A claim, by its number and that of its shipment. */
export type Claimed = { number: number; claimNumber: number };

/** The most pictures of one claim. */
export const claimPicturesMost = 12;

/**
 * Writes damage down, with pictures and what is asked for it. The last days for telling and for
 * claiming are worked out now and kept with it.
 *
 * @returns refuses, in this order: too many pictures or one that cannot be kept, not allowed, a key
 *   used for something else, no such shipment, and what {@link decideClaim} refuses
 */
export async function openClaim(doer: Doer, input: ClaimInput): Promise<SendingAnswer<Claimed>> {
  const { requestKey, shipmentId, foundOn, words, asked } = input;
  const pictures = await readyAtMost(input.pictures, claimPicturesMost);
  if (!pictures.ok) return pictures;
  const hashes = pictures.value.map(({ sha256 }) => sha256);
  const said = { requestKey, shipmentId, foundOn, words, asked, hashes };
  return carryOut<Claimed>(doer, { name: 'openClaim', input: said }, async (tx) => {
    const found = await findForWriting(tx, doer, shipmentId);
    if (!found.ok) return found;
    const { shipment, today } = found.value;
    const decided = decideClaim(shipment.events, { foundOn, today });
    if (!decided.ok) return decided;
    const { reportBy, claimBy } = limitsOf(shipment.events, shipment.terms, { foundOn, today });
    const claimId = newId();
    const { number: claimNumber } = await tx.damageClaim.create({
      data: {
        ...{ id: claimId, shipmentId, words, askedCents: asked, foundOn: dateFromDay(foundOn) },
        ...{ reportByOn: dateFromDay(reportBy.byOn), claimByOn: dateFromDay(claimBy.byOn) },
        ...{ staffId: doer.actor.id, at: doer.at },
      },
      select: { number: true },
    });
    for (const [at, picture] of pictures.value.entries()) {
      const { id: fileId } = await keepFile(tx, fileToKeep(picture, doer.at));
      const data = { claimId, position: at + 1, fileId };
      await tx.claimPicture.create({ data, select: { claimId: true } });
    }
    const facts = { claim: claimNumber, foundOn, askedCents: asked, tellBy: reportBy.byOn };
    await tell(tx, doer, { shipment, did: 'wrote damage on the way down', facts });
    return ok({ number: shipment.number, claimNumber });
  });
}

/**
 * Writes down what came of a claim.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such claim, and
 *   what {@link decideClaimEvent} refuses
 */
export async function noteClaim(
  doer: Doer,
  input: ClaimEventInput,
): Promise<SendingAnswer<Claimed>> {
  const { claimId, kind, on, amount: amountCents, words } = input;
  return carryOut<Claimed>(doer, { name: 'noteClaim', input }, async (tx) => {
    const row = await tx.damageClaim.findUnique({
      where: { id: claimId },
      select: {
        ...{ number: true, foundOn: true },
        shipment: { select: { id: true, number: true, commissionId: true } },
        events: { orderBy: [{ at: 'asc' }, { id: 'asc' }], select: { kind: true, on: true } },
      },
    });
    if (!row) return refuse({ code: 'no_such_claim' });
    const events = row.events.map((event) => ({ ...event, on: dayFromDate(event.on) }));
    const today = dayOf(doer.at, (await getGallery(tx)).timeZone);
    const claim = { foundOn: dayFromDate(row.foundOn), events };
    const decided = decideClaimEvent(claim, { kind, on, amountCents }, today);
    if (!decided.ok) return decided;
    await tx.claimEvent.create({
      data: {
        ...{ claimId, kind, on: dateFromDay(on), amountCents, words },
        ...{ staffId: doer.actor.id, at: doer.at },
      },
      select: { id: true },
    });
    const { shipment } = row;
    const did = `noted of a claim: ${claimEventWords[kind]}`;
    await tell(tx, doer, { shipment, did, facts: { claim: row.number, on, amountCents } });
    return ok({ number: shipment.number, claimNumber: row.number });
  });
}
