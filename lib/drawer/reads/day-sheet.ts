import 'server-only';
import type { Actor } from '@/lib/access/rules';
import { findCount, type CountKept } from '../reads';
import { readDayMoney, type DayMoney } from './span';

/** A counted day with the money that came and went before it, since the count before. */
export type DaySheet = { count: CountKept; money: DayMoney };

/** The sheet of a count; null when no count has that number. */
export async function readDaySheet(actor: Actor, number: number): Promise<DaySheet | null> {
  const found = await findCount(actor, number);
  if (!found) return null;
  const { count, before } = found;
  const span = { after: before?.at ?? null, until: count.at };
  const floatCents = before?.floatCents ?? 0n;
  const { expectedCents } = count;
  return { count, money: await readDayMoney(actor, span, { floatCents, expectedCents }) };
}
