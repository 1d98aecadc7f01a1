import { z } from 'zod';
import { formatCents } from '@/lib/money/rules';
import { demandInLead, levelMost } from '@/lib/stock/rules/demand';
import { reorderPoint, startCount } from '@/lib/stock/rules/reorder';
import {
  valueInSteps,
  valueStock,
  type CostedMovement,
  type StockWorth,
  type ValuedStep,
} from '@/lib/stock/rules/value';
import { keys, listMost, listOf } from '@/lib/workings/atoms';
import { listed, type Working } from '@/lib/workings/working';

const piecesMost = 1_000_000;
const piecesMust = `must be a whole number of pieces from 1 to ${piecesMost}`;
const pieces = z.int(piecesMust).min(1, piecesMust).max(piecesMost, piecesMust);
const unitMost = 999_999_999;
const unitMust = `must be a whole number of cents from 0 to ${unitMost}`;
const eitherMust = 'must say either "in" with its "unitCents", or "out"';

const movement = keys({
  in: pieces.optional(),
  unitCents: z.int(unitMust).min(0, unitMust).max(unitMost, unitMust).optional(),
  out: pieces.optional(),
}).transform((given, context): CostedMovement => {
  const { in: came, unitCents, out } = given;
  if (came !== undefined && unitCents !== undefined && out === undefined) {
    return { quantity: came, unitCostCents: BigInt(unitCents) };
  }
  if (out !== undefined && came === undefined && unitCents === undefined) {
    return { quantity: -out, unitCostCents: null };
  }
  context.addIssue({ code: 'custom', message: eitherMust });
  return z.NEVER;
});

const valueInput = keys({
  movements: listOf(
    movement,
    `movements such as {"in":150,"unitCents":2100} or {"out":120}, of ${listMost} at most`,
  ).superRefine((movements, context) => {
    let here = 0;
    for (const [at, { quantity }] of movements.entries()) {
      here += quantity;
      if (here >= 0) continue;
      const message = 'must not take out more than are there';
      context.addIssue({ code: 'custom', path: [at, 'out'], message });
      return;
    }
  }),
});

type Worth = { costOfGoodsCents: number; endingCents: number; endingUnits: number };

/** What stock cost that left, and what is left, by both ways of reckoning. */
export const stockValue: Working<
  z.infer<typeof valueInput>,
  { fifo: Worth; movingAverage: Worth }
> = {
  name: 'stock-value',
  title: 'What the stock cost',
  formula:
    'First in, first out: what leaves takes the cost of the oldest pieces that are there. Moving ' +
    'average: what leaves takes its share of the cost of all that is there, rounded to the cent, ' +
    'half a cent up; the last pieces take what is left.',
  source: 'OpenStax, Principles of Accounting, volume 1, section 10.3 (perpetual)',
  caution: 'Which of the two the books use is agreed with the bookkeeper once, and then kept.',
  example: { movements: [{ in: 150, unitCents: 2_100 }, { out: 120 }] },
  input: valueInput,
  workOut: ({ movements }) => {
    const { fifo, movingAverage } = valueStock(movements);
    return {
      output: { fifo: plainWorth(fifo), movingAverage: plainWorth(movingAverage) },
      working: [...valueSteps(valueInSteps(movements)), ...totalSteps(fifo, movingAverage)],
    };
  },
};

function plainWorth(worth: StockWorth): Worth {
  const { costOfGoodsCents, endingCents, endingUnits } = worth;
  return {
    costOfGoodsCents: Number(costOfGoodsCents),
    endingCents: Number(endingCents),
    endingUnits,
  };
}

/** How many movements the working tells one by one. */
const stepsTold = 20;

function valueSteps(steps: readonly ValuedStep[]): string[] {
  const told = steps.slice(0, stepsTold).map((step) => {
    const { quantity, unitCostCents, units, fifo, movingAverage } = step;
    const left = `${units} there, ${formatCents(fifo.leftCents)} first in first out and ${formatCents(movingAverage.leftCents)} by the average`;
    if (quantity > 0) return `${quantity} come at ${formatCents(unitCostCents)} each: ${left}.`;
    const cost = `${formatCents(fifo.cents)} first in first out, ${formatCents(movingAverage.cents)} by the average`;
    return `${-quantity} leave at ${cost}: ${left}.`;
  });
  const more = steps.length - told.length;
  return more > 0 ? [...told, `And ${more} movements more.`] : told;
}

function totalSteps(fifo: StockWorth, movingAverage: StockWorth): string[] {
  const words = (worth: StockWorth) =>
    `${formatCents(worth.costOfGoodsCents)} left and ${formatCents(worth.endingCents)} is there`;
  return [
    `First in, first out: ${words(fifo)}.`,
    `Moving average: ${words(movingAverage)}. Either way the two add up to what all arrivals cost.`,
  ];
}

