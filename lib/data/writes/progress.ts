import 'server-only';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';

/**
 * Writes that a file under way has come so far, on a connection of its own, so that others see it
 * before anything is kept.
 *
 * @returns whether somebody asked to stop
 */
export async function noteProgress(loadId: string, rowsDone: number): Promise<boolean> {
  const { stopAskedAt } = await db().dataLoad.update({
    where: { id: loadId },
    data: { rowsDone, seenAt: now() },
    select: { stopAskedAt: true },
  });
  return stopAskedAt !== null;
}

/** Writes how a file under way has ended, once; on a connection of its own. */
export async function noteEnd(loadId: string, outcome: string): Promise<void> {
  const at = now();
  await db().dataLoad.updateMany({
    where: { id: loadId, endedAt: null },
    data: { endedAt: at, seenAt: at, outcome },
  });
}
