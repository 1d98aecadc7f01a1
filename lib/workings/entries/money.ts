import { z } from 'zod';
import {
  formatCents,
  percentsAddUp,
  percentWeights,
  splitInSteps,
  type Cents,
} from '@/lib/money/rules';
import type { SplitSteps } from '@/lib/money/rules/split';
import { decimalText, keys, listOf, wholeCents } from '@/lib/workings/atoms';
import { listed, type Worked, type Working } from '@/lib/workings/working';

const weight = z
  .int('must be a whole number of 0 or more')
  .min(0, 'must be a whole number of 0 or more')
  .transform(BigInt);

const splitInput = keys({
  cents: wholeCents,
  weights: listOf(weight, 'whole numbers').refine(
    (weights) => weights.some((each) => each > 0n),
    'must not all be 0',
  ),
});

/** Splits an amount by weights so that the parts add up to it. */
export const moneySplit: Working<z.infer<typeof splitInput>, Parts> = {
  name: 'money-split',
  title: 'An amount split by weights',
  formula:
    'Each part is amount × weight ÷ all weights, cut down to a whole cent; the cents left over ' +
    'go one by one to the largest rests, the first of equal ones before the others.',
  source: 'Largest remainder (Hamilton): OpenStax, Contemporary Mathematics, section 11.4',
  caution: null,
  example: { cents: 10_000, weights: [1, 1, 1] },
  input: splitInput,
  workOut: ({ cents, weights }) => {
    const all = weights.reduce((sum, each) => sum + each, 0n);
    const by = `the weights ${listed(weights.map(String))}, ${all} in all`;
    return workedSplit(cents, by, splitInSteps(cents, weights));
  },
};

const instalmentsInput = keys({
  cents: wholeCents,
  percents: listOf(decimalText(100), 'percentages').refine(
    percentsAddUp,
    'must be percentages that add up to 100',
  ),
});

/** Splits a price into instalments by percentages so that they add up to it. */
export const instalments: Working<z.infer<typeof instalmentsInput>, Parts> = {
  name: 'instalments',
  title: 'A price in instalments',
  formula:
    'Each instalment is price × percentage ÷ 100, cut down to a whole cent; the cents left over ' +
    'go one by one to the largest rests, the first of equal ones before the others.',
  source: 'Largest remainder (Hamilton): OpenStax, Contemporary Mathematics, section 11.4',
  caution: null,
  example: { cents: 123_457, percents: ['50', '25', '25'] },
  input: instalmentsInput,
  workOut: ({ cents, percents }) => {
    const by = listed(percents.map((percent) => `${percent}%`));
    return workedSplit(cents, by, splitInSteps(cents, percentWeights(percents)));
  },
};

type Parts = { readonly parts: readonly number[] };

function workedSplit(cents: Cents, by: string, steps: SplitSteps): Worked<Parts> {
  const { cutDown, missing, parts } = steps;
  const topped = parts
    .map((part, place) => (part === cutDown[place] ? '' : String(place + 1)))
    .filter((place) => place !== '');
  const rests = `a cent each to the largest rests, part ${listed(topped)}`;
  const written = listed(parts.map((part) => formatCents(part)));
  return {
    output: { parts: parts.map(Number) },
    working: [
      `${formatCents(cents)} is split by ${by}.`,
      `Cut down to whole cents: ${listed(cutDown.map((part) => formatCents(part)))}.`,
      missing === 0n ? 'Nothing is left over.' : `Left over: ${formatCents(missing)}, ${rests}.`,
      `The parts are ${written}: ${formatCents(cents)} in all.`,
    ],
  };
}
