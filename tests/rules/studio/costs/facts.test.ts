import { expect, test } from 'vitest';
import { costOfOne } from '@/lib/studio/rules/costs/cost';
import { earnedWith } from '@/lib/studio/rules/costs/earned';
import { costFactsOf, type PieceToCost, type StudioFacts } from '@/lib/studio/rules/costs/facts';
import { piecesALoad, turnsOfOne } from '@/lib/studio/rules/costs/firing-share';
import { glazedUm2, lyingOfPiece, wetClayOf } from '@/lib/studio/rules/costs/size';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';
import type { RouteStep } from '@/lib/studio/rules/routes';

const kiln: KilnFacts = {
  ...{ name: 'the large kiln', insideHeightUm: 685_000, shelfWidthUm: 530_000 },
  ...{ shelfDepthUm: 530_000, shelfThickUm: 19_000, shelves: 12, powerW: 11_520 },
  ...{ centsPerKwh: '15', wearCents: 500n, cones: ['04', '6'], turnsAWeek: 2, note: '' },
  ...{ leastFillPercent: 80, longestWaitDays: 14, openBelowC: 93, elementFirings: 150 },
};
const studio: StudioFacts = {
  ...{ centsPerHour: 2_500n, overheadPercent: '20', glazeCentsPerM2: 2_600n },
  ...{ roomAroundUm: 6_350, kilns: [kiln], loads: [] },
  bodies: [
    { id: 'buff', name: 'buff stoneware', centsPerKg: '125', densityGPerCm3: null, jobs: 3 },
    { id: 'white', name: 'white slip', centsPerKg: '180', densityGPerCm3: null, jobs: 1 },
    { id: 'raku', name: 'raku body', centsPerKg: null, densityGPerCm3: null, jobs: 9 },
  ],
};
const aStep = (over: Partial<RouteStep>): RouteStep => ({
  ...{ name: 'pressing', peg: 'clay', kind: 'work', benchId: 'table', cone: '' },
  ...{ shortestDays: 1, likelyDays: 1, longestDays: 2, isTogether: false },
  ...{ lossPercent: '0', minutesEach: '6', caution: '', ...over },
});
const route = [
  aStep({}),
  aStep({ name: 'the bisque kiln', peg: 'bisque', kind: 'fire', cone: '04', minutesEach: '2' }),
  aStep({ name: 'glazing', peg: 'glaze', minutesEach: '10' }),
  aStep({ name: 'the glaze kiln', peg: 'glaze', kind: 'fire', cone: '6', minutesEach: '2' }),
];
const tile: PieceToCost = {
  ...{ kind: 'relief_tile', technique: 'press_moulded', widthUm: 152_400, heightUm: 152_400 },
  ...{ depthUm: 19_050, weightG: 530, steps: route, bodyId: 'white' },
};
const said = (of: StudioFacts, piece: PieceToCost, what: string, kind = 'missing') =>
  costFactsOf(of, piece).said.filter((each) => each.what === what && each.kind === kind);

test('clay is spent at the first step, glaze at the first glazing, a firing at its own', () => {
  const { steps } = costFactsOf(studio, tile).facts;
  expect(steps.map(({ clay, glaze, firing }) => [!!clay, !!glaze, !!firing])).toEqual([
    [true, false, false],
    [false, false, true],
    [false, true, false],
    [false, false, true],
  ]);
});

test('a tile comes to what its clay, face, minutes and firings come to', () => {
  const cost = costOfOne(costFactsOf({ ...studio, overheadPercent: '0' }, tile).facts);
  if (!cost.ok) throw new Error(cost.refusal.code);
  const line = Object.fromEntries(cost.value.lines.map(({ what, cents }) => [what, cents]));
  // 530 g ÷ 0.73 with 18 % of scrap is 857 g of wet clay; 232 cm² of glaze; 20 minutes.
  expect(line).toMatchObject({ clay: 154n, glaze: 60n, hands: 833n, mould: 0n, losses: 0n });
  expect(line['firing']).toBeGreaterThan(30n);
  expect(line['firing']).toBeLessThan(90n);
});

test('what such firings cost last goes before what is reckoned', () => {
  const room = 152_400n * 152_400n * 19_050n * 40n;
  const loads = [
    { peg: 'glaze', cone: '6', costCents: 2_000n, room },
    { peg: 'glaze', cone: '6', costCents: 3_000n, room },
    { peg: 'bisque', cone: '6', costCents: 9_000n, room },
    { peg: 'glaze', cone: '05', costCents: 9_000n, room },
  ];
  const { steps } = costFactsOf({ ...studio, loads }, tile).facts;
  const firing = steps[3]?.firing;
  expect(firing && Number(firing.over) / Number(firing.under)).toBe(62.5);
  expect(said({ ...studio, loads }, tile, 'firing', 'found')[1]?.words).toBe(
    'the glaze kiln: of the last 2 firings to cone 6, by the room it takes.',
  );
});

