import { z } from 'zod';
import { leachWords, judgeLeachTest, piecesTested } from '@/lib/clay/rules/leach';
import { parseDay } from '@/lib/dates/rules';
import { batchWeights } from '@/lib/glazes/rules/batch';
import { wareKinds, limitWords } from '@/lib/glazes/rules/food';
import { materialsMost, recipeInPercent } from '@/lib/glazes/rules/recipe';
import { formatCents } from '@/lib/money/rules';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { costOfOne, type CostFacts } from '@/lib/studio/rules/costs/cost';
import { fractionOf } from '@/lib/studio/rules/costs/fraction';
import { decimalText, keys, listOf, wholeCents } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

const nameMust = 'must be a name of 1 to 80 letters';
const name = z.string(nameMust).min(1, nameMust).max(80, nameMust);
const centsText = decimalText(100_000_000);

const costInput = keys({
  steps: listOf(
    keys({
      name,
      minutes: decimalText(100_000),
      lossPercent: decimalText(100).refine((text) => Number(text) < 100, 'must be less than "100"'),
      clayCents: centsText,
      glazeCents: centsText,
      firingCents: centsText,
      mouldCents: centsText,
    }),
    'steps, each with what is spent on one piece there',
  ),
  centsPerHour: wholeCents.refine((cents) => cents >= 0n, 'must be 0 cents or more'),
  overheadPercent: decimalText(1_000),
}).refine((given) => costOfOne(factsOf(given)).ok, {
  path: ['steps'],
  message: 'must be steps at which anything at all is spent',
});

type CostGiven = {
  steps: readonly {
    name: string;
    minutes: string;
    lossPercent: string;
    clayCents: string;
    glazeCents: string;
    firingCents: string;
    mouldCents: string;
  }[];
  centsPerHour: bigint;
  overheadPercent: string;
};

function factsOf({ steps, centsPerHour, overheadPercent }: CostGiven): CostFacts {
  const exact = (text: string) => fractionOf(parseDecimal(text) ?? { units: 0n, scale: 0 });
  return {
    ...{ centsPerHour, overheadPercent },
    steps: steps.map((step) => ({
      ...{ name: step.name, minutesEach: step.minutes, lossPercent: step.lossPercent },
      ...{ clay: exact(step.clayCents), glaze: exact(step.glazeCents) },
      ...{ firing: exact(step.firingCents), mould: exact(step.mouldCents) },
    })),
  };
}

/** What one good piece costs. */
export const pieceCost: Working<
  z.infer<typeof costInput>,
  { cents: number; lines: Record<string, number>; goodPercent: number }
> = {
  name: 'piece-cost',
  title: 'What one good piece costs',
  formula:
    'What is spent at a step, over the share of pieces that come through it and all later steps; ' +
    'together, and overhead on top.',
  source: 'Common practice',
  caution: 'Minutes and losses are a guess until they are watched and counted.',
  example: {
    steps: [
      {
        ...{ name: 'all of it', minutes: '35', lossPercent: '12', clayCents: '90' },
        ...{ glazeCents: '60', firingCents: '62.5', mouldCents: '40' },
      },
    ],
    centsPerHour: 2_500,
    overheadPercent: '20',
  },
  input: costInput,
  workOut: (given) => {
    const { lines, totalCents, goodHundredths } = workedValue(costOfOne(factsOf(given)));
    const named = lines.filter(({ cents }) => cents !== 0n);
    return {
      output: {
        cents: Number(totalCents),
        lines: Object.fromEntries(lines.map(({ what, cents }) => [what, Number(cents)])),
        goodPercent: goodHundredths / 100,
      },
      working: [
        `Of 100 that are begun ${goodHundredths / 100} come out good.`,
        ...named.map(({ what, cents }) => `For ${what}: ${formatCents(cents)}.`),
        `One good piece: ${formatCents(totalCents)}.`,
      ],
    };
  },
};

const amount = decimalText(1_000_000).refine((text) => Number(text) > 0, 'must be more than "0"');
const materialsOf = (what: string, least: number) => {
  const must = `must be a list of ${least} to ${materialsMost} ${what}`;
  return z
    .array(keys({ material: name, amount }), must)
    .min(least, must)
    .max(materialsMost, must);
};
const gramsMust = 'must be whole grams, from 10 to 200000';

