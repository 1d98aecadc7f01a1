import { piecesWords } from '../words';
import type { LearnedLoss } from './learned';
import type { Start } from './start';

/**
 * What is known of a loss, and how well: `3 of 40 lost; between 2 and 19 of 100.`
 *
 * The span is never told narrower than it is: its low end is rounded down, its high end up.
 *
 * @returns two sentences when more of it is stated than counted
 */
export function learnedWords(learned: LearnedLoss): string {
  const { counted, isStated, lowShare, highShare, ownShare } = learned;
  const low = Math.floor(lowShare * 100);
  const high = Math.ceil(highShare * 100);
  const span = `between ${low} and ${high} of 100`;
  if (counted.of === 0) {
    return isStated
      ? `Nothing counted yet; as stated, ${span}.`
      : 'Nothing counted yet, nor stated.';
  }
  const told = `${counted.lost === 0 ? 'None' : counted.lost} of ${counted.of} lost; ${span}.`;
  return ownShare < 0.5 ? `${told} That still rests more on what was stated than on counts.` : told;
}

/**
 * How many to begin, as it is said at the bench: `Begin 13 pieces for 10: fewer than 10 come
 * out whole about 3 times in 100. With no spare ones it would be about 65 times in 100.`
 */
export function startWords(good: number, start: Start): string {
  const { shortChance, shortChanceWithoutSpare } = start;
  const fewer = good === 1 ? 'none comes out whole' : `fewer than ${good} come out whole`;
  if (shortChanceWithoutSpare === 0) return `Begin ${good}: nothing is lost on the way.`;
  if (start.start === good) return `Begin ${good}, no spare ones: ${fewer} ${times(shortChance)}.`;
  const spare = `${piecesWords(start.start)} for ${good}`;
  return (
    `Begin ${spare}: ${fewer} ${times(shortChance)}. ` +
    `With no spare ones it would be ${times(shortChanceWithoutSpare)}.`
  );
}

function times(chance: number): string {
  const inHundred = Math.round(chance * 100);
  if (inHundred === 0) return 'less than once in 200 times';
  return inHundred === 1 ? 'about once in 100 times' : `about ${inHundred} times in 100`;
}
