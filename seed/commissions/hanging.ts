import type { Actor, Doer } from '@/lib/access/rules';
import { dateFromDay, instantOf, type Day } from '@/lib/dates/rules';
import { addAppointment } from '@/lib/installation/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { done } from '@/seed/done';
import type { CommissionStory } from '@/seed/scenario/commission-story';
import { gallery } from '@/seed/scenario/gallery';

type ToHang = {
  commissionId: string;
  story: CommissionStory;
  day: Day;
  maker: Actor;
  /** The day on which somebody looked at the wall. */
  lookedOn: Day;
};

/** Looks at the wall, and books the day on which the piece is hung. */
export async function bookHanging(tx: Tx, doer: Doer, hang: ToHang): Promise<void> {
  const { commissionId, story, day, maker, lookedOn } = hang;
  await tx.wallSurvey.create({
    data: {
      ...{ commissionId, version: 1, wall: story.wall ?? 'wood_studs' },
      provedHow: 'Magnet and an inspection hole.',
      surveyedOn: dateFromDay(lookedOn),
      staffId: maker.id,
      at: instantOf(lookedOn, '16:10', gallery.timeZone),
    },
  });
  done(
    await addAppointment(tx, doer, {
      ...{ kind: 'hanging', commissionId, leadId: maker.id, day, from: '10:00', to: '13:00' },
      address: story.siteAddress ?? 'At the gallery',
      note: 'Two people, the long level, spare fixings, touch-up wax. Ask about wires and pipes.',
    }),
  );
}

type ToVisit = { commissionId: string; story: CommissionStory; day: Day; owner: Actor };

/** Books a visit to measure the wall. */
export async function bookVisit(tx: Tx, doer: Doer, visit: ToVisit): Promise<void> {
  const { commissionId, story, day, owner } = visit;
  done(
    await addAppointment(tx, doer, {
      ...{ kind: 'site_visit', commissionId, leadId: owner.id, day, from: '14:00', to: '15:30' },
      address: story.siteAddress ?? 'Ask for the way',
      note: 'Tape, long level, stud finder, kraft paper for the outline, colour tiles.',
    }),
  );
}
