import { addDays, type Day } from '@/lib/dates/rules';
import { nextChance } from '@/lib/studio/rules/forecast/chance';
import type {
  Bench,
  ForecastJob,
  ForecastStep,
  ForecastStudio,
  Kiln,
} from '@/lib/studio/rules/forecast/model';

/** On a rainy coast clay dries half as long again from November to March; common practice. */
const rainyCoastPercents = [150, 150, 150, 125, 100, 100, 100, 100, 100, 125, 150, 150];

/** A Monday. */
export const today: Day = '2026-06-01';

type Three = readonly [shortest: number, likely: number, longest: number];

/** A step as the route names it, by what holds it. */
export function aStep(
  name: string,
  holding: { bench: string } | { cone: string } | { kind: 'dry' | 'wait' | 'collector' },
  [shortestDays, likelyDays, longestDays]: Three,
  more: Partial<Pick<ForecastStep, 'lossRate' | 'isTogether'>> = {},
): ForecastStep {
  const days = { name, shortestDays, likelyDays, longestDays, lossRate: 0, isTogether: false };
  if ('bench' in holding) return { ...days, ...more, kind: 'work', bench: holding.bench };
  if ('cone' in holding) return { ...days, ...more, kind: 'fire', cone: holding.cone };
  return { ...days, ...more, kind: holding.kind };
}

/** A job of one piece that is not begun. */
export function aJob(given: Partial<ForecastJob> & { id: string }): ForecastJob {
  const pieces = given.pieces ?? 1;
  return {
    pieces,
    wanted: pieces,
    pieceCm3: 1_000,
    steps: [],
    standings: [{ position: 0, pieces, sinceOn: null, heldBy: null }],
    neededOn: null,
    ...given,
  };
}

/** A kiln that is lit whenever something waits for it. */
export function aKiln(given: Partial<Kiln> = {}): Kiln {
  return {
    id: 'kiln',
    volumeCm3: 198_000,
    cones: ['06', '6'],
    turnsAWeek: 7,
    leastFillPercent: 0,
    longestWaitDays: 0,
    closedDays: [],
    loadsThisWeek: 0,
    ...given,
  };
}

/** A place at a bench. */
export function aBench(id: string, atOnce = 1, closedDays: readonly Day[] = []): Bench {
  return { id, atOnce, closedDays };
}

/** A studio that is closed at weekends. */
export function aStudio(given: Partial<ForecastStudio> = {}): ForecastStudio {
  return {
    closed: { weekdays: [0, 6], days: [] },
    benches: [aBench('bench')],
    kilns: [aKiln()],
    dryingPercents: rainyCoastPercents.map(() => 100),
    ...given,
  };
}

/** Whole numbers by a seed, from one up to another. */
export function dice(seed: number): (from: number, to: number) => number {
  const streams = Int32Array.of(seed);
  return (from, to) => from + (nextChance(streams, 0) % (to - from + 1));
}

const ways: readonly (readonly ForecastStep[])[] = [
  [
    aStep('a yes to the sketch', { kind: 'collector' }, [1, 5, 20]),
    aStep('modelling', { bench: 'modelling' }, [5, 9, 15]),
    aStep('cutting and hollowing', { bench: 'modelling' }, [1, 2, 4]),
    aStep('drying', { kind: 'dry' }, [14, 21, 35], { lossRate: 0.03 }),
    aStep('the bisque kiln', { cone: '06' }, [2, 2, 4], { lossRate: 0.02 }),
    aStep('glazing', { bench: 'glazing' }, [2, 3, 6]),
    aStep('the glaze kiln', { cone: '6' }, [2, 3, 4], { lossRate: 0.04 }),
    aStep('assembly on the board', { bench: 'assembly' }, [2, 3, 5], { isTogether: true }),
    aStep('curing', { kind: 'wait' }, [7, 8, 14]),
    aStep('frame and cleat', { bench: 'assembly' }, [1, 3, 6]),
  ],
  [
    aStep('pressing', { bench: 'moulds' }, [1, 2, 5]),
    aStep('fettling', { bench: 'moulds' }, [1, 1, 2]),
    aStep('drying', { kind: 'dry' }, [5, 10, 14], { lossRate: 0.04 }),
    aStep('the bisque kiln', { cone: '06' }, [2, 2, 4], { lossRate: 0.015 }),
    aStep('glazing', { bench: 'glazing' }, [1, 2, 4]),
    aStep('the glaze kiln', { cone: '04' }, [2, 2, 4], { lossRate: 0.045 }),
    aStep('sorting', { bench: 'glazing' }, [1, 1, 3], { isTogether: true }),
  ],
  [
    aStep('throwing', { bench: 'wheel' }, [1, 2, 3]),
    aStep('trimming', { bench: 'wheel' }, [1, 1, 2]),
    aStep('drying', { kind: 'dry' }, [5, 12, 21], { lossRate: 0.05 }),
    aStep('the bisque kiln', { cone: '06' }, [2, 2, 4], { lossRate: 0.015 }),
    aStep('glazing', { bench: 'glazing' }, [1, 1, 3]),
    aStep('the glaze kiln', { cone: '6' }, [2, 2, 4], { lossRate: 0.05 }),
    aStep('finishing', { bench: 'assembly' }, [1, 2, 7]),
  ],
];

/** A studio with five benches and two kilns. */
export const twoKilns = aStudio({
  closed: { weekdays: [0, 6], days: ['2026-07-03', '2026-09-07'] },
  benches: [
    aBench('modelling', 4),
    aBench('moulds', 2),
    aBench('wheel', 2),
    aBench('glazing', 4),
    aBench('assembly', 3),
  ],
  kilns: [
    aKiln({
      id: 'large',
      volumeCm3: 400_000,
      turnsAWeek: 3,
      leastFillPercent: 60,
      longestWaitDays: 14,
      cones: ['06', '04', '6'],
    }),
    aKiln({
      id: 'small',
      volumeCm3: 198_000,
      turnsAWeek: 3,
      leastFillPercent: 70,
      longestWaitDays: 12,
      cones: ['06', '04', '6'],
    }),
  ],
  dryingPercents: rainyCoastPercents,
});

/** So many open jobs of {@link twoKilns}, anywhere on their ways. */
export function openJobs(count: number, seed: number): ForecastJob[] {
  const roll = dice(seed);
  return Array.from({ length: count }, (_, at) => {
    const way = roll(0, 2);
    const steps = ways[way] ?? [];
    const pieces = way === 0 ? roll(4, 40) : roll(6, 30);
    const position = roll(0, steps.length);
    const holding = steps[position - 1];
    const sinceOn = position === 0 ? null : addDays(today, -roll(0, holding?.likelyDays ?? 0));
    return aJob({
      id: `job ${at + 1}`,
      pieces,
      pieceCm3: way === 0 ? roll(2_000, 6_000) : roll(900, 6_000),
      steps,
      standings: [{ position, pieces, sinceOn, heldBy: null }],
      neededOn: roll(0, 2) === 0 ? addDays(today, roll(20, 150)) : null,
    });
  });
}
