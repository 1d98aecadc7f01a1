import 'server-only';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { decideRate, type DatedRate, type RateRefusal } from './rules/dated';

/** One authority's rate from a day on. */
export type NewRate = { authority: string; ratePercent: string; fromOn: Day };

/**
 * Lets a rate hold from a day on, and closes the one before it; joins the caller's transaction.
 * Sales made before keep the tax they were made with.
 *
 * @returns the closed rate, or null when the authority is new; see {@link decideRate}
 */
export async function addRate(
  tx: Tx,
  placeId: string,
  rate: NewRate,
): Promise<Result<DatedRate | null, RateRefusal>> {
  const decided = decideRate(await ratesOf(tx, placeId), rate);
  if (!decided.ok) return decided;
  const closes = decided.value;
  if (closes) {
    await tx.taxRate.update({
      where: { id: closes.id },
      data: { untilOn: dateFromDay(rate.fromOn) },
    });
  }
  await tx.taxRate.create({ data: { placeId, ...rate, fromOn: dateFromDay(rate.fromOn) } });
  return ok(closes);
}

/**
 * Ends an authority's rate: from this day on it takes nothing. Joins the caller's transaction.
 *
 * @returns refuses `rate_unknown` for one that is not there or has ended, then
 *   `rate_ends_before_it_begins`
 */
export async function endRate(
  tx: Tx,
  rateId: string,
  untilOn: Day,
): Promise<Result<DatedRate & { placeId: string }, RateRefusal>> {
  const row = await tx.taxRate.findUnique({ where: { id: rateId } });
  if (!row || row.untilOn) return refuse({ code: 'rate_unknown' });
  const rate = datedRate(row);
  if (untilOn <= rate.fromOn) {
    return refuse({ code: 'rate_ends_before_it_begins', fromOn: rate.fromOn });
  }
  await tx.taxRate.update({ where: { id: rateId }, data: { untilOn: dateFromDay(untilOn) } });
  return ok({ ...rate, untilOn, placeId: row.placeId });
}

async function ratesOf(tx: Tx, placeId: string): Promise<DatedRate[]> {
  const rows = await tx.taxRate.findMany({ where: { placeId }, orderBy: { fromOn: 'asc' } });
  return rows.map(datedRate);
}

type Row = {
  id: string;
  authority: string;
  ratePercent: { toString(): string };
  fromOn: Date;
  untilOn: Date | null;
};

function datedRate({ id, authority, ratePercent, fromOn, untilOn }: Row): DatedRate {
  return {
    id,
    authority,
    ratePercent: ratePercent.toString(),
    fromOn: dayFromDate(fromOn),
    untilOn: untilOn ? dayFromDate(untilOn) : null,
  };
}
