import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { livingId } from '@/lib/collectors/reads/group';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { openPlace, shutPlace } from '@/lib/stock/writes/places';
import type { BeginWithGalleryInput, ChangeTermsInput, EndWithGalleryInput } from './input';
import type { ConsigneeRefusal } from './rules/refusals';

type Answer = { consigneeId: string };

/**
 * Begins with another gallery: a business of the address book gets its terms, and a place of its
 * own where our pieces stand.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, nobody with that id,
 *   somebody who is no business, terms that are there already, a name that a place has
 */
export async function beginWithGallery(
  doer: Doer,
  input: BeginWithGalleryInput,
): Promise<Result<Answer, ConsigneeRefusal>> {
  return command(doer, 'beginWithGallery', input, async (tx) => {
    const { collectorId, sinceOn, sharePercent, payDays, terms } = input;
    const who = collectorId === '' ? null : await findBusiness(tx, collectorId);
    if (!who) return refuse({ code: 'unknown_collector' });
    const { name } = who;
    if (who.kind !== 'business') return refuse({ code: 'not_a_business', name });
    if (who.consignee) return refuse({ code: 'has_terms_already', name });
    const taken = await tx.place.findFirst({
      where: { name: { equals: name, mode: 'insensitive' } },
      select: { id: true },
    });
    if (taken) return refuse({ code: 'name_taken', name });

    const placeId = await openPlace(tx, doer, { name, kind: 'consignee' });
    const consigneeId = newId();
    await tx.consignee.create({
      data: {
        ...{ id: consigneeId, collectorId: who.id, placeId, sharePercent, payDays, terms },
        sinceOn: dateFromDay(sinceOn),
      },
      select: { id: true },
    });
    const facts = { name, sharePercent, payDays };
    await audit(tx, doer, { did: 'began with another gallery', consigneeId, facts });
    return ok({ consigneeId });
  });
}

/**
 * Changes what was agreed with another gallery. Statements that were made keep theirs.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a gallery nobody
 *   knows, one with which it was ended
 */
export async function changeTerms(
  doer: Doer,
  input: ChangeTermsInput,
): Promise<Result<Answer, ConsigneeRefusal>> {
  return command(doer, 'changeTerms', input, async (tx) => {
    const { consigneeId, sharePercent, payDays, terms } = input;
    const known = await findConsignee(tx, consigneeId);
    if (!known.ok) return known;
    await tx.consignee.update({
      where: { id: consigneeId },
      data: { sharePercent, payDays, terms },
      select: { id: true },
    });
    const facts = { name: known.value.name, was: known.value.sharePercent, sharePercent, payDays };
    await audit(tx, doer, { did: 'changed the terms of another gallery', consigneeId, facts });
    return ok({ consigneeId });
  });
}

/**
 * Ends it with another gallery, once nothing of ours is there. What it owes stays owed.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a gallery nobody
 *   knows, one with which it was ended, pieces that are still there
 */
export async function endWithGallery(
  doer: Doer,
  input: EndWithGalleryInput & { endedOn: Day },
): Promise<Result<Answer, ConsigneeRefusal>> {
  return command(doer, 'endWithGallery', input, async (tx) => {
    const { consigneeId, endedOn } = input;
    const known = await findConsignee(tx, consigneeId);
    if (!known.ok) return known;
    const { name, placeId } = known.value;
    const there = await tx.stockLevel.aggregate({ where: { placeId }, _sum: { onHand: true } });
    const pieces = there._sum.onHand ?? 0;
    if (pieces > 0) return refuse({ code: 'pieces_still_there', name, pieces });
    const data = { endedOn: dateFromDay(endedOn) };
    await tx.consignee.update({ where: { id: consigneeId }, data, select: { id: true } });
    await shutPlace(tx, doer, { id: placeId, name });
    await audit(tx, doer, { did: 'ended it with another gallery', consigneeId, facts: { name } });
    return ok({ consigneeId });
  });
}

function command(
  doer: Doer,
  name: string,
  { requestKey: key, ...input }: { requestKey: string },
  work: (tx: Tx) => Promise<Result<Answer, ConsigneeRefusal>>,
): Promise<Result<Answer, ConsigneeRefusal>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return Promise.resolve(allowed);
  return onceOnly({ key, name, staffId: doer.actor.id, input, at: doer.at }, work);
}

async function findBusiness(tx: Tx, asked: string) {
  const id = await livingId(tx, asked);
  if (id === null) return null;
  return tx.collector.findUnique({
    where: { id },
    select: { id: true, name: true, kind: true, consignee: { select: { id: true } } },
  });
}

async function findConsignee(
  tx: Tx,
  id: string,
): Promise<Result<{ name: string; placeId: string; sharePercent: string }, ConsigneeRefusal>> {
  const row = await tx.consignee.findUnique({
    where: { id },
    select: {
      ...{ placeId: true, sharePercent: true, endedOn: true },
      collector: { select: { name: true } },
    },
  });
  if (!row) return refuse({ code: 'unknown_gallery' });
  const { placeId, collector } = row;
  if (row.endedOn) return refuse({ code: 'ended_already', name: collector.name });
  return ok({ name: collector.name, placeId, sharePercent: row.sharePercent.toString() });
}

async function audit(
  tx: Tx,
  doer: Doer,
  told: { did: string; consigneeId: string; facts: Record<string, string | number> },
): Promise<void> {
  const { did, consigneeId, facts } = told;
  await recordAudit(tx, doer, { did, subject: 'Consignee', subjectId: consigneeId, facts });
}
