import type { Actor, Doer } from '@/lib/access/rules';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { addAssembly } from '@/lib/installation/writes/assembly/set';
import { addAppointment } from '@/lib/installation/writes/diary/put';
import { addPlan } from '@/lib/installation/writes/plan/keep';
import { addSurvey } from '@/lib/installation/writes/survey/keep';
import type { Tx } from '@/lib/platform/db/transaction';
import { lengthOf } from '@/seed/catalogue';
import type { StoryPictures } from '@/seed/commission-pictures';
import { done } from '@/seed/done';
import type { CommissionStory } from '@/seed/scenario/commission-story';
import { gallery } from '@/seed/scenario/gallery';
import { surveyOf, wallsFound } from '@/seed/scenario/walls';

type OfStory = { commissionId: string; story: CommissionStory };

/** Sets the pieces on their board, a week before anything may stand. */
export async function setOnBoard(
  tx: Tx,
  maker: Actor,
  { commissionId, on }: { commissionId: string; on: Day },
): Promise<void> {
  const doer = { actor: maker, at: instantOf(on, '17:20', gallery.timeZone) };
  done(
    await addAssembly(tx, doer, {
      ...{ commissionId, board: '3/4 in plywood, sealed, braced behind', lot: 'B 7731' },
      adhesive: 'Polymer-modified mortar, white',
      set: { on, at: '16:40', cureHours: 7 * 24 },
      ...{ roomC: 17, scrapKept: true, note: 'Back-buttered, with joints of 3/16 in' },
    }),
  );
}

type ToLook = OfStory & { maker: Actor; on: Day; pictures: StoryPictures };

/** Looks at the wall. */
export async function lookAtWall(tx: Tx, look: ToLook): Promise<string> {
  const { commissionId, story, maker, on, pictures } = look;
  const doer = { actor: maker, at: instantOf(on, '15:10', gallery.timeZone) };
  const found = wallsFound[story.title] ?? {
    said: { wall: story.wall ?? ('wood_studs' as const), provedHow: 'Magnet and drill dust.' },
    obstacles: [],
  };
  const added = await addSurvey(tx, doer, {
    ...{ commissionId, seenVersion: 0, keptPictures: [], pictures: [pictures.wall] },
    survey: { ...surveyOf(found), surveyedOn: on },
    obstacles: [...found.obstacles],
  });
  return done(added).surveyId;
}

/** Plans how a piece hangs on a wall of wood studs: an aluminium rail, two screws in each stud. */
export async function planIt(
  tx: Tx,
  doer: Doer,
  plan: OfStory & { surveyId: string; weightG: number },
): Promise<void> {
  const { commissionId, story, surveyId, weightG } = plan;
  const piece = {
    widthUm: lengthOf(story.width ?? '48 in'),
    heightUm: lengthOf(story.height ?? '30 in'),
    ...{ depthUm: lengthOf('2 1/4 in'), weightG },
  };
  done(
    await addPlan(tx, doer, {
      ...{ commissionId, surveyId },
      asked: {
        piece,
        hanging: {
          middleUm: lengthOf('60 in'),
          height: { by: 'eye', eyeUm: lengthOf('58 in') },
          cleat: {
            ...{ made: 'plywood', thicknessUm: lengthOf('3/4 in'), heightUm: lengthOf('4 in') },
            ...{ lengthUm: null, fromTopUm: lengthOf('4 in'), bevelDeg: 45, railRatedG: null },
          },
          fixing: {
            ...{ by: 'screw', screw: 'no_14', lengthUm: lengthOf('3 1/2 in') },
            ...{ isStainless: false, perUpright: null },
          },
          ...{ backingUm: null, safetyFactor: 3 },
        },
      },
    }),
  );
}

type ToHang = OfStory & { day: Day; maker: Actor; along: Actor };

/** Books the day on which the piece is hung. */
export async function bookHanging(tx: Tx, doer: Doer, hang: ToHang): Promise<void> {
  const { commissionId, story, day, maker, along } = hang;
  done(
    await addAppointment(tx, doer, {
      ...{ kind: 'hanging', commissionId, leadId: maker.id, crewIds: [along.id], day },
      ...{ from: '10:00', to: '13:00', travelMinutes: 35 },
      address: story.siteAddress ?? 'At the gallery',
      meets: `${story.collector}; they sign.`,
      prepares: 'Wall painted a week before, furniture moved, an outlet free.',
      fallBack: 'Ice on the inlet road: the next morning at the same hour.',
      note: 'Two people, the long level, spare fixings, touch-up wax. Ask about wires and pipes.',
    }),
  );
}

type ToVisit = OfStory & { day: Day; owner: Actor };

/** Books a visit to measure the wall. */
export async function bookVisit(tx: Tx, doer: Doer, visit: ToVisit): Promise<void> {
  const { commissionId, story, day, owner } = visit;
  done(
    await addAppointment(tx, doer, {
      ...{ kind: 'site_visit', commissionId, leadId: owner.id, day, from: '14:00', to: '15:30' },
      ...{ address: story.siteAddress ?? 'Ask for the way', travelMinutes: 25 },
      note: 'Tape, long level, stud finder, kraft paper for the outline, colour tiles.',
    }),
  );
}

/** The day on which a piece was set on its board: a day before it is seen to cure. */
export function boardOn(curingOn: Day): Day {
  return addDays(curingOn, -1);
}
