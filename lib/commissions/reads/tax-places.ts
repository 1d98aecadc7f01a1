import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { combinedRatePercent } from '@/lib/tax/rules';
import { readTelling } from './telling';

/** A place whose sales tax may apply, with its rate today in words. */
export type TaxPlaceTold = { id: string; name: string; rate: string };

/** The places whose sales tax may apply where a piece is handed over. */
export async function listTaxPlaces(actor: Actor): Promise<TaxPlaceTold[]> {
  assertAllowed(actor, 'commissions.see_money');
  const { telling } = await readTelling(actor);
  const today = dateFromDay(telling.today);
  const rows = await db().taxPlace.findMany({
    select: {
      id: true,
      name: true,
      rates: {
        where: { fromOn: { lte: today }, OR: [{ untilOn: null }, { untilOn: { gt: today } }] },
        select: { authority: true, ratePercent: true },
      },
    },
    orderBy: { name: 'asc' },
    take: 200,
  });
  return rows.map(({ id, name, rates }) => {
    const parts = rates.map((rate) => ({
      name: rate.authority,
      ratePercent: rate.ratePercent.toString(),
    }));
    const rate = parts.length === 0 ? 'no rate kept' : `${combinedRatePercent(parts)} percent`;
    return { id, name, rate };
  });
}
