import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import {
  clockSpans,
  daysByClock,
  daysLost,
  type ClockSpan,
} from '@/lib/commissions/rules/course/clocks';
import { keptWords, promiseSaid, type PromiseSaid } from '@/lib/commissions/rules/course/kept';
import type { Clock } from '@/lib/commissions/rules/facts';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';

/** The time of one commission: whose days they were, what was lost, and what was said of its day. */
export type TimeTold = {
  spans: readonly ClockSpan[];
  byClock: readonly { clock: Clock; days: number }[];
  lost: readonly { clock: Clock; days: number }[];
  answerDays: number;
  said: readonly PromiseSaid[];
  kept: string | null;
};

const select = {
  ...factsSelect,
  agreements: {
    select: { ...factsSelect.agreements.select, promisedOn: true, agreedOn: true },
    orderBy: { version: 'desc' },
    take: 1,
  },
} as const;

/** The time of a commission up to a day; null when there is none with this id. */
export async function readTime(
  actor: Actor,
  commissionId: string,
  today: Day,
): Promise<TimeTold | null> {
  assertAllowed(actor, 'commissions.see');
  const { timeZone } = await getGallery();
  const row = await db().commission.findUnique({ where: { id: commissionId }, select });
  if (!row) return null;
  const facts = factsOf(row, timeZone);
  const { answerDays } = await readCommissionTerms();
  const spans = clockSpans(facts, today);
  const original = row.agreements[0];
  const isOver = facts.ending !== null;
  return {
    ...{ spans, answerDays },
    byClock: daysByClock(spans),
    lost: daysLost(facts, spans, answerDays),
    said: promiseSaid({
      agreed: original
        ? {
            on: dayFromDate(original.agreedOn),
            promisedOn: original.promisedOn && dayFromDate(original.promisedOn),
          }
        : null,
      ...(await readMoved(commissionId)),
    }),
    kept: isOver
      ? null
      : keptWords(facts.agreement?.promisedOn ?? null, facts.handOver?.handedOn ?? null, today),
  };
}

async function readMoved(commissionId: string) {
  const orders = await db().changeOrder.findMany({
    where: { commissionId, promisedAfter: { not: null }, signed: { isNot: null } },
    select: { number: true, promisedAfter: true, signed: { select: { signedOn: true } } },
    orderBy: { number: 'asc' },
    take: 200,
  });
  const notices = await db().delayNotice.findMany({
    where: { commissionId },
    select: { toldOn: true, toOn: true, clock: true, why: true, toldHow: true },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    take: 200,
  });
  return {
    changes: orders.flatMap(({ number, promisedAfter, signed }) =>
      signed
        ? [
            {
              number,
              signedOn: dayFromDate(signed.signedOn),
              promisedOn: promisedAfter && dayFromDate(promisedAfter),
            },
          ]
        : [],
    ),
    notices: notices.map((notice) => ({
      ...notice,
      toldOn: dayFromDate(notice.toldOn),
      toOn: dayFromDate(notice.toOn),
    })),
  };
}
