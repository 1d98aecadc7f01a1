import { describe, expect, test } from 'vitest';
import type { Day } from '@/lib/dates/rules';
import { againHere, isPlannedFiring } from '@/lib/studio/rules/firings/again';
import { askedAtC, coolBy, curveOf, halvingOf } from '@/lib/studio/rules/firings/curve';
import { driedShort, driesForDays } from '@/lib/studio/rules/firings/dried';
import { byNeedAndWait, queueOf } from '@/lib/studio/rules/firings/load';
import { lyingOf, lyingOfOutline } from '@/lib/studio/rules/firings/lying';
import { takesOf } from '@/lib/studio/rules/firings/packing';
import {
  checkCone,
  forecastWh,
  peakOfCone,
  startSchedule,
} from '@/lib/studio/rules/firings/schedule';
import { elementAge, turnsThisWeek } from '@/lib/studio/rules/kilns/keeping';
import type { Move } from '@/lib/studio/rules';

const inch = 25_400;
const kiln = {
  ...{ insideHeightUm: 27 * inch, shelfWidthUm: 18 * inch, shelfDepthUm: 18 * inch },
  ...{ shelfThickUm: 0.625 * inch, shelves: 8 },
};

describe('a load', () => {
  test('8 shelves of 2 × 2 tiles of 8 in, half an inch thick, are 32', () => {
    const tile = { widthUm: 8 * inch, depthUm: 8 * inch, heightUm: 0.5 * inch };
    expect(takesOf(kiln, tile, 0.25 * inch)).toBe(32);
  });

  test('what is higher than the kiln finds no room', () => {
    const lamp = { widthUm: 8 * inch, depthUm: 8 * inch, heightUm: 28 * inch };
    expect(takesOf(kiln, lamp, 0.25 * inch)).toBe(0);
  });

  test('what is needed sooner goes first, then what waited longer, then the older job', () => {
    const jobs = [
      { jobNumber: 1, neededOn: null, sinceOn: '2026-05-01' as Day },
      { jobNumber: 2, neededOn: '2026-06-01' as Day, sinceOn: '2026-05-09' as Day },
      { jobNumber: 3, neededOn: '2026-06-01' as Day, sinceOn: '2026-05-02' as Day },
      { jobNumber: 4, neededOn: null, sinceOn: '2026-05-01' as Day },
    ];
    expect(jobs.toSorted(byNeedAndWait).map(({ jobNumber }) => jobNumber)).toEqual([3, 2, 1, 4]);
  });

  test('a relief lies flat, a vessel stands, and an unknown size stays unknown', () => {
    const size = { widthUm: 100, heightUm: 200, depthUm: 30 };
    expect(lyingOf(size, false)).toEqual({ widthUm: 100, depthUm: 200, heightUm: 30 });
    expect(lyingOf(size, true)).toEqual({ widthUm: 100, depthUm: 30, heightUm: 200 });
    expect(lyingOf({ ...size, depthUm: null }, false)).toBeNull();
  });

  test('a part lies in the box round its outline', () => {
    const triangle = [
      [100, 0],
      [350, 500],
      [100, 500],
    ] as const;
    const drawing = { widthUm: 1_000_000, heightUm: 600_000 };
    const lying = { widthUm: 250_000, depthUm: 300_000, heightUm: 40_000 };
    expect(lyingOfOutline(triangle, drawing, 40_000)).toEqual(lying);
    expect(lyingOfOutline([], drawing, 40_000)).toBeNull();
  });

  test('half a load at two turns a week is cleared in a quarter of a week, told as 0.3', () => {
    const tile = { widthUm: 8 * inch, depthUm: 8 * inch, heightUm: 0.5 * inch };
    const queue = queueOf(
      kiln,
      [
        { pieces: 16, lying: tile },
        { pieces: 3, lying: null },
      ],
      { roomAroundUm: 0.25 * inch, turnsAWeek: 2 },
    );
    expect(queue).toEqual({ turnHundredths: 50, notReckoned: 3, weekTenths: 3 });
  });
});

