import { z } from 'zod';
import { daysBetween, parseDay, type Day } from '@/lib/dates/rules';
import { forecast, usualCourse } from '@/lib/studio/rules/forecast/forecast';
import { forecastRefusalMessage, type ForecastStep } from '@/lib/studio/rules/forecast/model';
import { pert } from '@/lib/studio/rules/forecast/pert';
import { driveLine, tellDrives } from '@/lib/studio/rules/forecast/telling/words';
import { keys, listOf } from '@/lib/workings/atoms';
import type { Working } from '@/lib/workings/working';

const daysMust = 'must be days, from 0 to 400';
const days = z.number(daysMust).min(0, daysMust).max(400, daysMust);

const threeDays = { shortest: days, likely: days, longest: days };
type Three = { shortest: number; likely: number; longest: number };
const areInOrder = ({ shortest, likely, longest }: Three): boolean =>
  shortest <= likely && likely <= longest;
const inOrder = { path: ['likely'], message: 'must lie between shortest and longest' };

const pertInput = keys(threeDays).refine(areInOrder, inOrder);

/** What three days of a step come to. */
export const pertWorking: Working<z.infer<typeof pertInput>, { mean: number; sd: number }> = {
  name: 'pert',
  title: 'What three days come to',
  formula:
    'The mean is the shortest, four times the likely and the longest, over six; the spread is a ' +
    'sixth of what lies between the shortest and the longest.',
  source: 'D. G. Malcolm, J. H. Roseboom, C. E. Clark, W. Fazar, Operations Research 7, 1959',
  caution: 'It knows nothing of waiting for a bench or a kiln.',
  example: { shortest: 2, likely: 3, longest: 6 },
  input: pertInput,
  workOut: ({ shortest, likely, longest }) => {
    const { mean, variance } = pert({
      ...{ shortestDays: shortest, likelyDays: likely, longestDays: longest },
    });
    return {
      output: { mean: rounded(mean), sd: rounded(Math.sqrt(variance)) },
      working: [
        `(${shortest} + 4 × ${likely} + ${longest}) / 6 = ${rounded(mean, 2)} days.`,
        `(${longest} - ${shortest}) / 6 = ${rounded(Math.sqrt(variance), 2)} days of spread.`,
      ],
    };
  },
};

const dayMust = 'must be a day, such as "2026-06-01"';
const day = z.string(dayMust).transform((text, context): Day => {
  const read = parseDay(text);
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: dayMust });
  return z.NEVER;
});
const name = z.string('must be a name').min(1, 'must be a name').max(60, 'must be a short name');
const count = (most: number) => {
  const must = `must be a whole number from 1 to ${most}`;
  return z.int(must).min(1, must).max(most, must);
};
const rateMust = 'must be a share from 0 to below 1';
const volumeMust = 'must be cubic centimetres, above 0';
const volume = z.number(volumeMust).gt(0, volumeMust).max(100_000_000, volumeMust);

const step = keys({
  ...{ name, ...threeDays },
  at: z.enum(['bench', 'kiln', 'drying', 'waiting', 'collector'], {
    message: 'must be "bench", "kiln", "drying", "waiting" or "collector"',
  }),
  bench: name.optional(),
  cone: name.optional(),
  lossRate: z.number(rateMust).min(0, rateMust).lt(1, rateMust).default(0),
  isTogether: z.boolean('must be true or false').default(false),
})
  .refine(areInOrder, inOrder)
  .refine((one) => one.at !== 'bench' || one.bench !== undefined, {
    path: ['bench'],
    message: 'must name the bench',
  })
  .refine((one) => one.at !== 'kiln' || one.cone !== undefined, {
    path: ['cone'],
    message: 'must name the cone',
  })
  .refine((one) => one.shortest >= 1 || (one.at !== 'kiln' && one.lossRate === 0), {
    path: ['shortest'],
    message: 'must be 1 at least where pieces are fired or lost',
  });

const weekdayMust = 'must be 1 for Monday to 7';
const weekdaysMust = 'must be a list of at most 6 closed weekdays, 1 for Monday';
const fillMust = 'must be percent, from 0 to 100';
const job = keys({
  ...{ name, pieces: count(1_000), pieceCm3: volume, steps: listOf(step, 'steps') },
  neededOn: day.optional(),
});
const kiln = keys({
  ...{ name, volumeCm3: volume, cones: listOf(name, 'cones'), turnsAWeek: count(14) },
  leastFillPercent: z.number(fillMust).min(0, fillMust).max(100, fillMust),
  longestWaitDays: count(200),
});
const studio = keys({
  todayOn: day,
  closedWeekdays: z
    .array(z.int(weekdayMust).min(1, weekdayMust).max(7, weekdayMust), weekdaysMust)
    .max(6, weekdaysMust),
  closedDays: z.array(day).max(400).default([]),
  benches: z
    .array(keys({ name, atOnce: count(100) }), 'must be a list of benches')
    .max(50, 'must be at most 50 benches'),
  kilns: z.array(kiln, 'must be a list of kilns').max(50, 'must be at most 50 kilns'),
  dryingPercents: z.array(z.number().min(20).max(400)).length(12).optional(),
  jobs: listOf(job, 'jobs'),
});
const readyInput = keys({ studio });
type Studio = z.infer<typeof studio>;