function numberFrom(least: number, most: number, what: string) {
  const must = `must be ${what}, from ${least} to ${most}`;
  return z.number(must).min(least, must).max(most, must);
}

function share(what: string) {
  const must = `must be ${what}, above 0 and at most ${levelMost}`;
  return z.number(must).gt(0, must).max(levelMost, must);
}

const reorderInput = keys({
  perDay: numberFrom(0, 1_000, 'how many are asked for in a day'),
  leadDays: numberFrom(0, 1_000, 'how many days a new lot takes'),
  leadSdDays: numberFrom(0, 1_000, 'how far those days may be off, one standard deviation'),
  serviceLevel: share('how often nobody is to go without'),
});

/** How few may be left before a new lot is begun. */
export const reorderPointWorking: Working<
  z.infer<typeof reorderInput>,
  { reorderPoint: number; expectedDemand: number }
> = {
  name: 'reorder-point',
  title: 'When to make more',
  formula:
    'The smallest number that what is asked for in the lead time passes no more often than the ' +
    'service level allows. Pieces are asked for one by one, by a Poisson distribution; where the ' +
    'lead varies, by a gamma distribution, the counts are negative binomial.',
  source: 'Poisson: OpenStax, Introductory Statistics 2e, section 4.6; the lead is common practice',
  caution: 'It goes by the past: a season, a fair or an article in the paper it does not know.',
  example: { perDay: 0.2, leadDays: 30, leadSdDays: 6, serviceLevel: 0.95 },
  input: reorderInput,
  workOut: (input) => {
    const { reorderPoint: point, expectedDemand, chance } = reorderPoint(input);
    const { perDay, leadDays, leadSdDays, serviceLevel } = input;
    const { mean, size } = demandInLead(input);
    const sd = Math.sqrt(mean + (size === null ? 0 : (perDay * leadSdDays) ** 2));
    return {
      output: { reorderPoint: point, expectedDemand: rounded(expectedDemand) },
      working: [
        `${rounded(perDay)} a day × ${rounded(leadDays)} days is ${rounded(mean)} pieces while a new lot is made.`,
        size === null
          ? `The lead does not vary: Poisson, with a deviation of ${rounded(sd, 3)}.`
          : `The lead varies by ${rounded(leadSdDays)} days: negative binomial, with a deviation of ${rounded(sd, 3)}.`,
        `${point} last with a chance of ${percent(chance)}; ${percent(serviceLevel)} were asked for.`,
      ],
    };
  },
};

const lossMust = 'must be the share that is lost at a step, from 0 to 0.9';
const goodMust = 'must be a whole number of pieces from 0 to 10000';

const startInput = keys({
  good: z.int(goodMust).min(0, goodMust).max(10_000, goodMust),
  stepLosses: z
    .array(z.number(lossMust).min(0, lossMust).max(0.9, lossMust), lossesMust())
    .max(30, lossesMust())
    .refine(
      (losses) => losses.reduce((left, loss) => left * (1 - loss), 1) >= 0.01,
      'must leave at least one piece in a hundred whole',
    ),
  certainty: share('how sure it is to be'),
});

function lossesMust(): string {
  return 'must be a list of at most 30 shares, such as [0.08,0.05]';
}

/** How many to begin with so that enough come out whole. */
export const startCountWorking: Working<
  z.infer<typeof startInput>,
  { start: number; expectedGood: number }
> = {
  name: 'start-count',
  title: 'How many to begin with',
  formula:
    'The smallest number of which, with the certainty asked for, at least as many as wanted come ' +
    'through every step whole. The good share is the product of (1 − loss) of each step.',
  source: 'Binomial: OpenStax, Introductory Statistics 2e, section 4.3',
  caution:
    'Losses are each studio’s own; a shelf that falls or a lid opened early takes many at once, ' +
    'and no count of spare pieces covers that.',
  example: { good: 12, stepLosses: [0.08, 0.05], certainty: 0.9 },
  input: startInput,
  workOut: ({ good, stepLosses, certainty }) => {
    const { start, expectedGood, goodShare, chance } = startCount({ good, stepLosses, certainty });
    const kept = listed(stepLosses.map((loss) => percent(1 - loss)));
    return {
      output: { start, expectedGood: rounded(expectedGood) },
      working: [
        stepLosses.length === 0
          ? 'Nothing is lost on the way.'
          : `Of a hundred pieces ${rounded(goodShare * 100, 2)} come through: ${kept} at each step.`,
        `Of ${start}, ${rounded(expectedGood, 2)} come out whole on average.`,
        `At least ${good} do with a chance of ${percent(chance)}; ${percent(certainty)} were asked for.`,
      ],
    };
  },
};

function rounded(number: number, places = 6): number {
  const scale = 10 ** places;
  return Math.round(number * scale) / scale;
}

function percent(part: number): string {
  return `${rounded(part * 100, 2)}%`;
}
