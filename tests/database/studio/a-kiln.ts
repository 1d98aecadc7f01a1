import type { Doer } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { keepKilnInput } from '@/lib/studio/input/kilns';
import { openKilnInput } from '@/lib/studio/input/opening';
import { lightKiln } from '@/lib/studio/writes/firings/light';
import { openKiln } from '@/lib/studio/writes/firings/open';
import { planFiring } from '@/lib/studio/writes/firings/plan';
import { keepKiln } from '@/lib/studio/writes/kilns/keep';
import { movePieces } from '@/lib/studio/writes';
import { aJob, aKey, later, type TestStudio } from './a-studio';

/** A kiln as its form sends it, in inches and °F. */
export function kilnTyped(more: Record<string, string> = {}) {
  return {
    ...{ requestKey: aKey(), kilnId: '', lengthUnit: 'in', degrees: 'F', name: 'The large one' },
    ...{ insideHeight: '27', shelfWidth: '20', shelfDepth: '20', shelfThick: '5/8', shelves: '8' },
    ...{ powerW: '11520', centsPerKwh: '15.25', wearCents: '5.00', cones: '04, 05, 6' },
    ...{ turnsAWeek: '2', leastFillPercent: '70', longestWaitDays: '14', openBelow: '200' },
    ...{ elementFirings: '150', note: '' },
    ...more,
  };
}

/** A kiln that was written down. */
export async function aKiln(studio: TestStudio, more: Record<string, string> = {}) {
  const kept = await keepKiln(studio.maker, keepKilnInput.parse(kilnTyped(more)));
  if (!kept.ok) throw new Error(kept.refusal.code);
  return kept.value;
}

const tile = { widthUm: 152_400, heightUm: 152_400, depthUm: 12_700 };

type Waiting = { pieces?: number; title?: string; driedDays?: number; size?: typeof tile };

/** Pressed tiles that were dried from 4 May on and stand before their bisque, of cone 04. */
export async function waitingTiles(studio: TestStudio, of: Waiting = {}) {
  const { pieces = 6, title = 'Tern over Shoals', driedDays = 10, size = tile } = of;
  const job = await aJob(studio.maker, { title, pieces, size });
  await moveOn(studio.maker, { jobId: job.id, pieces, from: 0, to: 3 });
  const dry = later(studio.maker, `2026-05-${String(4 + driedDays).padStart(2, '0')}T17:00:00Z`);
  await moveOn(dry, { jobId: job.id, pieces, from: 3, to: 4 });
  return job;
}

type Way = { jobId: string; pieces: number; from: number; to: number };

/** Moves pieces from one step to a later one, through those between. */
export async function moveOn(doer: Doer, { jobId, pieces, from, to }: Way) {
  for (let fromPosition = from; fromPosition < to; fromPosition += 1) {
    const moved = await inTransaction((tx) =>
      movePieces(tx, doer, { jobId, fromPosition, pieces }),
    );
    if (!moved.ok) throw new Error(moved.refusal.code);
  }
}

/** The day on which tests fire. */
export const firingDay = '2026-05-20';

/** The maker at an hour of the day of firing, in universal time. */
export function at(studio: TestStudio, hour: number, day = 20): Doer {
  return later(studio.maker, `2026-05-${day}T${String(hour).padStart(2, '0')}:00:00Z`);
}

/** A bisque of cone 04 that was planned in a kiln. */
export async function aPlannedFiring(studio: TestStudio, kilnId: string) {
  const planned = await planFiring(at(studio, 15), {
    ...{ requestKey: aKey(), kilnId, kind: 'bisque', cone: '04', plannedOn: firingDay },
  });
  if (!planned.ok) throw new Error(planned.refusal.code);
  return planned.value;
}

/** How a kiln is lit, as its form sends it. */
export function lighting(firingId: string, saidOfDry = '') {
  return { requestKey: aKey(), firingId, saidOfDry, meterKwh: null };
}

/** A bisque that was planned and lit at four in the afternoon, universal time. */
export async function aLitFiring(studio: TestStudio, kilnId: string) {
  const firing = await aPlannedFiring(studio, kilnId);
  const lit = await lightKiln(at(studio, 16), lighting(firing.id));
  if (!lit.ok) throw new Error(lit.refusal.code);
  const lines = await db().firingLine.findMany({
    where: { firingId: firing.id },
    orderBy: { job: { number: 'asc' } },
  });
  return { ...firing, lines };
}

/** How a kiln is opened, as its form sends it: 150 °F unless another is said. */
export function opening(firingId: string, more: Record<string, string> = {}) {
  const typed = { requestKey: aKey(), firingId, degrees: 'F', reading: '150', ...more };
  return openKilnInput.parse(typed);
}

/** Opens a kiln two days later. */
export async function opened(studio: TestStudio, firingId: string, more = {}) {
  return openKiln(at(studio, 18, 22), opening(firingId, more));
}
