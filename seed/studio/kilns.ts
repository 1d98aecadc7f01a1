import type { Doer } from '@/lib/access/rules';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { newId } from '@/lib/platform/new-id';
import { closeDays, keepWays } from '@/lib/studio/writes/ways/keep';
import { keepKiln, noteCare } from '@/lib/studio/writes/kilns/keep';
import { done } from '@/seed/done';
import { gallery } from '@/seed/scenario/gallery';
import { kilns, ways } from '@/seed/scenario/studio';
import type { SetUp } from '@/seed/set-up';

/** Who acts in the studio of the demo: its maker, so many days ago. */
export function makerAgo(demo: { today: Day; setUp: SetUp }, daysAgo: number, time: string): Doer {
  const at = instantOf(addDays(demo.today, -daysAgo), time, gallery.timeZone);
  return { actor: demo.setUp.maker, at };
}

/** Writes down how the studio works, its kilns and what was mended in them. */
export async function keepStudio(demo: { today: Day; setUp: SetUp }): Promise<string[]> {
  const begun = makerAgo(demo, 240, '09:00');
  const { closedWeekdays, dryingPercents, ...rest } = ways;
  const kept = { ...rest, closedWeekdays: [...closedWeekdays] };
  const drying = { dryingPercents: [...dryingPercents] };
  done(await keepWays(begun, { requestKey: newId(), ...kept, ...drying }));
  const ids: string[] = [];
  for (const { cones, ...kiln } of kilns) {
    const input = { requestKey: newId(), kilnId: null, ...kiln, cones: [...cones] };
    ids.push(done(await keepKiln(begun, input)).id);
  }
  const [old = ''] = ids;
  const care = { requestKey: newId(), kilnId: old, part: 'elements' as const };
  const on = addDays(demo.today, -232);
  done(await noteCare(makerAgo(demo, 231, '16:00'), { ...care, on, note: 'A whole new set.' }));
  const fromOn = addDays(demo.today, 26);
  const fair = { fromOn, toOn: addDays(fromOn, 3), why: 'the winter fair' };
  done(await closeDays(makerAgo(demo, 3, '10:00'), { requestKey: newId(), ...fair }));
  return ids;
}
