import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
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

/** The most slips that the list shows of each sort. */
export const approvalsListed = 100;
const endedShownDays = 60;

/** What is out, what is due first before the rest, and what came back of late. */
export async function listApprovals(
  actor: Actor,
  todayOn: Day,
): Promise<{ out: ApprovalShown[]; ended: ApprovalShown[] }> {
  assertAllowed(actor, 'stock.hold');
  const most = approvalsListed;
  const since = dateFromDay(addDays(todayOn, -endedShownDays));
  const [out, ended] = await Promise.all([
    readApprovals(db(), { where: { endedAt: null }, newestFirst: false, most }),
    readApprovals(db(), { where: { endedAt: { gte: since } }, newestFirst: true, most }),
  ]);
  return { out, ended };
}

/** One slip by its number; null when there is none. */
export async function findApproval(actor: Actor, number: number): Promise<ApprovalShown | null> {
  assertAllowed(actor, 'stock.hold');
  const wanted = { where: { number }, newestFirst: false, most: 1 };
  const [approval] = await readApprovals(db(), wanted);
  return approval ?? null;
}