const batchInput = keys({
  base: materialsOf('materials of the base', 1),
  additions: materialsOf('materials on top of it', 0),
  dryG: z.int(gramsMust).min(10, gramsMust).max(200_000, gramsMust),
}).refine(({ base, additions }) => recipeInPercent(base, additions).ok, {
  path: ['base'],
  message:
    'must be a recipe: each material once, each enough to be seen, none on top above the base',
});

/** What to weigh out of each material for a bucket. */
export const glazeBatch: Working<
  z.infer<typeof batchInput>,
  { percents: string[]; grams: string[]; stepG: string }
> = {
  name: 'glaze-batch',
  title: 'Weighing a bucket of glaze out',
  formula:
    'The base is brought to 100, what goes on top is reckoned on the same base; then every material ' +
    'has its share of the dry weight, cut to the step of the scale, the rest to the largest rests.',
  source: 'Proportion; largest remainder (OpenStax, Contemporary Mathematics, section 11.4)',
  caution: 'Raw materials differ from sack to sack: a new bucket gets a test tile.',
  example: {
    base: [
      { material: 'Feldspar', amount: '60' },
      { material: 'Whiting', amount: '40' },
    ],
    additions: [{ material: 'Red iron oxide', amount: '5' }],
    dryG: 2_100,
  },
  input: batchInput,
  workOut: ({ base, additions, dryG }) => {
    const recipe = workedValue(recipeInPercent(base, additions));
    const { materials, stepG } = workedValue(batchWeights(recipe, dryG));
    return {
      output: {
        percents: recipe.map(({ percent }) => percent),
        grams: materials.map(({ grams }) => grams),
        stepG,
      },
      working: [
        ...materials.map(
          ({ material, percent, isAddition, grams }) =>
            `${material}: ${percent} of 100${isAddition ? ' on top' : ''}, ${grams} g.`,
        ),
        `Together ${dryG} g, to ${stepG} g.`,
      ],
    };
  },
};

const dayMust = 'must be a day in quotes, such as "2026-05-03"';
const day = z.string(dayMust).transform((text, context) => {
  const read = parseDay(text);
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: dayMust });
  return z.NEVER;
});
const readingsMust = `must be a list of ${piecesTested} to 12 readings, mg in a litre in quotes`;
const readings = z
  .array(decimalText(10_000, 4), readingsMust)
  .min(piecesTested, readingsMust)
  .max(12, readingsMust);
const wareMust = `must be one of ${wareKinds.join(', ')}`;

const leachInput = keys({
  ware: z.enum(wareKinds, wareMust),
  testedOn: day,
  laboratory: name,
  leadMgPerL: readings,
  cadmiumMgPerL: readings,
}).refine(({ leadMgPerL, cadmiumMgPerL }) => leadMgPerL.length === cadmiumMgPerL.length, {
  path: ['cadmiumMgPerL'],
  message: 'must be as many as for lead',
});

/** Whether a leach test keeps the limits of its ware. */
export const leachTest: Working<
  z.infer<typeof leachInput>,
  { holds: boolean; beyond: string[] }
> = {
  name: 'leach-test',
  title: 'A leach test against its limits',
  formula:
    'Each piece is held against the limit of its ware, or the average of all where the limit is of ' +
    'the average; what is exactly at a limit keeps it.',
  source: 'FDA CPG 545.400 (cadmium) and 545.450 (lead), tested by ASTM C738',
  caution:
    'It speaks for this clay, glaze and firing alone. Whoever advises the studio says what else the ' +
    'law of the place asks for.',
  example: {
    ...{ ware: 'cup_or_mug', testedOn: '2026-05-03', laboratory: 'a laboratory' },
    leadMgPerL: ['0.1', '0.12', '0.1', '0.1', '0.09', '0.1'],
    cadmiumMgPerL: ['0.02', '0.02', '0.02', '0.02', '0.02', '0.02'],
  },
  input: leachInput,
  workOut: ({ ware, testedOn, laboratory, leadMgPerL, cadmiumMgPerL }) => {
    const found = leadMgPerL.map((lead, at) => ({ lead, cadmium: cadmiumMgPerL[at] ?? '0' }));
    const test = { ware, testedOn, laboratory, readings: found };
    const outcome = workedValue(judgeLeachTest(test, testedOn));
    return {
      output: { holds: outcome.holds, beyond: [...outcome.beyond] },
      working: [limitWords(ware), leachWords(test, outcome)],
    };
  },
};
