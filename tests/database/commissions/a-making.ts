import { randomUUID } from 'node:crypto';
import { letMakingBegin, openCommissionJob } from '@/lib/commissions/writes/making';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { routes } from '../../helpers/usual-routes';
import { moveJobOn } from '@/lib/studio/writes';
import type { OpenGallery } from '@/tests/database/sales/open-gallery';
import { done, on } from './a-commission';

/** How many parts the pieces of these stories have. */
export const parts = 4;

/** Opens the job of an agreed commission by the owner's word and brings so many parts so far. */
export async function making(
  gallery: OpenGallery,
  commissionId: string,
  { day, steps }: { day: Day; steps: number },
): Promise<string> {
  const why = 'The wall is ready before the winter.';
  done(
    await letMakingBegin(on(gallery.owner, day), { requestKey: randomUUID(), commissionId, why }),
  );
  const job = { requestKey: randomUUID(), commissionId, pieces: parts, neededOn: null };
  done(await openCommissionJob(on(gallery.maker, day), { ...job, technique: 'slip_cast' }));
  const { id: jobId } = await db().job.findFirstOrThrow({ where: { commissionId } });
  for (let fromPosition = 0; fromPosition < steps; fromPosition += 1) {
    const touch = { requestKey: randomUUID(), jobId, fromPosition, pieces: parts };
    done(await moveJobOn(on(gallery.maker, day), touch));
  }
  return jobId;
}

/** So many steps bring a part through its whole route. */
export const allSteps = routes.slip_cast.length + 1;
