import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

const piece = {
  sku: { select: { code: true, design: { select: { title: true } } } },
} as const;
const orderBy = { number: 'asc' } as const;

/** What is or was kept back, laid away, tried at home, ordered and promised. */
export async function readPapersKept(from: Prisma.TransactionClient, ids: readonly string[]) {
  const where = { collectorId: { in: [...ids] } };
  const lines = { select: { quantity: true, ...piece }, orderBy: { position: 'asc' } } as const;
  const [holds, waiting, onApproval, layaways, specialOrders] = await Promise.all([
    from.hold.findMany({ where, include: piece, orderBy }),
    from.waiting.findMany({ where, include: piece, orderBy: { id: 'asc' } }),
    from.onApproval.findMany({
      where,
      include: { lines, backs: { select: { at: true, bought: true, condition: true } } },
      orderBy,
    }),
    from.layaway.findMany({
      where,
      include: { lines, dues: { select: { dueOn: true, amountCents: true } } },
      orderBy,
    }),
    from.specialOrder.findMany({ where, include: piece, orderBy }),
  ]);
  const [shipments, wholesaleOrders, townPromises, otherGallery] = await Promise.all([
    readShipmentsKept(from, ids),
    from.wholesaleOrder.findMany({ where, include: { lines }, orderBy }),
    from.townPromise.findMany({ where, orderBy: { id: 'asc' } }),
    from.consignee.findMany({
      where,
      include: {
        notes: { select: { number: true, isBack: true, at: true } },
        reports: { select: { number: true, fromOn: true, untilOn: true, dueCents: true } },
      },
    }),
  ]);
  return {
    ...{ holds, waiting, onApproval, layaways, specialOrders },
    ...{ shipments, wholesaleOrders, townPromises, otherGallery },
  };
}

/** What was sent to them: where to, what became of it, how it looked, and what was claimed. */
function readShipmentsKept(from: Prisma.TransactionClient, ids: readonly string[]) {
  return from.shipment.findMany({
    where: { collectorId: { in: [...ids] } },
    select: {
      ...{ number: true, at: true, how: true, carrier: true, toName: true, toAddress: true },
      ...{ toPhone: true, insuredCents: true, note: true },
      events: {
        select: { kind: true, on: true, tracking: true, takenBy: true, words: true },
        orderBy: { id: 'asc' },
      },
      reports: { select: { on: true, when: true, words: true }, orderBy: { id: 'asc' } },
      claims: { select: { number: true, foundOn: true, words: true, askedCents: true } },
    },
    orderBy,
  });
}
