import { isAllowed, type Actor } from '@/lib/access/rules';
import { listTagsToRewrite } from '@/lib/catalogue/reads/prices';
import type { Day } from '@/lib/dates/rules';
import { listHolds, type HoldTold } from '@/lib/holds/reads/hold-list';
import { listWaiting } from '@/lib/holds/reads/waiting-list';
import { countLooksDue } from '@/lib/installation/reads/care/looks';
import { countSnagsOverdue } from '@/lib/installation/reads/work/snags';
import { listProofMissing } from '@/lib/sales/reads/receipts-of-day';
import { countSending } from '@/lib/sending/reads/pressing';
import { gatherPromises } from '@/app/(rooms)/promises/gathered';
import type { ToSeeTo } from './to-see-to';

/** How many calls stand by name; the others are counted. */
const callsNamed = 3;

/** Gathers what wants seeing to at the counter and in the stock room, for one person. */
export async function gatherToSeeTo(
  actor: Actor,
  { at, todayOn, zone }: Readonly<{ at: Date; todayOn: Day; zone: string }>,
): Promise<ToSeeTo[]> {
  const may = (permission: Parameters<typeof isAllowed>[1]) => isAllowed(actor.roles, permission);
  const [holds, waiting, promises, tags, unproven, snags, looks, sent] = await Promise.all([
    may('stock.hold') ? listHolds(actor, at) : null,
    may('stock.hold') ? listWaiting(actor) : [],
    may('orders.see') ? gatherPromises(actor, todayOn, zone) : [],
    may('stock.move') ? listTagsToRewrite(actor, todayOn) : [],
    may('counter.sell') ? listProofMissing(actor) : [],
    may('installation.do') ? countSnagsOverdue(actor, todayOn) : 0,
    may('installation.do') ? countLooksDue(actor, todayOn) : 0,
    may('sending.do') ? countSending(actor, todayOn) : { toAsk: 0, claims: 0 },
  ]);
  const back = waiting.filter((each) => each.standing === 'free_now').length;
  const late = promises.filter((each) => each.isLate).length;
  return [
    ...callsTold(holds?.toCall ?? []),
    ...counted('back', back, '/holds', (n) => `${people(n)} can be told that a piece is back.`),
    ...counted('late', late, '/promises', (n) => `${things(n, 'promise')} past its day.`),
    ...counted('tags', tags.length, '/prices', (n) => `${tagsWords(n)} to be written anew.`),
    ...counted(
      'snags',
      snags,
      '/diary/after-care#snags',
      (n) => `${things(n, 'snag')} past the day of mending.`,
    ),
    ...counted(
      'looks',
      looks,
      '/diary/after-care#looks',
      (n) => `${n === 1 ? 'One look after a piece is' : `${n} looks after pieces are`} due.`,
    ),
    ...counted(
      'sent',
      sent.toAsk,
      '/sending',
      (n) => `${things(n, 'shipment')} to look after while damage can be told.`,
    ),
    ...counted('claims', sent.claims, '/sending', (n) => `${things(n, 'claim')} open.`),
    ...counted('proof', unproven.length, '/receipts', (n) => `${slipsWords(n)} missing.`),
  ];
}

function callsTold(toCall: readonly HoldTold[]): ToSeeTo[] {
  const named = toCall.slice(0, callsNamed).map((hold) => ({
    key: `hold ${hold.number}`,
    href: `/holds/${hold.number}`,
    sentence: `${hold.title} is held for ${hold.forWhom}: ${
      hold.standing === 'lapsed' ? 'its hour has passed' : 'it lapses within a day'
    }. Call.`,
  }));
  const more = toCall.length - named.length;
  const others = counted(
    'calls',
    more,
    '/holds',
    (n) => `${things(n, 'more hold')} to call about.`,
  );
  return [...named, ...others];
}

function counted(
  key: string,
  count: number,
  href: string,
  words: (count: number) => string,
): ToSeeTo[] {
  return count > 0 ? [{ key, href, sentence: words(count) }] : [];
}

function people(count: number): string {
  return count === 1 ? 'One person' : `${count} people`;
}

function things(count: number, name: string): string {
  return count === 1 ? `One ${name} is` : `${count} ${name}s are`;
}

function tagsWords(count: number): string {
  return count === 1 ? 'One tag is' : `${count} tags are`;
}

function slipsWords(count: number): string {
  return count === 1 ? 'One carrier’s slip is' : `${count} carriers’ slips are`;
}
