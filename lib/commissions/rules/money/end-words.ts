import type { CancelTerms, EndStage } from '@/lib/commissions/rules/money/ending';
import type { JobFact } from '@/lib/commissions/rules/facts';
import type { Cents } from '@/lib/money/rules';
import { placeName, standingsOf } from '@/lib/studio/rules';

/**
 * What the agreement says stays at a stage, in one sentence.
 *
 * @param money how the gallery writes cents
 * @example 'While it is made, 50 % of the price with its signed changes stays, and never less than the
 *   design fee of $800.00.'
 */
export function clauseSentence(
  stage: EndStage,
  { designFeeCents, cancelMakingPercent, cancelFinishedPercent }: CancelTerms,
  money: (cents: Cents) => string,
): string {
  const fee = designFeeCents > 0n ? `the design fee of ${money(designFeeCents)}` : null;
  if (stage === 'before_making') {
    return fee === null
      ? 'Before the making nothing stays: no design fee was agreed.'
      : `Before the making ${fee} stays.`;
  }
  const isMaking = stage === 'making';
  const percent = trimmed(isMaking ? cancelMakingPercent : cancelFinishedPercent);
  const least = fee === null || percent === '100' ? '' : `, and never less than ${fee}`;
  const when = isMaking ? 'While it is made' : 'Once it is finished';
  return `${when}, ${percent} % of the price with its signed changes stays${least}.`;
}

function trimmed(percent: string): string {
  return percent.includes('.') ? percent.replace(/\.?0+$/, '') : percent;
}

/**
 * How far the pieces of a job were, for the paper of an early end.
 *
 * @example 'Job 7, 12 pieces: 4 not begun, 8 at drying.'
 */
export function piecesSentence(job: JobFact): string {
  const places = standingsOf(job, job.moves).map(({ position, pieces }) => {
    const name = placeName(job, position);
    return name === 'not begun' || name === 'finished'
      ? `${pieces} ${name}`
      : `${pieces} at ${name}`;
  });
  const many = job.pieces === 1 ? '1 piece' : `${job.pieces} pieces`;
  return `Job ${job.number}, ${many}: ${places.join(', ')}.`;
}
