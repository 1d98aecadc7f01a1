import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { readTelling } from '@/lib/commissions/reads/telling';
import { inTime, type InTime } from '@/lib/commissions/rules/course/list/in-time';
import { standingSentence } from '@/lib/commissions/rules/course/sentences';
import { standing } from '@/lib/commissions/rules/course/standing';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { stillGoing } from './going';

/** The most commissions that are drawn in time. */
const drawn = 120;

/** A commission in time, with its names. */
export type InTimeTold = InTime & {
  number: number;
  title: string;
  collector: string;
  sentence: string;
  promisedOn: Day | null;
};

const select = {
  ...factsSelect,
  number: true,
  title: true,
  collector: { select: { name: true } },
} as const satisfies Prisma.CommissionSelect;

/**
 * The commissions that are going on, in time: those promised soonest first, those without a promise
 * after them by the day they were asked for.
 *
 * @returns at most 120, and today in the gallery's zone
 */
export async function listInTime(actor: Actor): Promise<{ rows: InTimeTold[]; today: Day }> {
  assertAllowed(actor, 'commissions.see');
  const { telling, zone } = await readTelling(actor);
  const { today } = telling;
  const found = await db().commission.findMany({
    where: stillGoing,
    select,
    orderBy: { number: 'desc' },
    take: drawn,
  });
  const rows = found.flatMap((row) => {
    const facts = factsOf(row, zone);
    const now = standing(facts, today);
    if (now.where.key === 'handed_over') return [];
    const { number, title } = row;
    return [
      {
        ...inTime(facts, today),
        ...{ number, title, collector: row.collector.name },
        sentence: standingSentence(now, telling),
        promisedOn: facts.agreement?.promisedOn ?? null,
        askedOn: facts.askedOn,
      },
    ];
  });
  return {
    today,
    rows: rows
      .toSorted((one, other) => (sortKey(one) < sortKey(other) ? -1 : 1))
      .map(({ askedOn: _, ...row }) => row),
  };
}

function sortKey({ promisedOn, askedOn }: { promisedOn: Day | null; askedOn: Day }): string {
  // A tilde stands after every figure: no promise comes after any promise.
  return promisedOn ?? `~${askedOn}`;
}
