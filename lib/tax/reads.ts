import 'server-only';
import { dayFromDate } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { DatedRate } from './rules/dated';

const ratesMost = 500;

/** Every rate that a place has had, has or will have: by authority, the latest first. */
export async function listRates(placeId: string): Promise<DatedRate[]> {
  const rows = await db().taxRate.findMany({
    where: { placeId },
    orderBy: [{ authority: 'asc' }, { fromOn: 'desc' }],
    take: ratesMost,
  });
  return rows.map(({ id, authority, ratePercent, fromOn, untilOn }) => ({
    id,
    authority,
    ratePercent: ratePercent.toString(),
    fromOn: dayFromDate(fromOn),
    untilOn: untilOn ? dayFromDate(untilOn) : null,
  }));
}
