import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { weightEstimate } from '@/lib/commissions/rules/enquiry/weight';
import { dayOf } from '@/lib/dates/rules';
import { loadHangsOn } from '@/lib/installation/reads/diary/booking';
import { readReadyBy } from '@/lib/installation/reads/diary/ready';
import type { WeightTold } from '@/lib/installation/rules/crew/enough';
import type { HangsOn } from '@/lib/installation/rules/diary/booking';
import type { ReadyBy } from '@/lib/installation/rules/diary/questions';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';

/** What is known of a commission before a day is booked for it. */
export type BeforeBooking = {
  /** Null when the piece is ready. */
  ready: ReadyBy | null;
  hangsOn: HangsOn;
  isCuring: boolean;
  weight: WeightTold | null;
};

/** Reads what is known of a commission before a day is booked for it. */
export async function findBeforeBooking(
  actor: Actor,
  commissionId: string,
): Promise<BeforeBooking> {
  assertAllowed(actor, 'diary.see');
  const at = now();
  const { timeZone } = await getGallery();
  const hangsOn = await loadHangsOn(db(), commissionId);
  return {
    hangsOn,
    ready: await readReadyBy(db(), commissionId, dayOf(at, timeZone)),
    isCuring: hangsOn.curesAt !== null && hangsOn.curesAt > at,
    weight: await readWeight(db(), commissionId),
  };
}

/** What the piece of a commission weighs: the last time it stood on a scale, else as it is reckoned. */
export async function readWeight(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<WeightTold | null> {
  const row = await from.commission.findUnique({
    where: { id: commissionId },
    select: {
      ...{ widthUm: true, heightUm: true },
      progress: {
        where: { weightG: { not: null } },
        select: { weightG: true },
        orderBy: [{ on: 'desc' }, { at: 'desc' }, { id: 'desc' }],
        take: 1,
      },
    },
  });
  const scaleG = row?.progress[0]?.weightG ?? null;
  if (scaleG !== null) return { weightG: scaleG, isByScale: true };
  const reckoned = row && weightEstimate(row, 'in');
  return reckoned && { weightG: reckoned.weightG, isByScale: false };
}

/** The same for a page that has asked already who looks. */
export async function readWeightFor(commissionId: string): Promise<WeightTold | null> {
  return readWeight(db(), commissionId);
}
