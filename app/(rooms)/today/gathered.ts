import { isAllowed, type Actor } from '@/lib/access/rules';
import { listWaiting, type CommissionWaiting } from '@/lib/commissions/reads';
import { dayOf, type Day } from '@/lib/dates/rules';
import { listNext, type InDiary } from '@/lib/installation/reads';
import { dayToldWords } from '@/lib/installation/rules/diary/weeks';
import { getGallery } from '@/lib/platform/settings';
import { listReceiptsOn, type DayOfReceipts } from '@/lib/sales/reads/receipts-of-day';
import { listStandingTooLong, type OnBench } from '@/lib/studio/reads';
import { listSoldOut, type SoldOut } from '@/lib/studio/reads/make-next';
import { gatherToSeeTo } from './see-to';
import type { ToSeeTo } from './to-see-to';

/** Whose clock is running for the commissions of a group. */
export type WaitsOn = 'gallery' | 'studio' | 'collector';

/** Commissions that wait on the same party, the longest waiting first. */
export type WaitingGroup = { on: WaitsOn; commissions: readonly CommissionWaiting[] };

/** Everything that needs a person today; null where this person may not look. */
export type Today = {
  title: string;
  todayOn: Day;
  zone: string;
  waiting: readonly WaitingGroup[];
  diary: readonly InDiary[] | null;
  tooLong: readonly OnBench[] | null;
  noneLeft: readonly SoldOut[];
  taken: DayOfReceipts | null;
  toSeeTo: readonly ToSeeTo[];
  /** Whoever sells makes the calls first; to the others their own turn comes first. */
  sells: boolean;
  mayMake: boolean;
};

const appointmentsMost = 5;
const soldOutMost = 6;

/** Gathers the first page of the day for one person. */
export async function getToday(actor: Actor, at: Date): Promise<Today> {
  const gallery = await getGallery();
  const todayOn = dayOf(at, gallery.timeZone);
  const may = (permission: Parameters<typeof isAllowed>[1]) => isAllowed(actor.roles, permission);
  const [waiting, diary, tooLong, noneLeft, taken, toSeeTo] = await Promise.all([
    listWaiting(actor),
    may('diary.see')
      ? listNext(actor, at, { zone: gallery.timeZone, most: appointmentsMost })
      : null,
    may('studio.see') ? listStandingTooLong(actor, todayOn) : null,
    listSoldOut(actor, { floorId: gallery.counterId, todayOn, most: soldOutMost }),
    may('receipts.see') ? listReceiptsOn(actor, todayOn) : null,
    gatherToSeeTo(actor, { at, todayOn, zone: gallery.timeZone }),
  ]);
  return {
    title: dayToldWords(todayOn, todayOn).replace('Today, ', ''),
    todayOn,
    zone: gallery.timeZone,
    waiting: groupsOf(waiting, may('counter.sell') || !may('studio.move')),
    diary,
    tooLong,
    noneLeft,
    taken,
    toSeeTo,
    sells: may('counter.sell'),
    mayMake: may('studio.move'),
  };
}

/** One's own turn comes first: the gallery's for whoever sells, the studio's for the makers. */
function groupsOf(waiting: readonly CommissionWaiting[], sells: boolean): WaitingGroup[] {
  const order: WaitsOn[] = sells
    ? ['gallery', 'studio', 'collector']
    : ['studio', 'gallery', 'collector'];
  return order
    .map((on) => ({ on, commissions: waiting.filter((one) => one.waitsOn === on) }))
    .filter((group) => group.commissions.length > 0);
}

/** Whether nothing at all needs anybody. */
export function isQuiet(today: Today): boolean {
  const { waiting, diary, tooLong, noneLeft, toSeeTo } = today;
  const parts = [waiting, diary ?? [], tooLong ?? [], noneLeft, toSeeTo];
  return parts.every((part) => part.length === 0) && (today.taken?.receipts.length ?? 0) === 0;
}
