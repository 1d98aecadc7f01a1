import { createHash } from 'node:crypto';
import type { Actor } from '@/lib/access/rules';
import type { KeepProgressInput } from '@/lib/commissions/input/course-told';
import { addFired } from '@/lib/commissions/writes/colours/tiles';
import { addProgress } from '@/lib/commissions/writes/course/progress';
import { addDelay } from '@/lib/commissions/writes/course/tell-delay';
import type { ReadyPicture } from '@/lib/files/ready';
import { addDays, dayFromDate, instantOf, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { renderPiece } from '@/seed/pictures/piece';
import { gallery } from '@/seed/scenario/gallery';

type Demo = { today: Day; maker: Actor };

/** What was remembered of one commission of the demo, by days before today. */
type Remembered = {
  title: string;
  piece: { motif: string; colourway: string; proportion: number };
  pictures: readonly { daysAgo: number; words: string }[];
  weight: { daysAgo: number; weightG: number; words: string };
  firing: { daysAgo: number; firing: string };
  fixing?: { daysAgo: number; words: string };
};

const remembered: readonly Remembered[] = [
  {
    title: 'Cedars at the ford',
    piece: { motif: 'cedar', colourway: 'copper', proportion: 60 / 36 },
    pictures: [{ daysAgo: 12, words: 'Laid out whole, before it is glued' }],
    weight: { daysAgo: 12, weightG: 48_500, words: 'All sixty parts, without the board' },
    firing: { daysAgo: 17, firing: 'glaze 41' },
  },
  {
    title: 'Tide pools, three in a row',
    piece: { motif: 'star', colourway: 'cobalt', proportion: 66 / 20 },
    pictures: [{ daysAgo: 31, words: 'Finished, in the light of the north window' }],
    weight: { daysAgo: 31, weightG: 33_100, words: 'The heaviest of the three with its board' },
    firing: { daysAgo: 44, firing: 'glaze 38' },
  },
  {
    title: 'Salmonberry hedge',
    piece: { motif: 'salmonberry', colourway: 'copper', proportion: 2 },
    pictures: [{ daysAgo: 19, words: 'In its place in the kitchen' }],
    weight: { daysAgo: 30, weightG: 29_900, words: 'With its board and its cleat' },
    firing: { daysAgo: 44, firing: 'glaze 37' },
    fixing: {
      daysAgo: 19,
      words: 'One cleat across four studs behind the lath, found and marked before it was covered.',
    },
  },
];

/** Draws the pictures of the making before anything is written. */
export async function drawMaking(): Promise<ReadonlyMap<string, ReadyPicture>> {
  const drawn = remembered.map(async ({ title, piece }) => {
    const { bytes, ...size } = await renderPiece({ kind: 'wall_panel', seed: title, ...piece });
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    return [title, { bytes, ...size, mediaType: 'image/webp', sha256 }] as const;
  });
  return new Map(await Promise.all(drawn));
}

/** Plays what was remembered of the making, a notice of delay, and a fired part that was measured. */
export async function playMaking(
  tx: Tx,
  demo: Demo,
  pictures: ReadonlyMap<string, ReadyPicture>,
): Promise<void> {
  for (const story of remembered) {
    const commissionId = await idOf(tx, story.title);
    for (const said of progressOf(story, pictures.get(story.title) ?? null)) {
      const { daysAgo, ...kept } = said;
      const on = addDays(demo.today, -daysAgo);
      mustBe(await addProgress(tx, doerOn(demo, daysAgo), { ...kept, commissionId, on }));
    }
  }
  await playDelay(tx, demo);
  await playFired(tx, demo);
}

type Kept = Omit<KeepProgressInput, 'requestKey' | 'commissionId' | 'on' | 'picture'> & {
  daysAgo: number;
  picture: ReadyPicture | null;
};

const nothing = {
  ...{ words: '', picture: null, weightG: null, firing: '', batchId: null },
  shared: 'no',
} as const;

function progressOf(story: Remembered, picture: ReadyPicture | null): Kept[] {
  const { pictures, weight, firing, fixing } = story;
  return [
    { ...nothing, ...firing, kind: 'firing' },
    { ...nothing, ...weight, kind: 'weight' },
    ...pictures.map((each) => ({
      ...nothing,
      ...each,
      ...{ picture, kind: 'picture' as const, shared: 'yes' as const },
    })),
    ...(fixing ? [{ ...nothing, ...fixing, kind: 'fixing' as const }] : []),
  ];
}

async function playDelay(tx: Tx, demo: Demo): Promise<void> {
  const commissionId = await idOf(tx, 'Cedars at the ford');
  const { promisedOn } = await tx.agreement.findFirstOrThrow({
    where: { commissionId },
    select: { promisedOn: true },
  });
  invariant(promisedOn, 'It is promised for a day.');
  const told = {
    ...{ commissionId, clock: 'kiln' as const, toldHow: 'by letter' },
    why: 'A shelf gave way in the glaze firing; nine parts are fired once more.',
    ...{ toOn: addDays(dayFromDate(promisedOn), 8), toldOn: addDays(demo.today, -9) },
  };
  mustBe(await addDelay(tx, doerOn(demo, 9), told));
}

async function playFired(tx: Tx, demo: Demo): Promise<void> {
  const commissionId = await idOf(tx, 'Cedars at the ford');
  const tile = await tx.colourTile.findFirstOrThrow({
    where: { commissionId },
    select: { id: true },
  });
  const parts = [
    { where: 'part 14, the left trunk', lab: ['47.2', '-8.0', '15.6'] as const },
    { where: 'part 37, the far bank', lab: ['61.9', '-7.1', '20.4'] as const },
  ];
  for (const part of parts) {
    const held = { ...part, commissionId, tileId: tile.id, firing: 'glaze 41' };
    mustBe(await addFired(tx, doerOn(demo, 16), held));
  }
}

async function idOf(tx: Tx, title: string): Promise<string> {
  const { id } = await tx.commission.findFirstOrThrow({ where: { title }, select: { id: true } });
  return id;
}

function doerOn({ today, maker }: Demo, daysAgo: number) {
  return { actor: maker, at: instantOf(addDays(today, -daysAgo), '15:20', gallery.timeZone) };
}

function mustBe(result: { ok: boolean }): void {
  invariant(result.ok, 'The demo is not refused.');
}
