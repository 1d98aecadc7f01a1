import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import type { LayawayFacts } from '../reads/facts';
import { endedRefusal, readLayaway } from '../reads/running';
import type { LayawayRefusal } from '../rules/refusals';

/** The day of a command and how the gallery works. */
export type Setting = { gallery: Gallery; todayOn: Day };

/**
 * Runs one command about layaways: asks whether the doer may, then does it once, in one
 * transaction.
 */
export async function carryOut<Answer extends Prisma.InputJsonValue, Refusal>(
  doer: Doer,
  { name, input }: { name: string; input: { requestKey: string } },
  work: (tx: Tx, setting: Setting) => Promise<Result<Answer, Refusal>>,
): Promise<Result<Answer, Refusal | NotAllowed | KeyRefusal>> {
  const allowed = allow(doer.actor, 'stock.hold');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name, staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<Answer, Refusal>(command, async (tx) => {
    const gallery = await getGallery(tx);
    return work(tx, { gallery, todayOn: dayOf(doer.at, gallery.timeZone) });
  });
}

/**
 * Finds a layaway that runs on.
 *
 * @returns refuses, in this order: unknown, ended
 */
export async function findRunning(
  tx: Tx,
  layawayId: string,
  todayOn: Day,
): Promise<Result<LayawayFacts, LayawayRefusal>> {
  const found = await readLayaway(tx, layawayId, todayOn);
  if (!found.ok) return found;
  const ended = endedRefusal(found.value);
  return ended ? refuse(ended) : found;
}
