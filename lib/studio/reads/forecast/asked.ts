import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { Result } from '@/lib/platform/result';
import type { AskDayInput } from '@/lib/studio/input/asked';
import type { AskRefusal } from '@/lib/studio/rules/forecast/telling/refusals';
import { tellAsked, type AskedTold } from './tell-asked';

/** Tells on a page what {@link tellAsked} tells. */
export async function askDay(
  actor: Actor,
  input: AskDayInput,
  todayOn: Day,
): Promise<Result<AskedTold, AskRefusal>> {
  assertAllowed(actor, 'studio.see');
  return tellAsked(db(), input, todayOn);
}

/** A commission for which a day is looked up. */
export type CommissionToAsk = {
  id: string;
  number: number;
  title: string;
  widthUm: number | null;
  heightUm: number | null;
  depthUm: number | null;
  hasEnded: boolean;
};

/** A commission by its number, with its size; null when there is none. */
export async function findCommissionToAsk(
  actor: Actor,
  number: number,
): Promise<CommissionToAsk | null> {
  assertAllowed(actor, 'commissions.see');
  const row = await db().commission.findUnique({
    where: { number },
    select: {
      ...{ id: true, number: true, title: true, widthUm: true, heightUm: true, depthUm: true },
      ending: { select: { commissionId: true } },
    },
  });
  if (!row) return null;
  const { ending, ...commission } = row;
  return { ...commission, hasEnded: ending !== null };
}

/** A day that was looked up and kept with the proposal of a commission. */
export type KeptDay = {
  toldOn: Day;
  in50On: Day | null;
  in80On: Day | null;
  in95On: Day | null;
};

/** The day that was kept last for a commission before its price was given; null when none was. */
export async function findKeptDay(actor: Actor, commissionId: string): Promise<KeptDay | null> {
  assertAllowed(actor, 'commissions.see');
  const row = await db().foretold.findFirst({
    where: { commissionId, why: 'asked' },
    select: { toldOn: true, in50On: true, in80On: true, in95On: true },
    orderBy: { id: 'desc' },
  });
  if (!row) return null;
  const day = (date: Date | null) => date && dayFromDate(date);
  const { in50On, in80On, in95On } = row;
  return {
    toldOn: dayFromDate(row.toldOn),
    ...{ in50On: day(in50On), in80On: day(in80On), in95On: day(in95On) },
  };
}
