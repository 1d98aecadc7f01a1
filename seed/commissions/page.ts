import type { Doer } from '@/lib/access/rules';
import { addDayOffer } from '@/lib/installation/writes/offers/days';
import { addLink, newToken } from '@/lib/commissions/writes/page/link';
import { addDays, dateFromDay, dayOf, weekdayOf, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { gallery } from '@/seed/scenario/gallery';

/** What is played of a collector's own page: who opens it to whom, and who offers days. */
export type PagePlay = {
  tx: Tx;
  commissionTitle: string;
  seller: Doer;
  forName: string;
  /** Days for the hanging; left out where none are offered yet. */
  days?: { leadId: string; address: string; note: string; fromOn: Day };
};

/**
 * Opens the page of one of the demo's commissions, and offers three days where there are any to
 * offer. The address itself is thrown away: whoever wants to look makes a new one.
 */
export async function playPage(play: PagePlay): Promise<void> {
  const { tx, commissionTitle: title, seller, forName, days } = play;
  const { id: commissionId } = await tx.commission.findFirstOrThrow({
    where: { title },
    select: { id: true },
  });
  const secret = { token: newToken(), linkId: newId() };
  const opened = await addLink(tx, seller, { commissionId, forName, days: 60, ...secret });
  invariant(opened.ok, 'The demo is not refused.');
  if (!days) return;
  const { fromOn, ...where } = days;
  await lookAtDoor(tx, commissionId, seller);
  const offered = await addDayOffer(tx, seller, {
    ...{ ...where, commissionId, kind: 'hanging', minutes: 180 },
    days: [0, 2, 7].map((later, at) => ({
      day: afterSunday(addDays(fromOn, later)),
      from: at === 1 ? '13:00' : '09:00',
    })),
  });
  invariant(offered.ok, 'The demo is not refused.');
}

/** Nobody hangs anything on a Sunday here. */
function afterSunday(day: Day): Day {
  return weekdayOf(day) === 0 ? addDays(day, 1) : day;
}

/** No hanging is offered on a wall that nobody looked at: this one is of wood, round a door. */
async function lookAtDoor(tx: Tx, commissionId: string, doer: Doer): Promise<void> {
  if ((await tx.wallSurvey.count({ where: { commissionId } })) > 0) return;
  await tx.wallSurvey.create({
    data: {
      ...{ commissionId, version: 1, wall: 'wood_studs', staffId: doer.actor.id, at: doer.at },
      provedHow: 'Magnet on the screws of the board, and a hole behind the trim.',
      surveyedOn: dateFromDay(dayOf(doer.at, gallery.timeZone)),
    },
    select: { id: true },
  });
}
