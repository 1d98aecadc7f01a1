import type { Actor, Doer } from '@/lib/access/rules';
import { addAgreement } from '@/lib/commissions/writes/agreement';
import { addInstalment } from '@/lib/commissions/writes/money/ask';
import { addEnd } from '@/lib/commissions/writes/end';
import { addHandOver } from '@/lib/commissions/writes/hand-over';
import { addCommissionJob, addWordToBegin } from '@/lib/commissions/writes/making';
import { addPayment } from '@/lib/commissions/writes/money';
import { requestFields } from '@/lib/commissions/input/request';
import { addCommission } from '@/lib/commissions/writes/request';
import { addApproval } from '@/lib/commissions/writes/colours/approve';
import { addColourTile, addSketch, type Shown } from '@/lib/commissions/writes/colours/show';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok } from '@/lib/platform/result';
import { gridOf } from '@/lib/studio/rules/parts/laying';
import { drawPartsStep } from '@/lib/studio/writes/parts/draw';
import { lengthOf } from './catalogue';
import type { StoryPictures } from './commission-pictures';
import {
  boardOn,
  bookHanging,
  bookVisit,
  lookAtWall,
  planIt,
  setOnBoard,
} from './commissions/hanging';
import { done } from './done';
import { colourwayOf } from './pictures/colourways';
import { stages, type CommissionStory, type Stage } from './scenario/commission-story';
import { gallery } from './scenario/gallery';
import { wallsFound } from './scenario/walls';
import type { SetUp } from './set-up';
import { walkJob } from './studio';

export type { Stage };

type Play = {
  today: Day;
  setUp: SetUp;
  collectors: ReadonlyMap<string, string>;
  story: CommissionStory;
  pictures: StoryPictures;
  dayOfStage: (stage: Stage) => Day;
};

type Scene = Play & { tx: Tx; commissionId: string };

/** Plays one story in one transaction, each step on its own day. */
export async function playStory(play: Play): Promise<void> {
  const played = await inTransaction<true, never>(
    async (tx) => {
      const logged = done(
        await addCommission(tx, at(play, 'asked', play.setUp.seller), asked(play)),
      );
      await goOn({ ...play, tx, commissionId: logged.commissionId });
      return ok(true as const);
    },
    { timeoutMs: 120_000 },
  );
  invariant(played.ok, 'The demo is not refused.');
}

function asked({ story, collectors, pictures, today }: Play) {
  const who = collectors.get(story.collector);
  invariant(who, `${story.collector} is a collector of the demo.`);
  const measure = (text: string | undefined) => (text === undefined ? null : lengthOf(text));
  return {
    who,
    pictures: story.room === undefined ? [] : [pictures.wall],
    fields: {
      ...requestFields.parse({ title: story.title }),
      title: story.title,
      wish: story.wish,
      avoid: story.avoid ?? '',
      colours: story.colours ?? '',
      room: story.room ?? null,
      wall: story.wall ?? null,
      exposure: story.exposure ?? null,
      siteAddress: story.siteAddress ?? null,
      widthUm: measure(story.width),
      heightUm: measure(story.height),
      depthUm: measure(story.depth),
      wishedOn: story.wishedInDays === undefined ? null : addDays(today, story.wishedInDays),
      budgetFromCents: story.budgetFromCents ?? null,
      budgetToCents: story.budgetToCents ?? null,
    },
  };
}

async function goOn(scene: Scene): Promise<void> {
  const reached = (stage: Stage) => stages.indexOf(scene.story.until) >= stages.indexOf(stage);
  if (reached('sketch shown')) await sketchAndAgree(scene, reached);
  if (reached('deposit asked')) await deposit(scene, reached);
  if (reached('ready to begin')) await making(scene);
  if (reached('curing')) await beforeHanging(scene, reached);
  if (reached('booked')) await booking(scene);
  if (scene.story.visitInDays !== undefined) await visiting(scene, scene.story.visitInDays);
  if (reached('handed over')) await handingOver(scene);
  const { story, tx, commissionId, today } = scene;
  if (story.endedWhy === undefined) return;
  const endedOn = addDays(today, -20);
  const doer = on(scene.setUp.owner, endedOn);
  done(await addEnd(tx, doer, { commissionId, why: story.endedWhy, endedOn }));
}