describe('a schedule', () => {
  test('goes to the cone’s temperature on the chart, over the last 100 °C at 60 an hour', () => {
    for (const kind of ['bisque', 'glaze'] as const) {
      const { segments } = startSchedule(kind, '04');
      expect(segments.at(-1)).toEqual({ toC: 1_063, rateCPerHour: 60, soakMinutes: 10 });
      expect(segments.at(-2)?.toC).toBe(963);
    }
    expect(startSchedule('bisque', '04').segments[0]?.soakMinutes).toBe(480);
  });

  test('a low cone leaves out the climbs that it does not reach', () => {
    const toC = startSchedule('bisque', '020').segments.map((segment) => segment.toC);
    expect(toC).toEqual([93, 526, 626]);
  });

  test('a climb between two columns is read in the nearest one, an empty cell in the next', () => {
    expect(peakOfCone('6', 80)).toEqual({ celsius: 1_222, rateCPerHour: 60 });
    expect(peakOfCone('6', 140)).toEqual({ celsius: 1_243, rateCPerHour: 150 });
    expect(peakOfCone('022', 15)).toEqual({ celsius: 586, rateCPerHour: 60 });
    expect(peakOfCone('5½', 60)).toBeNull();
  });

  test('says how far its own peak is from the chart', () => {
    const schedule = {
      fromC: 20,
      segments: [
        { toC: 1_230, rateCPerHour: 150, soakMinutes: 0 },
        { toC: 1_000, rateCPerHour: 100, soakMinutes: 30 },
      ],
    };
    expect(checkCone('6', schedule)).toMatchObject({ celsius: 1_243, peakC: 1_230, offByC: -13 });
  });

  // 11,520 W: 4 hours up to 220 °C at 15 in 100, 8 hours to 1,020 °C at 50, by hand 52.992 kWh.
  test('takes 52,992 watt-hours for 4 hours of warming and 8 of bisque', () => {
    const segments = [
      { toC: 220, rateCPerHour: 50, soakMinutes: 0 },
      { toC: 1_020, rateCPerHour: 100, soakMinutes: 0 },
    ];
    expect(forecastWh(11_520, { fromC: 20, segments })).toEqual({ ok: true, value: 52_992 });
  });
});

describe('the curve', () => {
  const curve = curveOf({
    fromC: 20,
    segments: [
      { toC: 120, rateCPerHour: 50, soakMinutes: 60 },
      { toC: 220, rateCPerHour: 100, soakMinutes: 0 },
    ],
  });

  test('has the ends of climbs and soaks', () => {
    expect(curve.map((point) => point.afterMinutes)).toEqual([0, 120, 180, 240]);
  });

  test('asks for what lies between, and for nothing once it is over', () => {
    expect([0, 60, 150, 210, 240].map((at) => askedAtC(curve, at))).toEqual([
      20, 70, 120, 170, 220,
    ]);
    expect(askedAtC(curve, 241)).toBeNull();
  });
});

const at = (hours: number) => new Date(Date.UTC(2026, 4, 4, hours));

describe('when it is cool', () => {
  const of = { endsAt: at(12), peakC: 1_020, limitC: 93, earlierHalving: null };

  test('by its own last two readings, where it cools', () => {
    const readings = [
      { at: at(12), celsius: 1_020 },
      { at: at(16), celsius: 520 },
    ];
    expect(halvingOf(readings)).toBeCloseTo(240);
    const cool = coolBy({ ...of, readings });
    expect(cool.by).toBe('its_readings');
    // From 520 to 92.5 °C: 240 × log2(500 ÷ 72.5) is 668.7 minutes.
    expect((cool.at.getTime() - at(16).getTime()) / 60_000).toBe(669);
  });

  test('or at the pace of earlier firings, or in two days', () => {
    const climbing = [
      { at: at(2), celsius: 200 },
      { at: at(6), celsius: 700 },
    ];
    const paced = coolBy({ ...of, readings: climbing, earlierHalving: 240 });
    expect(paced.by).toBe('earlier_firings');
    expect(coolBy({ ...of, readings: climbing })).toEqual({ at: at(60), by: 'common_practice' });
  });
});

