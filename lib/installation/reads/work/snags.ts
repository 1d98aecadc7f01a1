import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** Something that is, or was, to be put right. */
export type Snag = {
  id: string;
  commission: { id: string; number: number; title: string; collector: string };
  words: string;
  mendBy: string;
  mendByOn: Day;
  writtenAt: Date;
  /** Null while it is open. */
  mended: { on: Day; words: string } | null;
};

const snagSelect = {
  ...{ id: true, words: true, mendByOn: true, at: true },
  mendBy: { select: { name: true } },
  mended: { select: { on: true, words: true } },
  commission: {
    select: { id: true, number: true, title: true, collector: { select: { name: true } } },
  },
} as const satisfies Prisma.SnagSelect;

/** The snags of a commission, the most pressing first; at most 200. */
export async function listSnagsOf(actor: Actor, commissionId: string): Promise<Snag[]> {
  assertAllowed(actor, 'commissions.see');
  return readSnags({ commissionId });
}

/** What is still to be put right anywhere, the most pressing first; at most 200. */
export async function listSnagsOpen(actor: Actor): Promise<Snag[]> {
  assertAllowed(actor, 'diary.see');
  return readSnags({ mended: null });
}

/** How many snags are past their day. */
export async function countSnagsOverdue(actor: Actor, today: Day): Promise<number> {
  assertAllowed(actor, 'diary.see');
  return db().snag.count({ where: { mended: null, mendByOn: { lt: dateFromDay(today) } } });
}

/** Who can put something right: everyone who works here, by name. */
export async function listMenders(actor: Actor): Promise<{ id: string; name: string }[]> {
  assertAllowed(actor, 'installation.do');
  return db().staff.findMany({
    where: { active: true },
    select: { id: true, name: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: 100,
  });
}

async function readSnags(where: Prisma.SnagWhereInput): Promise<Snag[]> {
  const rows = await db().snag.findMany({
    where,
    select: snagSelect,
    orderBy: [{ mendByOn: 'asc' }, { id: 'asc' }],
    take: 200,
  });
  return rows.map(({ commission, mendBy, mended, mendByOn, at, ...row }) => ({
    ...row,
    commission: { ...commission, collector: commission.collector.name },
    mendBy: mendBy.name,
    mendByOn: dayFromDate(mendByOn),
    writtenAt: at,
    mended: mended && { words: mended.words, on: dayFromDate(mended.on) },
  }));
}
