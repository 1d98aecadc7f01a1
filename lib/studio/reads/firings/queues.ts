import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { waitingByCone, type ConeWaiting } from '@/lib/studio/rules/firings/queue';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';
import { getStudioSettings } from '../settings';
import { readAtKilns, type AtKiln } from './waiting';

/** What waits for each of these kilns, in their order; what two can fire counts at both. */
export async function listWaitingFor(
  actor: Actor,
  kilns: readonly KilnFacts[],
  todayOn: Day,
): Promise<ConeWaiting[][]> {
  assertAllowed(actor, 'studio.see');
  if (kilns.length === 0) return [];
  const [waiting, { roomAroundUm }] = await Promise.all([readAtKilns(db()), getStudioSettings()]);
  return kilns.map((kiln) => waitingByCone(kiln, waiting, { roomAroundUm, todayOn }));
}

/** Pieces that wait for a cone that none of these kilns is fired to. */
export async function listWaitingForNone(
  actor: Actor,
  kilns: readonly Pick<KilnFacts, 'cones'>[],
): Promise<AtKiln[]> {
  assertAllowed(actor, 'studio.see');
  const known = new Set(kilns.flatMap(({ cones }) => cones));
  return (await readAtKilns(db())).filter(({ cone, pieces }) => pieces > 0 && !known.has(cone));
}

/** What could still be laid into a load: pieces of its cone that are free, of whatever job. */
export async function listToLayIn(
  actor: Actor,
  firing: { id: string; cone: string; kind: AtKiln['kind'] },
): Promise<AtKiln[]> {
  assertAllowed(actor, 'studio.see');
  const { cone, kind, id } = firing;
  return readAtKilns(db(), { cone, kind, exceptFiringId: id });
}
