import { ok, refuse, type Result } from '@/lib/platform/result';

/** When a piece was looked at: as it left, as it came, as it was handed over. */
export type ConditionWhen = 'out' | 'in' | 'hand_over';

/** The three, as a form offers them. */
export const conditionWhens: readonly { when: ConditionWhen; words: string }[] = [
  { when: 'out', words: 'As it leaves' },
  { when: 'in', words: 'As it came' },
  { when: 'hand_over', words: 'At the hand-over' },
];

/** A report's name: `as it left`. */
export const whenWords: Readonly<Record<ConditionWhen, string>> = {
  out: 'as it left',
  in: 'as it came',
  hand_over: 'at the hand-over',
};

/** A mark on a picture, in thousandths from its upper left, and what is seen there. */
export type MarkTold = { readonly x: number; readonly y: number; readonly words: string };

/** The most pictures of one report, and the most marks on one picture. */
export const conditionMost = { views: 8, marks: 24, marksAtOnce: 6 } as const;

/** Why marks were not set. */
export type MarkRefusal =
  | { code: 'no_such_view' }
  | { code: 'no_marks' }
  | { code: 'mark_without_words'; mark: number }
  | { code: 'mark_without_place'; mark: number }
  | { code: 'too_many_marks'; most: number };

/** A row of the form: a place that was touched or none, and words or none. */
export type MarkRow = {
  readonly x: number | null;
  readonly y: number | null;
  readonly words: string;
};

/**
 * The marks of a form's rows, in their order; a row without either is passed over.
 *
 * @param standing how many the picture has already
 * @returns refuses, in this order: a mark without words or without its place, none at all, too many
 */
export function readMarks(
  rows: readonly MarkRow[],
  standing: number,
): Result<MarkTold[], MarkRefusal> {
  const marks: MarkTold[] = [];
  for (const [at, { x, y, words }] of rows.entries()) {
    const isPlaced = x !== null && y !== null;
    if (!isPlaced && words === '') continue;
    if (words === '') return refuse({ code: 'mark_without_words', mark: at + 1 });
    if (!isPlaced) return refuse({ code: 'mark_without_place', mark: at + 1 });
    marks.push({ x, y, words });
  }
  if (marks.length === 0) return refuse({ code: 'no_marks' });
  return standing + marks.length > conditionMost.marks
    ? refuse({ code: 'too_many_marks', most: conditionMost.marks })
    : ok(marks);
}
