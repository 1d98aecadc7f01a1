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
  const [wholesaleOrders, townPromises, otherGallery] = await Promise.all([
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
    ...{ wholesaleOrders, townPromises, otherGallery },
  };
}
