import 'server-only';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { band } from '@/lib/commissions/rules/course/band';
import { toldDay } from '@/lib/commissions/rules/course/promise';
import { standing } from '@/lib/commissions/rules/course/standing';
import { pegsTold, whereForCollector, type PegTold } from '@/lib/commissions/rules/page/told';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** The head of the collector's page: where the piece is, and the way it goes. */
export type HeadForCollector = {
  sentence: string;
  pegs: PegTold[];
  promisedOn: Day | null;
  /** The day they were told of since; null while they were told of none. */
  toldOn: Day | null;
  isOver: boolean;
};

/** Where a commission is, for the page of the collector whose address opened it. */
export async function headForCollector(
  commissionId: string,
  { zone, today }: { zone: string; today: Day },
): Promise<HeadForCollector> {
  const row = await db().commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: factsSelect,
  });
  const facts = factsOf(row, zone);
  const { where } = standing(facts, today);
  return {
    sentence: whereForCollector(where, today),
    pegs: pegsTold(band(facts, where), today),
    promisedOn: facts.agreement?.promisedOn ?? null,
    toldOn: toldDay(facts),
    isOver: facts.handOver !== null || facts.ending !== null,
  };
}
