import { formatDay, type Day } from '@/lib/dates/rules';
import { stopped } from './words';

/** What is known of a piece before it is handed over. */
export type HandOverFacts = {
  readonly commissionNumber: number;
  readonly title: string;
  readonly collector: string;
  /** Size, parts and weight by the agreement; null where it was agreed on a paper of its own. */
  readonly sizeWords: string | null;
  /** How many parts it has; null where nobody knows. */
  readonly parts: number | null;
  /** How it is fixed, as it was noted before it was covered; empty for nothing. */
  readonly fixings: string;
};

/** Everything that the hand-over says. */
export type HandOverSaid = HandOverFacts & {
  readonly takenBy: string;
  readonly handedOn: Day;
  /** Whether it was told how to look after it, and the paper given. */
  readonly careGiven: boolean;
  readonly remarks: string;
};

/** The hand-over, word for word: what a name under it binds to. The same facts always read the same. */
export function handOverBody(said: HandOverSaid): string {
  const { takenBy, handedOn, sizeWords, parts, fixings, careGiven, remarks } = said;
  return [
    `Hand-over of commission ${said.commissionNumber}: ${said.title}`,
    `Taken by ${takenBy} on ${formatDay(handedOn, 'long')}.`,
    ...(sizeWords === null ? [] : [sizeWords]),
    ...(parts === null ? [] : [partsSentence(parts)]),
    ...(fixings.trim() === '' ? [] : [`How it is fixed: ${stopped(inOneLine(fixings))}`]),
    careGiven
      ? 'How to look after it was told, and the paper about it given.'
      : 'How to look after it is still to be told.',
    remarks.trim() === ''
      ? 'It was looked over; nothing was remarked on.'
      : `It was looked over. Remarks: ${stopped(inOneLine(remarks))}`,
    'From this day on the piece is theirs. What is owed by the agreement stays owed.',
  ].join('\n');
}

/**
 * What is known of a hand-over that nobody signed here: it claims nothing that nobody wrote down.
 *
 * @example without remarks it does not say that there were none
 */
export function handOverNote(
  said: Pick<HandOverSaid, 'commissionNumber' | 'title' | 'takenBy' | 'handedOn' | 'remarks'>,
): string {
  const { takenBy, handedOn, remarks } = said;
  return [
    `Hand-over of commission ${said.commissionNumber}: ${said.title}`,
    `Taken by ${takenBy} on ${formatDay(handedOn, 'long')}.`,
    ...(remarks.trim() === '' ? [] : [`Remarks: ${stopped(inOneLine(remarks))}`]),
    'It was written down without a signature.',
  ].join('\n');
}

function partsSentence(parts: number): string {
  return parts === 1 ? 'Handed over in one part.' : `Handed over: ${parts} parts, counted.`;
}

/** One thing a line: a break that was typed within it is a blank. */
function inOneLine(words: string): string {
  return words.trim().replace(/\s*\n\s*/g, ' ');
}