test('what is not known costs nothing, and is said', () => {
  const bare = { ...studio, centsPerHour: 0n, glazeCentsPerM2: 0n, kilns: [], bodies: [] };
  const { facts, said: told, turns } = costFactsOf(bare, tile);
  expect(costOfOne(facts)).toMatchObject({ refusal: { code: 'nothing_known' } });
  expect(told.filter(({ kind }) => kind === 'missing').map(({ what }) => what)).toEqual([
    ...['clay', 'glaze', 'hands', 'firing', 'firing', 'mould'],
  ]);
  expect(turns).toBeNull();
});

test('a body that its jobs name goes before the one most used, and that before none', () => {
  expect(said(studio, tile, 'clay', 'found')[0]?.words).toMatch(/white slip/);
  const unnamed = { ...tile, bodyId: null };
  expect(said(studio, unnamed, 'clay', 'found')[0]?.words).toMatch(/buff stoneware/);
  expect(said(studio, unnamed, 'clay', 'taken')[0]?.words).toMatch(/buff stoneware is taken/);
  expect(said(studio, { ...tile, bodyId: 'raku' }, 'clay')[0]?.words).toMatch(/kilogram of raku/);
});

test('a piece without measures says so, and what is taken for want of them', () => {
  const sizeless = { ...tile, widthUm: null, weightG: null };
  expect(['clay', 'glaze', 'firing'].map((what) => said(studio, sizeless, what).length)).toEqual([
    ...[1, 1, 1],
  ]);
  const flat = { ...tile, depthUm: null, weightG: null };
  expect(lyingOfPiece(flat)).toMatchObject({ value: { heightUm: 19_050 }, taken: /3\/4 in/ });
  expect(wetClayOf(flat, null)?.taken).toMatch(/two thirds/);
  // 15.24 × 15.24 × 1.238 cm at 2.0 g is 575 g fired.
  expect(wetClayOf(flat, null)?.value).toBe(930);
  expect(wetClayOf({ ...tile, weightG: null }, '1.0')?.value).toBe(466);
});

test('a vessel stands, and is glazed inside and out', () => {
  const bowl = {
    ...tile,
    kind: 'bowl' as const,
    widthUm: 200_000,
    heightUm: 80_000,
    depthUm: null,
  };
  expect(lyingOfPiece(bowl)?.value).toEqual({
    ...{ widthUm: 200_000, depthUm: 200_000, heightUm: 80_000 },
  });
  const twoSides = 2 * (Math.PI * 20 * 8 + (Math.PI * 20 * 20) / 4);
  expect(Number(glazedUm2(bowl) ?? 0n) / 1e8).toBeCloseTo(twoSides, 3);
  expect(glazedUm2(tile)).toBe(152_400n * 152_400n);
  expect(wetClayOf({ ...bowl, weightG: null }, null)?.taken).toMatch(/wall of 7 mm/);
});

test('a full kiln holds so many of a size, and a large one goes in by its room', () => {
  const lying = { widthUm: 152_400, depthUm: 152_400, heightUm: 19_050 };
  // Nine lie on a shelf; each layer takes 19 + 19.05 + 6.35 mm of 685: twelve shelves go in.
  expect(piecesALoad(kiln, lying, 6_350)).toBe(9 * 12);
  expect(turnsOfOne(kiln, lying, 6_350)).toEqual([{ used: 1n, holds: 108n }]);
  const relief = { widthUm: 914_400, depthUm: 1_524_000, heightUm: 50_800 };
  expect(piecesALoad(kiln, relief, 6_350)).toBe(0);
  const [turn] = turnsOfOne(kiln, relief, 6_350);
  expect(turn).toMatchObject({ used: 914_400n * 1_524_000n * 50_800n });
  const double = turnsOfOne(kiln, { ...relief, heightUm: 152_400 }, 6_350);
  expect(double).toHaveLength(2);
  expect(double[0]).toEqual({ used: 1n, holds: 1n });
});

test('what a turn and an hour earn with a piece', () => {
  const twice = [
    { used: 1n, holds: 80n },
    { used: 1n, holds: 80n },
  ];
  expect(earnedWith(5_200n, twice, 3_500)).toEqual({
    ...{ centsPerTurn: 208_000n, centsPerHour: 8_914n },
  });
  expect(earnedWith(5_200n, null, 0)).toEqual({ centsPerTurn: null, centsPerHour: null });
  expect(earnedWith(5_200n, [], 60).centsPerTurn).toBeNull();
});
