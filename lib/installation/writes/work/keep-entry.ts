import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { readyPicture, type ReadyPicture } from '@/lib/files/ready';
import { addProgress } from '@/lib/commissions/writes/course/progress';
import { tellHistory } from '@/lib/commissions/writes/carry-out';
import { dayOf } from '@/lib/dates/rules';
import type { WorkEntry, WorkEntryOf } from '@/lib/installation/input/work/entry';
import type { OrderLoaded } from '@/lib/installation/reads/work/load-order';
import type { AnyWorkRefusal, WorkRefusal } from '@/lib/installation/rules/work/refusals';
import { tickedWithin } from '@/lib/installation/rules/work/ticks';
import { db } from '@/lib/platform/db/client';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { openOrder } from './open-order';
import { signOrder } from './sign';
import { addSnag } from './snags';

/** What came with an entry besides its words: a picture, and what the browser says it is. */
export type Along = { picture: Blob | null; device: string };

/** An entry that was taken in; the number of the receipt where it was the signature. */
export type Taken = { id: string; receiptNumber: number | null };

/** An entry of which nothing is handed over. */
type Remembered = Exclude<WorkEntry, WorkEntryOf<'sign'>>;

/**
 * Takes in what a device kept of a work order: a tick, a weight, a picture, a snag, the signature.
 * The device made its key, so that it counts once however often it is sent.
 *
 * @returns refuses, in this order: not allowed, somebody else wrote it on that device, a picture or
 *   a drawing that cannot be kept, a key used for something else, no such appointment, called off,
 *   then what is said at {@link addTick}, {@link addSnag} and {@link signOrder}
 */
export async function keepWorkEntry(
  doer: Doer,
  entry: WorkEntry,
  along: Along,
): Promise<Result<Taken, AnyWorkRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  if (entry.madeById !== doer.actor.id) return somebodyElse(entry.madeById);
  if (entry.did === 'sign') return signOrder(doer, entry, along.device);
  const ready = await readyOf(entry, along.picture);
  if (!ready.ok) return ready;
  const sha256 = ready.value?.sha256 ?? null;
  const command = { key: entry.id, name: 'keepWorkEntry', staffId: doer.actor.id, at: doer.at };
  return onceOnly<Taken, AnyWorkRefusal>({ ...command, input: { entry, sha256 } }, async (tx) => {
    const order = await openOrder(tx, entry.appointmentId);
    if (!order.ok) return order;
    const kept = await keepInside(tx, doer, { entry, order: order.value, picture: ready.value });
    return kept.ok ? ok({ id: entry.id, receiptNumber: null }) : kept;
  });
}

async function somebodyElse(madeById: string): Promise<Result<never, WorkRefusal>> {
  const row = await db().staff.findUnique({ where: { id: madeById }, select: { name: true } });
  return refuse({ code: 'somebody_else', name: row?.name ?? 'Somebody else' });
}

async function readyOf(
  entry: Remembered,
  picture: Blob | null,
): Promise<Result<ReadyPicture | null, AnyWorkRefusal>> {
  if (entry.did !== 'picture') return ok(null);
  return readyPicture(picture ?? new Blob([]));
}

type Inside = { entry: Remembered; order: OrderLoaded; picture: ReadyPicture | null };

async function keepInside(
  tx: Tx,
  doer: Doer,
  { entry, order, picture }: Inside,
): Promise<Result<unknown, AnyWorkRefusal>> {
  if (entry.did === 'tick') return addTick(tx, doer, { entry, order });
  const { commissionId } = order;
  if (commissionId === null) return refuse({ code: 'no_commission_here' });
  const { timeZone } = await getGallery(tx);
  const on = dayOf(within(entry, order, doer), timeZone);
  if (entry.did === 'snag') {
    const { words, mendById, mendByOn, appointmentId } = entry;
    return addSnag(tx, doer, {
      commissionId,
      appointmentId,
      words,
      mendById,
      mendByOn,
      writtenOn: on,
    });
  }
  const nothing = { firing: '', batchId: null, shared: 'no' } as const;
  const { words } = entry;
  if (entry.did === 'weigh') {
    const weighed = { kind: 'weight', weightG: entry.weightG, picture: null } as const;
    return addProgress(tx, doer, { ...nothing, ...weighed, commissionId, words, on });
  }
  const kind = entry.of === 'fixings' ? 'fixing' : 'picture';
  const pictured = {
    kind,
    weightG: null,
    picture,
    words: words || pictureWords[entry.of],
  } as const;
  return addProgress(tx, doer, { ...nothing, ...pictured, commissionId, on });
}

const pictureWords = {
  fixings: 'The fixings, before the piece covers them',
  in_place: 'In its place',
} as const;

function within(entry: WorkEntry, { bookedAt }: OrderLoaded, doer: Doer): Date {
  return tickedWithin(entry.at, { bookedAt, receivedAt: doer.at });
}

/**
 * Keeps a tick; joins the caller's transaction. The owner's word that a piece goes before it is
 * paid is the owner's alone.
 *
 * @returns refuses `not_the_owners_word`
 */
export async function addTick(
  tx: Tx,
  doer: Doer,
  { entry, order }: { entry: WorkEntryOf<'tick'>; order: OrderLoaded },
): Promise<Result<true, WorkRefusal>> {
  const { id, item, isDone, words, appointmentId } = entry;
  if (item === 'owner_word' && !allow(doer.actor, 'commissions.hand_over').ok) {
    return refuse({ code: 'not_the_owners_word' });
  }
  await tx.workTick.create({
    data: {
      ...{ id, appointmentId, item, isDone, words },
      tickedAt: within(entry, order, doer),
      receivedAt: doer.at,
      staffId: doer.actor.id,
    },
    select: { id: true },
  });
  if (item === 'owner_word' && order.commissionId) {
    const told = { commissionId: order.commissionId, facts: { words, isDone } };
    await tellHistory(tx, doer, { ...told, did: 'said whether it goes before it is paid' });
  }
  return ok(true);
}
