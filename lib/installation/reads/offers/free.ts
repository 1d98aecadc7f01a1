import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dayOf, dayStartAt, type Day } from '@/lib/dates/rules';
import type { SlotWishInput } from '@/lib/installation/input/offers/days';
import { loadWays, readClosed } from '@/lib/installation/reads/diary/asks';
import { everyone, loadHangsOn } from '@/lib/installation/reads/diary/booking';
import { loadBusy } from '@/lib/installation/reads/diary/busy';
import { readReadyForKind } from '@/lib/installation/reads/diary/ready';
import type { Span } from '@/lib/installation/rules/diary/kinds';
import type { ReadyBy } from '@/lib/installation/rules/diary/questions';
import { freeSlots } from '@/lib/installation/rules/offers/slots';
import { db } from '@/lib/platform/db/client';

/** Free times, the days within which they were looked for, and what they had to wait for. */
export type FreeTimes = {
  slots: Span[];
  fromOn: Day;
  untilOn: Day;
  ready: ReadyBy | null;
  isWallKnown: boolean;
  /** Until when the adhesive cures, where that is still to come. */
  curesAt: Date | null;
};

/** How far ahead is looked where no last day is given: four weeks. */
const aheadDays = 28;

/**
 * The free times for a commission and for whoever goes along.
 *
 * Where no days are given: from the day it is ready and cured, tomorrow at the earliest, for four
 * weeks.
 */
export async function findFreeTimes(
  actor: Actor,
  commissionId: string,
  { wish, zone, now }: { wish: SlotWishInput; zone: string; now: Date },
): Promise<FreeTimes> {
  assertAllowed(actor, 'diary.book');
  const todayOn = dayOf(now, zone);
  const { kind, minutes, address, travelMinutes } = wish;
  const ready = await readReadyForKind({ kind, commissionId }, todayOn);
  const hangsOn = await loadHangsOn(db(), commissionId);
  const cures = kind === 'hanging' ? hangsOn.curesAt : null;
  const curesAt = cures && cures > now ? cures : null;
  const firstOn = [
    addDays(todayOn, 1),
    ready?.readyOn ?? todayOn,
    cureDay(curesAt, zone) ?? todayOn,
  ];
  const fromOn = wish.fromOn ?? firstOn.toSorted().at(-1) ?? todayOn;
  const untilOn = wish.untilOn ?? addDays(fromOn, aheadDays);
  const fromAt = dayStartAt(fromOn, zone);
  const untilAt = dayStartAt(addDays(untilOn, 1), zone);
  const crew = await loadBusy(db(), everyone(wish), { fromAt, untilAt, exceptId: null });
  const place = { address, travelMinutes };
  const facts = {
    ...{ zone, now, place, crew, ready, curesAt },
    ways: await loadWays(db(), place, crew),
    closed: await readClosed(db()),
  };
  const slots = crew.length === 0 ? [] : freeSlots(facts, { fromOn, untilOn, minutes });
  const { isWallKnown } = hangsOn;
  return { slots, fromOn, untilOn, ready, isWallKnown, curesAt };
}

function cureDay(curesAt: Date | null, zone: string): Day | null {
  return curesAt && dayOf(curesAt, zone);
}
