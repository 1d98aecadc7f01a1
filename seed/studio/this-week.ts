import { addDays, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { newId } from '@/lib/platform/new-id';
import { loseJobPieces } from '@/lib/studio/writes';
import { planFiring } from '@/lib/studio/writes/firings/plan';
import { done } from '@/seed/done';
import type { SetUp } from '@/seed/set-up';
import { lightOnce } from './firings';
import { makerAgo } from './kilns';

type Demo = { today: Day; setUp: SetUp };

/** What goes on in the studio now: a glaze load is cooling, a bisque load is planned for tomorrow. */
export async function playThisWeek(
  demo: Demo,
  kilns: { kilnId: string; smallKilnId: string },
): Promise<void> {
  await loseOne(demo);
  const lit = makerAgo(demo, 1, '06:30');
  await lightOnce({
    ...{ kilnId: kilns.smallKilnId, kind: 'glaze', cone: '6', litOn: addDays(demo.today, -1) },
    by: (hours) => ({ ...lit, at: new Date(lit.at.getTime() + hours * 3_600_000) }),
  });
  const plan = { requestKey: newId(), kilnId: kilns.kilnId, kind: 'bisque' as const, cone: '04' };
  const plannedOn = addDays(demo.today, 1);
  done(await planFiring(makerAgo(demo, 0, '00:30'), { ...plan, plannedOn }));
}

/** One of the tiles cracked on the rack: it is made good at once. */
async function loseOne(demo: Demo): Promise<void> {
  const job = await db().job.findFirstOrThrow({
    where: { technique: 'slip_cast', commissionId: null, skuId: { not: null } },
    select: { id: true, moves: { orderBy: { id: 'desc' }, take: 1, select: { toPosition: true } } },
    orderBy: { number: 'asc' },
  });
  const fromPosition = job.moves[0]?.toPosition ?? 0;
  if (fromPosition === 0) return;
  const loss = { requestKey: newId(), jobId: job.id, fromPosition, pieces: 2 };
  const why = { cause: 'dried_too_fast' as const, note: 'By the window.' };
  done(await loseJobPieces(makerAgo(demo, 2, '16:20'), { ...loss, ...why }));
}
