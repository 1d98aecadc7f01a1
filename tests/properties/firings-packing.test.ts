import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { piecesToLay, proposeLoad, type WaitingForFire } from '@/lib/studio/rules/firings/load';
import {
  fillOf,
  layOnShelves,
  takesOf,
  type KilnRoom,
  type Laid,
  type ToLay,
} from '@/lib/studio/rules/firings/packing';

const mm = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((each) => each * 1_000);

const room: fc.Arbitrary<KilnRoom> = fc.record({
  insideHeightUm: mm(200, 900),
  shelfWidthUm: mm(250, 800),
  shelfDepthUm: mm(250, 800),
  shelfThickUm: mm(0, 30),
  shelves: fc.integer({ min: 1, max: 12 }),
});
const lying = fc.record({ widthUm: mm(20, 500), depthUm: mm(20, 500), heightUm: mm(5, 400) });
const load = fc
  .array(fc.tuple(lying, fc.integer({ min: 1, max: 25 })), { minLength: 1, maxLength: 6 })
  .map((lines) => lines.flatMap(([each, pieces], at) => piecesToLay(`job ${at}`, each, pieces)));
const around = mm(0, 15);

/** Whether two pieces, with the room that each keeps on its sides, share any place. */
function overlap(one: Laid, other: Laid, gap: number): boolean {
  const apart =
    one.xUm + one.widthUm + gap <= other.xUm - gap ||
    other.xUm + other.widthUm + gap <= one.xUm - gap ||
    one.yUm + one.depthUm + gap <= other.yUm - gap ||
    other.yUm + other.depthUm + gap <= one.yUm - gap;
  return !apart;
}

test.prop([room, load, around])(
  'pieces never overlap, and each keeps its room',
  (kiln, pieces, gap) => {
    for (const shelf of layOnShelves(kiln, pieces, gap).shelves) {
      for (const [at, one] of shelf.pieces.entries()) {
        for (const other of shelf.pieces.slice(at + 1))
          expect(overlap(one, other, gap)).toBe(false);
      }
    }
  },
);

test.prop([room, load, around])('no piece leaves its shelf or its layer', (kiln, pieces, gap) => {
  const { shelves } = layOnShelves(kiln, pieces, gap);
  expect(shelves.length).toBeLessThanOrEqual(kiln.shelves);
  const up = shelves.reduce((sum, shelf) => sum + shelf.postUm + kiln.shelfThickUm, 0);
  expect(up).toBeLessThanOrEqual(kiln.insideHeightUm);
  for (const shelf of shelves) {
    for (const piece of shelf.pieces) {
      expect(piece.xUm).toBeGreaterThanOrEqual(gap);
      expect(piece.yUm).toBeGreaterThanOrEqual(gap);
      expect(piece.xUm + piece.widthUm + gap).toBeLessThanOrEqual(kiln.shelfWidthUm);
      expect(piece.yUm + piece.depthUm + gap).toBeLessThanOrEqual(kiln.shelfDepthUm);
      expect(piece.heightUm + gap).toBeLessThanOrEqual(shelf.postUm);
    }
  }
});

const sidesOf = (piece: ToLay) => [piece.widthUm, piece.depthUm].toSorted((a, b) => a - b);

test.prop([room, load, around])(
  'every piece is laid once or told as left, as large as it was',
  (kiln, pieces, gap) => {
    const { shelves, left } = layOnShelves(kiln, pieces, gap);
    const told = [...shelves.flatMap((shelf) => shelf.pieces), ...left];
    expect(told.map(({ key }) => key).toSorted()).toEqual(pieces.map(({ key }) => key).toSorted());
    for (const piece of told) {
      const before = pieces.find(({ key }) => key === piece.key);
      expect(before && sidesOf(before)).toEqual(sidesOf(piece));
      expect(piece.heightUm).toBe(before?.heightUm);
    }
  },
);

test.prop([room, load, around])('a kiln is never fuller than full', (kiln, pieces, gap) => {
  const fill = fillOf(kiln, layOnShelves(kiln, pieces, gap), gap);
  for (const percent of [fill.areaPercent, fill.volumePercent]) {
    expect(percent).toBeGreaterThanOrEqual(0);
    expect(percent).toBeLessThanOrEqual(100);
  }
});

test.prop([room, lying, around])(
  'what a kiln is said to take of one size finds room in it',
  (kiln, each, gap) => {
    const takes = takesOf(kiln, each, gap);
    fc.pre(takes <= 300);
    expect(layOnShelves(kiln, piecesToLay('job', each, takes), gap).left).toEqual([]);
  },
);

const waiting: fc.Arbitrary<WaitingForFire[]> = fc
  .array(fc.record({ lying: fc.option(lying), pieces: fc.integer({ min: 1, max: 30 }) }), {
    maxLength: 5,
  })
  .map((lines) =>
    lines.map((line, at) => ({
      ...line,
      ...{ jobId: `job ${at}`, jobNumber: at + 1, position: 4, againPieces: 0, parts: [] },
      ...{ sinceOn: null, neededOn: null },
    })),
  );

test.prop([room, waiting, around])(
  'a proposed load lies whole, and takes no more than waits',
  (kiln, jobs, gap) => {
    const lines = proposeLoad(kiln, jobs, gap);
    const pieces = lines.flatMap((line) => piecesToLay(line.jobId, line.lying, line.pieces));
    expect(layOnShelves(kiln, pieces, gap).left).toEqual([]);
    for (const line of lines) {
      const job = jobs.find(({ jobId }) => jobId === line.jobId);
      expect(line.pieces).toBeLessThanOrEqual(job?.pieces ?? 0);
    }
  },
);
