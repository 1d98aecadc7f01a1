import { db } from '@/lib/platform/db/client';
import type { Doer } from '@/lib/access/rules';
import { inTransaction } from '@/lib/platform/db/transaction';
import { movePieces, losePieces } from '@/lib/studio/writes';

/** The day of `monday` in the studio. */
export const today = '2026-05-04';

/** A kiln that is lit at half a load, to cones 06, 04 and 6. */
export async function aKiln(name = 'large kiln') {
  return db().kiln.create({
    data: {
      ...{ name, insideHeightUm: 685_800, shelfWidthUm: 508_000, shelfDepthUm: 508_000 },
      ...{ shelfThickUm: 16_000, shelves: 4, powerW: 11_520, centsPerKwh: '15', wearCents: 200n },
      ...{ cones: ['06', '04', '6'], turnsAWeek: 3, leastFillPercent: 50, longestWaitDays: 10 },
    },
  });
}

/** Moves pieces of a job on to the next step. */
export async function moveOn(
  doer: Doer,
  jobId: string,
  fromPosition: number,
  pieces: number,
): Promise<void> {
  const moved = await inTransaction((tx) => movePieces(tx, doer, { jobId, fromPosition, pieces }));
  if (!moved.ok) throw new Error(`not moved: ${moved.refusal.code}`);
}

/** Writes pieces down as lost at a step. */
export async function lose(
  doer: Doer,
  jobId: string,
  fromPosition: number,
  pieces: number,
): Promise<void> {
  const losing = { jobId, fromPosition, pieces, cause: 'handling' as const, note: '' };
  const lost = await inTransaction((tx) => losePieces(tx, doer, losing));
  if (!lost.ok) throw new Error(`not lost: ${lost.refusal.code}`);
}
