import { z } from 'zod';
import { learnLoss, statedWeighsPieces } from '@/lib/studio/rules/losses/learned';
import { learnedWords } from '@/lib/studio/rules/losses/words';
import { decimalText, keys } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

const countMust = 'must be a whole number of pieces, from 0 to 10000000';
const count = z.int(countMust).min(0, countMust).max(10_000_000, countMust);
const weightMust = 'must be the whole number of pieces it weighs, from 1 to 10000';
const statedMust = 'must be more than "0" and less than "100"';

const lossInput = keys({
  lost: count,
  of: count,
  statedPercent: decimalText(100).refine(
    (percent) => Number(percent) > 0 && Number(percent) < 100,
    statedMust,
  ),
  weighsPieces: z.int(weightMust).min(1, weightMust).max(10_000, weightMust),
}).refine(({ lost, of }) => lost <= of, {
  path: ['lost'],
  message: 'must be no more than went through the step',
});

/** What a step loses, as far as the studio's own pieces tell. */
export const lossLearned: Working<
  z.infer<typeof lossInput>,
  { share: number; low: number; high: number; ownShare: number }
> = {
  name: 'loss-learned',
  title: 'What a step loses here',
  formula:
    'A stated loss counts as so many pieces seen before; the studio’s own are added to them. The ' +
    'span leaves out one chance in forty at each end.',
  source: 'Gelman and others, Bayesian Data Analysis, section 2.4 (from memory)',
  caution:
    'It takes pieces as lost one by one. A shelf that fell is one mishap, not twenty: write its ' +
    'pieces down apart.',
  example: { lost: 3, of: 40, statedPercent: '5', weighsPieces: statedWeighsPieces },
  input: lossInput,
  workOut: ({ lost, of, statedPercent, weighsPieces }) => {
    const learned = workedValue(learnLoss({ lost, of }, { percent: statedPercent, weighsPieces }));
    const { share, lowShare, highShare, ownShare } = learned;
    return {
      output: {
        ...{ share: rounded(share), ownShare: rounded(ownShare) },
        ...{ low: rounded(lowShare), high: rounded(highShare) },
      },
      working: [
        `Stated: ${statedPercent}% of ${weighsPieces} pieces.`,
        `With ${lost} of ${of} of the studio’s own that is ${rounded(share * 100, 2)} of 100.`,
        learnedWords(learned),
      ],
    };
  },
};

function rounded(number: number, places = 6): number {
  const scale = 10 ** places;
  return Math.round(number * scale) / scale;
}
