import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import type { ToStrike } from './card';

/** Strikes names, telephones and free words out of papers that may change; figures and days stay. */
export async function strikePapers(tx: Tx, doer: Doer, who: ToStrike): Promise<void> {
  const where = { collectorId: { in: [...who.ids] } };
  const named = { forWhom: who.erasedName, phone: '', note: '' };
  await tx.hold.updateMany({ where, data: named });
  await tx.waiting.updateMany({ where, data: named });
  await tx.waiting.updateMany({
    where: { ...where, endedAt: null },
    data: { endedAt: doer.at },
  });
  await strikeUnderNameAlone(tx, who);
  await tx.onApproval.updateMany({ where, data: { condition: '', security: '' } });
  await tx.layaway.updateMany({ where, data: { endedWhy: '' } });
  const nowhere = { toName: who.erasedName, toAddress: '', toPhone: '', insuredBy: '', note: '' };
  await tx.shipment.updateMany({ where, data: nowhere });
  await tx.specialOrder.updateMany({ where, data: { wish: '', sendTo: '', endedWhy: '' } });
  await tx.wholesaleOrder.updateMany({
    where,
    data: { theirNumber: '', terms: '', endedWhy: '' },
  });
  await tx.townPromise.deleteMany({ where });
  await tx.credit.updateMany({ where, data: { note: '' } });
  // What was sold is the sale's; the slip it was written on has served its time.
  await tx.slip.deleteMany({ where });
  await tx.toCollect.updateMany({
    where: { saleLine: { sale: where } },
    data: { note: '' },
  });
  await strikeGalleries(tx, who);
}

/** Holds that have ended and were written under the name alone, before there was an entry. */
async function strikeUnderNameAlone(tx: Tx, { names, erasedName }: ToStrike): Promise<void> {
  const data = { forWhom: erasedName, phone: '', note: '' };
  const where = { collectorId: null, endedAt: { not: null } };
  for (const name of names) {
    const forWhom = { equals: name, mode: 'insensitive' } as const;
    await tx.hold.updateMany({ where: { ...where, forWhom }, data });
    await tx.waiting.updateMany({ where: { ...where, forWhom }, data });
  }
}

/** A gallery's place was named after it; it is shut, and keeps what went through it. */
async function strikeGalleries(tx: Tx, { ids, erasedName }: ToStrike): Promise<void> {
  const galleries = await tx.consignee.findMany({
    where: { collectorId: { in: [...ids] } },
    select: { id: true, placeId: true },
    orderBy: { id: 'asc' },
  });
  for (const [at, { id, placeId }] of galleries.entries()) {
    await tx.consignee.update({ where: { id }, data: { terms: '' }, select: { id: true } });
    const name = at === 0 ? erasedName : `${erasedName}, ${at + 1}`;
    await tx.place.update({ where: { id: placeId }, data: { name }, select: { id: true } });
  }
}
