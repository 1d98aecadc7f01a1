import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import type { LineOut } from '../rules/approval';

/** A picture of the condition: as it left, or as it came back. */
export type ConditionPicture = {
  src: string;
  width: number;
  height: number;
  isBack: boolean;
};

/** A slip for pieces that a collector took home to try. */
export type ApprovalShown = {
  id: string;
  number: number;
  placeId: string;
  collector: { id: string; name: string; phone: string | null };
  dueOn: Day;
  valueCents: Cents;
  condition: string;
  security: string;
  staffName: string;
  at: Date;
  endedAt: Date | null;
  lines: (LineOut & { code: string; quantity: number })[];
  pictures: ConditionPicture[];
  backs: { at: Date; bought: boolean; condition: string; pieces: number }[];
};

const select = {
  ...{ id: true, number: true, dueOn: true, valueCents: true, condition: true, security: true },
  ...{ staffId: true, at: true, endedAt: true },
  collector: { select: { id: true, name: true, phone: true } },
  transfer: { select: { toId: true } },
  lines: {
    select: {
      ...{ position: true, skuId: true, quantity: true, editionNumber: true },
      sku: { select: { code: true, design: { select: { title: true } } } },
    },
    orderBy: { position: 'asc' },
  },
  pictures: {
    select: { isBack: true, file: { select: { id: true, widthPx: true, heightPx: true } } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  },
  backs: {
    select: {
      ...{ at: true, bought: true, condition: true },
      transfer: {
        select: {
          movements: {
            where: { quantity: { gt: 0 } },
            select: { skuId: true, quantity: true, editionNumber: true },
          },
        },
      },
    },
    orderBy: [{ at: 'asc' }, { transferId: 'asc' }],
  },
} as const satisfies Prisma.OnApprovalSelect;

type Row = Prisma.OnApprovalGetPayload<{ select: typeof select }>;

/** Slips that are out or were, as {@link ApprovalShown}. Asks nobody for leave. */
export async function readApprovals(
  from: Prisma.TransactionClient,
  wanted: { where: Prisma.OnApprovalWhereInput; newestFirst: boolean; most: number },
): Promise<ApprovalShown[]> {
  const { where, newestFirst, most } = wanted;
  const rows = await from.onApproval.findMany({
    where,
    take: most,
    orderBy: newestFirst ? [{ endedAt: 'desc' }, { id: 'asc' }] : [{ dueOn: 'asc' }, { id: 'asc' }],
    select,
  });
  const staff = await from.staff.findMany({
    where: { id: { in: rows.map((row) => row.staffId) } },
    select: { id: true, name: true },
  });
  const names = new Map(staff.map((each) => [each.id, each.name]));
  return rows.map((row) => shownOf(row, names.get(row.staffId) ?? ''));
}

function shownOf(row: Row, staffName: string): ApprovalShown {
  const { id, number, collector, valueCents, condition, security, at, endedAt } = row;
  const back = row.backs.flatMap((each) => each.transfer.movements);
  const lines = row.lines.map(({ position, skuId, quantity, editionNumber, sku }) => {
    const came = back
      .filter((each) => each.skuId === skuId && each.editionNumber === editionNumber)
      .reduce((sum, each) => sum + each.quantity, 0);
    const words = { code: sku.code, title: sku.design.title };
    return { position, skuId, quantity, editionNumber, ...words, out: quantity - came };
  });
  return {
    ...{ id, number, collector, valueCents, condition, security, staffName, at, endedAt, lines },
    placeId: row.transfer.toId,
    dueOn: dayFromDate(row.dueOn),
    pictures: row.pictures.map(({ isBack, file }) => ({
      ...{ src: `/files/${file.id}`, isBack },
      ...{ width: file.widthPx ?? 1_200, height: file.heightPx ?? 900 },
    })),
    backs: row.backs.map((each) => ({
      ...{ at: each.at, bought: each.bought, condition: each.condition },
      pieces: each.transfer.movements.reduce((sum, moved) => sum + moved.quantity, 0),
    })),
  };
}
