import type { Actor } from '@/lib/access/rules';
import { addDays, dayStartAt, type Day } from '@/lib/dates/rules';
import { listDiary, type InDiary } from '@/lib/installation/reads';
import { listOthers } from '@/lib/installation/reads/diary/others';
import type { OtherLine } from '@/lib/installation/rules/diary/others';

/** Who looks, in which zone, and on which day. */
export type Looking = Readonly<{ actor: Actor; zone: string; todayOn: Day }>;

/** What stands on some days, both included: what is booked, and what else the gallery has. */
export async function readDays(
  { actor, zone }: Looking,
  { fromOn, untilOn }: { fromOn: Day; untilOn: Day },
): Promise<{ listed: InDiary[]; others: OtherLine[] }> {
  const fromAt = dayStartAt(fromOn, zone);
  const untilAt = dayStartAt(addDays(untilOn, 1), zone);
  const [listed, others] = await Promise.all([
    listDiary(actor, { fromAt, untilAt }, zone),
    listOthers(actor, { fromOn, untilOn, zone }),
  ]);
  return { listed, others };
}