async function sketchAndAgree(scene: Scene, reached: (stage: Stage) => boolean): Promise<void> {
  const { tx, commissionId, story, pictures, setUp } = scene;
  const shownOn = scene.dayOfStage('sketch shown');
  const doer = at(scene, 'sketch shown', setUp.maker);
  const note = 'Pencil, one to ten. It does not show the depth, nor the fired colour.';
  const sketch = { commissionId, picture: pictures.sketch, note, shownOn };
  const shown = done(await addSketch(tx, doer, sketch));
  if (!reached('agreed') || story.priceCents === undefined) return;
  await sayYes(scene, 'sketch', shown, 'agreed');
  done(
    await addAgreement(tx, at(scene, 'agreed', setUp.owner), {
      commissionId,
      priceCents: story.priceCents,
      deposit: { as: 'percent', percent: '50' },
      taxPlaceId: setUp.taxPlaceId,
      promisedOn: addDays(scene.today, story.wishedInDays ?? -30),
      agreedOn: scene.dayOfStage('agreed'),
      agreedBy: story.collector,
    }),
  );
}

async function deposit(scene: Scene, reached: (stage: Stage) => boolean): Promise<void> {
  const { tx, commissionId, story, pictures, setUp } = scene;
  const agreement = await tx.agreement.findFirstOrThrow({ where: { commissionId } });
  const askedOn = scene.dayOfStage('deposit asked');
  const asking = done(
    await addInstalment(tx, at(scene, 'deposit asked', setUp.seller), {
      commissionId,
      name: 'Deposit',
      amountCents: agreement.depositCents,
      dueOn: addDays(askedOn, 14),
      stepPosition: 1,
    }),
  );
  if (!reached('colours shown')) return;
  if (story.begunEarlyWhy === undefined) {
    await pay(scene, 'colours shown', agreement.depositCents, asking.instalmentId);
  }
  const { name, description, measured } = colourwayOf(story.colourway);
  const tile = {
    ...measured,
    commissionId,
    picture: pictures.tile,
    glazes: `${name}, two coats, cone 6. ${description}`,
    shownOn: scene.dayOfStage('colours shown'),
  };
  const shown = done(await addColourTile(tx, at(scene, 'colours shown', setUp.maker), tile));
  if (reached('ready to begin')) await sayYes(scene, 'colour_tile', shown, 'ready to begin');
}

async function sayYes(
  scene: Scene,
  what: 'sketch' | 'colour_tile',
  shown: Shown,
  stage: Stage,
): Promise<void> {
  const { tx, commissionId, story, setUp } = scene;
  const yes = {
    ...{ commissionId, what, shownId: shown.id, contentSha256: shown.contentSha256 },
    approvedBy: story.collector,
    how: 'signed_card' as const,
    approvedOn: scene.dayOfStage(stage),
  };
  done(await addApproval(tx, at(scene, stage, setUp.maker), yes));
}

async function pay(
  scene: Scene,
  stage: Stage,
  amountCents: bigint,
  instalmentId: string | null,
): Promise<void> {
  const { tx, commissionId, story, setUp } = scene;
  const kind = 'bank_transfer' as const;
  const paidBy = story.collector;
  const payment = { commissionId, instalmentId, amountCents, kind, reference: '', paidBy };
  done(await addPayment(tx, at(scene, stage, setUp.seller), payment));
}

/** How many moves are behind it when a stage is reached: to the first step is one. */
const movesUntil: Partial<Record<Stage, number>> = {
  drying: 4,
  bisque: 5,
  glazing: 6,
  curing: 11,
  finished: 14,
  booked: 14,
  'handed over': 14,
};

