import type { Doer } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { newId } from '@/lib/platform/new-id';
import { lightKiln, noteReading } from '@/lib/studio/writes/firings/light';
import { openKiln } from '@/lib/studio/writes/firings/open';
import { planFiring } from '@/lib/studio/writes/firings/plan';
import { done } from '@/seed/done';
import type { WentWrong } from '@/seed/scenario/studio';

/** A firing of the demo: in which kiln, for what, and when it is lit. */
export type FiringToPlay = {
  kilnId: string;
  kind: 'bisque' | 'glaze';
  cone: string;
  litOn: Day;
  by: (hoursAfter: number) => Doer;
};

/** Plans a firing of all that waits for it, lights it and reads it twice. */
export async function lightOnce(firing: FiringToPlay): Promise<string> {
  const { kilnId, kind, cone, litOn: plannedOn, by } = firing;
  const plan = { requestKey: newId(), kilnId, kind, cone, plannedOn };
  const { id: firingId } = done(await planFiring(by(-1), plan));
  const light = { requestKey: newId(), firingId, saidOfDry: 'Warmed through the night first.' };
  done(await lightKiln(by(0), { ...light, meterKwh: null }));
  for (const [hours, celsius] of kind === 'bisque' ? bisqueRead : glazeRead) {
    const reading = { requestKey: newId(), firingId, on: null, time: null, note: '', celsius };
    done(await noteReading(by(hours), reading));
  }
  return firingId;
}

const bisqueRead = [
  [3, 92],
  [9, 420],
  [15, 1_040],
] as const;
const glazeRead = [
  [3, 420],
  [7, 990],
  [10, 1_215],
] as const;

/** Opens a firing after two days; what went wrong is told of the line of one job. */
export async function openOnce(
  firing: FiringToPlay,
  firingId: string,
  wrong: WentWrong & { jobId: string },
): Promise<void> {
  const line = await db().firingLine.findFirst({
    where: { firingId, jobId: wrong.jobId },
    select: { id: true },
  });
  const { second = 0, fireAgain = 0, lost = 0, cause = null, note = '' } = wrong;
  const told = line ? [{ lineId: line.id, second, fireAgain, lost, cause, note, parts: [] }] : [];
  const opening = { requestKey: newId(), firingId, readC: 61, meterKwh: null };
  done(await openKiln(firing.by(50), { ...opening, coneFell: 'as it should', told }));
}