describe('pieces that are fired again', () => {
  test('go into the next load first, and are counted until they come out', () => {
    expect(againHere([])).toBe(0);
    expect(againHere([{ pieces: 10, fireAgain: 2 }])).toBe(2);
    expect(
      againHere([
        { pieces: 10, fireAgain: 2 },
        { pieces: 1, fireAgain: 0 },
      ]),
    ).toBe(1);
    expect(
      againHere([
        { pieces: 10, fireAgain: 2 },
        { pieces: 2, fireAgain: 1 },
      ]),
    ).toBe(1);
  });

  test('make a firing an unplanned one where it holds nothing else', () => {
    expect(isPlannedFiring([])).toBe(true);
    expect(isPlannedFiring([{ isAgain: true }, { isAgain: false }])).toBe(true);
    expect(isPlannedFiring([{ isAgain: true }])).toBe(false);
  });
});

describe('drying', () => {
  const steps = ['work', 'dry', 'fire', 'work', 'fire'].map((kind) => ({ kind, shortestDays: 14 }));
  const move = (id: number, from: number, pieces: number, movedOn: Day): Move => ({
    ...{
      id: String(id),
      fromPosition: from,
      toPosition: from + 1,
      pieces,
      movedOn,
      undoesId: null,
    },
  });
  const moves = [
    move(1, 0, 6, '2026-05-01'),
    move(2, 1, 4, '2026-05-02'),
    move(3, 1, 2, '2026-05-12'),
    move(4, 2, 4, '2026-05-18'),
    move(5, 2, 2, '2026-05-18'),
  ];
  const job = { steps, moves, standing: [0, 0, 0, 6, 0, 0, 0] };
  const of = { position: 3, pieces: 6, inFire: 0, percentOf: () => 100 };

  test('the season stretches the least days, rounded up', () => {
    expect([driesForDays(14, 100), driesForDays(7, 150)]).toEqual([14, 11]);
  });

  test('tells how many left it too early, and how few days the least of them had', () => {
    expect(driedShort(job, of)).toEqual({
      ...{ pieces: 2, driedDays: 6, needsDays: 14, leftOn: '2026-05-18' },
    });
  });

  test('those that came first go in first', () => {
    expect(driedShort(job, { ...of, pieces: 4 })).toBeNull();
    expect(driedShort(job, { ...of, pieces: 2, inFire: 4 })?.pieces).toBe(2);
  });

  test('asks more of all in a wet season', () => {
    expect(driedShort(job, { ...of, percentOf: () => 150 })?.pieces).toBe(6);
  });

  test('asks nothing of pieces that dried to the very day', () => {
    expect(driedShort(job, { ...of, percentOf: () => 42 })).toBeNull();
    expect(driedShort(job, { ...of, percentOf: () => 43 })).toMatchObject({ needsDays: 7 });
  });

  test('asks nothing at a second firing, nor where nothing stands', () => {
    expect(driedShort(job, { ...of, position: 5 })).toBeNull();
    expect(driedShort({ ...job, standing: [6] }, of)).toBeNull();
  });
});

describe('a kiln’s own counts', () => {
  const firings = [
    { litOn: '2026-04-30' as Day, isPlanned: true },
    { litOn: '2026-05-04' as Day, isPlanned: true },
    { litOn: '2026-05-10' as Day, isPlanned: false },
  ];

  test('elements are as old as the firings since they were changed', () => {
    expect(elementAge(firings, ['2026-01-05', '2026-05-01'], 150)).toEqual({
      ...{ firings: 2, planned: 1, unplanned: 1, left: 148, sinceOn: '2026-05-01' },
    });
    expect(elementAge(firings, [], 2)).toMatchObject({ firings: 3, left: -1, sinceOn: null });
  });

  test('a week goes from Monday to Sunday', () => {
    expect(turnsThisWeek(firings, 2, '2026-05-10')).toEqual({ taken: 2, left: 0 });
    expect(turnsThisWeek(firings, 2, '2026-05-11')).toEqual({ taken: 0, left: 2 });
  });
});
