import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import type { AfterCareKind } from '@/lib/installation/rules/care/due';
import { db } from '@/lib/platform/db/client';

/** A look after a piece that was handed over. */
export type Look = {
  id: string;
  kind: AfterCareKind;
  dueOn: Day;
  commission: { id: string; number: number; title: string };
  collector: { name: string; phone: string | null };
  /** Null while it is still to be done. */
  done: { on: Day; words: string; appointmentId: string | null } | null;
};

const lookSelect = {
  ...{ id: true, kind: true, dueOn: true },
  done: { select: { on: true, words: true, appointmentId: true } },
  commission: {
    select: {
      ...{ id: true, number: true, title: true },
      collector: {
        select: { name: true, phone: true, mergedInto: { select: { name: true, phone: true } } },
      },
    },
  },
} as const satisfies Prisma.AfterCareSelect;

/** The looks after one piece, done ones included, in the order of their days. */
export async function listLooksOf(actor: Actor, commissionId: string): Promise<Look[]> {
  assertAllowed(actor, 'commissions.see');
  return readLooks({ commissionId });
}

/** The looks that are still to be done until a day, the longest due first; at most 200. */
export async function listLooksDue(actor: Actor, untilOn: Day): Promise<Look[]> {
  assertAllowed(actor, 'diary.see');
  return readLooks({ done: null, dueOn: { lte: dateFromDay(untilOn) } });
}

/** How many looks are due by a day and not done. */
export async function countLooksDue(actor: Actor, onDay: Day): Promise<number> {
  assertAllowed(actor, 'diary.see');
  return db().afterCare.count({ where: { done: null, dueOn: { lte: dateFromDay(onDay) } } });
}

async function readLooks(where: Prisma.AfterCareWhereInput): Promise<Look[]> {
  const rows = await db().afterCare.findMany({
    where,
    select: lookSelect,
    orderBy: [{ dueOn: 'asc' }, { id: 'asc' }],
    take: 200,
  });
  return rows.map(({ commission: { collector, ...commission }, done, dueOn, ...row }) => {
    const { name, phone } = collector.mergedInto ?? collector;
    return {
      ...row,
      commission,
      collector: { name, phone },
      dueOn: dayFromDate(dueOn),
      done: done && { ...done, on: dayFromDate(done.on) },
    };
  });
}