/** When the last job of a studio is ready, with the others before it. */
export const readyDate: Working<
  z.infer<typeof readyInput>,
  { days50: number | null; days80: number | null; days95: number | null }
> = {
  name: 'ready-date',
  title: 'When the last of some jobs is ready',
  formula:
    'All jobs are sent together through benches and kilns, ten thousand times, each time with ' +
    'other luck; told are the days from today by which the last one is ready in 50, 80 and 95 of ' +
    '100. None of them is begun yet.',
  source: 'a simulation: the days of a step follow a beta curve, losses are binomial',
  caution: 'It is as honest as the days, the losses and the benches that it is given.',
  example: {
    studio: {
      todayOn: '2026-06-01',
      closedWeekdays: [6, 7],
      benches: [{ name: 'modelling', atOnce: 1 }],
      kilns: [
        {
          ...{ name: 'large', volumeCm3: 198_000, cones: ['06'], turnsAWeek: 2 },
          ...{ leastFillPercent: 60, longestWaitDays: 10 },
        },
      ],
      jobs: [
        {
          ...{ name: 'terns', pieces: 12, pieceCm3: 3_000 },
          steps: [
            {
              name: 'pressing',
              at: 'bench',
              bench: 'modelling',
              shortest: 1,
              likely: 2,
              longest: 5,
            },
            { name: 'drying', at: 'drying', shortest: 5, likely: 10, longest: 14, lossRate: 0.04 },
            { name: 'the bisque kiln', at: 'kiln', cone: '06', shortest: 2, likely: 2, longest: 4 },
          ],
        },
      ],
    },
  },
  input: readyInput,
  workOut: ({ studio: given }) => {
    const { todayOn } = given;
    const said = forecast(studioFrom(given), jobsFrom(given), todayOn, usualCourse);
    if (!said.ok) {
      const none = { days50: null, days80: null, days95: null };
      return { output: none, working: [forecastRefusalMessage(said.refusal)] };
    }
    const last = said.value.at(-1);
    const daysTo = (on: Day | null | undefined) => (on ? daysBetween(todayOn, on) : null);
    const benches = new Map(given.benches.map((bench) => [bench.name, bench.name]));
    return {
      output: {
        days50: daysTo(last?.readyOn.in50),
        days80: daysTo(last?.readyOn.in80),
        days95: daysTo(last?.readyOn.in95),
      },
      working: tellDrives(last?.drives ?? [], benches).map((drive) => `${driveLine(drive)}.`),
    };
  },
};

function studioFrom(given: Studio) {
  return {
    closed: {
      weekdays: given.closedWeekdays.map((weekday) => weekday % 7),
      days: given.closedDays,
    },
    benches: given.benches.map((bench) => ({
      ...{ id: bench.name, atOnce: bench.atOnce, closedDays: [] },
    })),
    kilns: given.kilns.map(({ name: id, ...one }) => ({
      ...{ ...one, id, closedDays: [], loadsThisWeek: 0 },
    })),
    dryingPercents: given.dryingPercents ?? Array.from({ length: 12 }, () => 100),
  };
}

function jobsFrom(given: Studio) {
  return given.jobs.map((one, at) => ({
    ...{ id: `${at} ${one.name}`, pieces: one.pieces, wanted: one.pieces, pieceCm3: one.pieceCm3 },
    steps: one.steps.map(stepFrom),
    standings: [{ position: 0, pieces: one.pieces, sinceOn: null, heldBy: null }],
    neededOn: one.neededOn ?? null,
  }));
}

function stepFrom(one: z.infer<typeof step>): ForecastStep {
  const common = {
    ...{ name: one.name, lossRate: one.lossRate, isTogether: one.isTogether },
    ...{ shortestDays: one.shortest, likelyDays: one.likely, longestDays: one.longest },
  };
  switch (one.at) {
    case 'bench':
      return { ...common, kind: 'work', bench: one.bench ?? '' };
    case 'kiln':
      return { ...common, kind: 'fire', cone: one.cone ?? '' };
    case 'drying':
      return { ...common, kind: 'dry' };
    case 'waiting':
      return { ...common, kind: 'wait' };
    case 'collector':
      return { ...common, kind: 'collector' };
  }
}

function rounded(number: number, places = 6): number {
  const scale = 10 ** places;
  return Math.round(number * scale) / scale;
}