async function making(scene: Scene): Promise<void> {
  const { tx, commissionId, story, setUp, today } = scene;
  const pieces = story.parts ?? 40;
  const job = done(
    await addCommissionJob(tx, at(scene, 'ready to begin', setUp.maker), {
      ...{ commissionId, technique: 'slab_relief', pieces, neededOn: null },
    }),
  );
  await drawParts(scene, job.id);
  const moves = movesUntil[story.until];
  if (moves === undefined) return;
  if (story.begunEarlyWhy !== undefined) {
    const doer = at(scene, 'ready to begin', setUp.owner);
    done(await addWordToBegin(tx, doer, { commissionId, why: story.begunEarlyWhy }));
  }
  const first = scene.dayOfStage('drying');
  const lastOn = scene.dayOfStage(stages.indexOf(story.until) > 10 ? 'finished' : story.until);
  const days = Math.max(1, daysFrom(first, lastOn, today));
  await walkJob(tx, setUp.maker, {
    ...{ jobId: job.id, pieces },
    moves: Array.from({ length: moves }, (_, move) =>
      addDays(first, Math.round((days * move) / Math.max(1, moves - 1))),
    ),
  });
}

/** The numbered drawing over the sketch, as a grid. */
async function drawParts(scene: Scene, jobId: string): Promise<void> {
  const { tx, commissionId, story, setUp } = scene;
  if (!story.drawnAs) return;
  const sketch = await tx.sketch.findFirstOrThrow({ where: { commissionId } });
  const shapes = gridOf({ ...story.drawnAs, isOffset: false });
  done(
    await drawPartsStep(tx, at(scene, 'ready to begin', setUp.maker), {
      ...{ jobId, version: 0, over: null, fileId: sketch.fileId, shapes },
      ...{ widthUm: lengthOf(story.width ?? '60 in'), heightUm: lengthOf(story.height ?? '36 in') },
    }),
  );
}

function daysFrom(first: Day, last: Day, today: Day): number {
  let days = 0;
  for (let day = first; day < last && day < today; day = addDays(day, 1)) days += 1;
  return days;
}

async function booking(scene: Scene): Promise<void> {
  const { tx, commissionId, story, setUp, today } = scene;
  const isPast = story.until === 'handed over';
  const day = isPast ? scene.dayOfStage('handed over') : addDays(today, story.wishedInDays ?? 9);
  await bookHanging(tx, at(scene, 'booked', setUp.seller), {
    ...{ commissionId, story, day, maker: setUp.maker, along: setUp.seller },
  });
}

/** Set on its board, the wall looked at, and where it is heavy and the wall is of wood, planned. */
async function beforeHanging(scene: Scene, reached: (stage: Stage) => boolean): Promise<void> {
  const { tx, commissionId, story, setUp, pictures } = scene;
  const { maker } = setUp;
  await setOnBoard(tx, maker, { commissionId, on: boardOn(scene.dayOfStage('curing')) });
  if (!reached('booked') && wallsFound[story.title] === undefined) return;
  const look = { commissionId, story, maker, on: scene.dayOfStage('agreed'), pictures };
  const surveyId = await lookAtWall(tx, look);
  if (story.weightG === undefined) return;
  const doer = at(scene, 'curing', maker);
  await planIt(tx, doer, { commissionId, story, surveyId, weightG: story.weightG });
}

async function visiting(scene: Scene, inDays: number): Promise<void> {
  const { tx, commissionId, story, setUp, today } = scene;
  const doer = on(setUp.seller, addDays(today, Math.min(inDays, 0) - 1));
  const day = addDays(today, inDays);
  await bookVisit(tx, doer, { commissionId, story, day, owner: setUp.owner });
}

async function handingOver(scene: Scene): Promise<void> {
  const { tx, commissionId, story, setUp } = scene;
  const handedOn = scene.dayOfStage('handed over');
  const doer = on(setUp.owner, handedOn);
  const evenIfOwed = 'Known to us for years; pays when it hangs.';
  const signed = { commissionId, signedBy: story.collector, handedOn, evenIfOwed };
  const handed = done(await addHandOver(tx, doer, signed));
  if (story.paidInFull !== true) return;
  const total = BigInt(handed.totalCents);
  const paid = await tx.commissionPayment.aggregate({
    where: { commissionId },
    _sum: { amountCents: true },
  });
  await pay(scene, 'handed over', total - (paid._sum.amountCents ?? 0n), null);
}

function at(scene: Play, stage: Stage, actor: Actor): Doer {
  return on(actor, scene.dayOfStage(stage));
}

function on(actor: Actor, day: Day): Doer {
  return { actor, at: instantOf(day, '16:10', gallery.timeZone) };
}
