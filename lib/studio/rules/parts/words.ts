import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { outside, placeName } from '@/lib/studio/rules/jobs/standing';
import type { DrawingFault } from './drawing';
import type { PartMade, SafeThrough } from './fates';
import type { HoldsUp } from './holding';
import { partsMost } from './laying';

/** Why a drawing was not kept. */
export type DrawRefusal =
  | { code: 'no_such_job' }
  | { code: 'clay_begun' }
  | { code: 'drawn_meanwhile'; by: string; version: number }
  | DrawingFault;

/** Why nothing was written down of parts. */
export type PartsRefusal =
  | { code: 'no_such_job' }
  | { code: 'no_such_part' }
  | { code: 'nothing_chosen' }
  | { code: 'part_in_kiln'; number: number }
  | { code: 'part_not_begun'; number: number }
  | { code: 'part_lost'; number: number }
  | { code: 'no_such_bucket' }
  | { code: 'day_to_come' };

type AnyRefusal = NotAllowed | { code: 'key_used_for_something_else' };

const otherKey = 'This page was sent before with something else in it. Load it again, please.';

/** Says why a drawing was not kept. */
export function drawRefusalMessage(refusal: DrawRefusal | AnyRefusal): string {
  if (isFault(refusal)) return drawingFaultWords(refusal);
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return otherKey;
    case 'no_such_job':
      return 'That job is not in the studio’s list.';
    case 'clay_begun':
      return 'The clay of this job was begun, so its drawing stays as it is. Open a new job for another drawing.';
    case 'drawn_meanwhile':
      return (
        `${refusal.by} saved another drawing of this job while you drew. Yours is still here and ` +
        'on this device. Look at theirs in another window; then save yours in its place, or take theirs.'
      );
  }
}

const faultCodes: ReadonlySet<string> = new Set([
  'nothing_drawn',
  'too_many_parts',
  'numbers_not_in_order',
  'part_crosses_itself',
  'part_too_small',
  'parts_overlap',
] satisfies DrawingFault['code'][]);

function isFault(refusal: { code: string }): refusal is DrawingFault {
  return faultCodes.has(refusal.code);
}

/** Says what is wrong with a drawing, and what to do. */
export function drawingFaultWords(fault: DrawingFault): string {
  switch (fault.code) {
    case 'nothing_drawn':
      return 'Nothing is drawn yet. Draw a part by its corners, or begin from a grid.';
    case 'too_many_parts':
      return `A drawing has at most ${partsMost} parts; this one has ${fault.parts}. Make some of them one.`;
    case 'numbers_not_in_order':
      return `Number ${fault.missing} is missing. Number the parts anew.`;
    case 'part_crosses_itself':
      return `The outline of part ${fault.number} crosses itself. Move one of its corners.`;
    case 'part_too_small':
      return `Part ${fault.number} is next to nothing. Take it away, or draw it larger.`;
    case 'parts_overlap':
      return `Parts ${fault.number} and ${fault.other} lie over one another. Move a corner of one of them.`;
  }
}

const partsCodes: ReadonlySet<string> = new Set([
  'no_such_job',
  'no_such_part',
  'nothing_chosen',
  'part_in_kiln',
  'part_not_begun',
  'part_lost',
  'no_such_bucket',
  'day_to_come',
] satisfies PartsRefusal['code'][]);

/** Whether it is a refusal of chosen parts, and not one of the move or the loss itself. */
export function isPartsRefusal(refusal: { code: string }): refusal is PartsRefusal {
  return partsCodes.has(refusal.code);
}

/** Says why nothing was written down of parts. */
export function partsRefusalMessage(refusal: PartsRefusal | AnyRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return otherKey;
    case 'no_such_job':
      return 'That job is not in the studio’s list.';
    case 'no_such_part':
      return 'One of those parts is not in this drawing. Load the page again, please.';
    case 'nothing_chosen':
      return 'Choose at least one part.';
    case 'part_in_kiln':
      return `Part ${refusal.number} is in a kiln that was lit. It can be moved when the kiln is opened.`;
    case 'part_not_begun':
      return `Part ${refusal.number} is not begun yet. Move it to its first step first.`;
    case 'part_lost':
      return `Part ${refusal.number} was lost. Choose the one that is made anew.`;
    case 'no_such_bucket':
      return 'Choose the bucket that the glaze was taken from.';
    case 'day_to_come':
      return 'That day is still to come. Write the day on which the glaze was laid on.';
  }
}

/** `41 of 60 safe through the glaze kiln`. */
export function safeWords({ safe, of, name }: SafeThrough): string {
  return `${safe} of ${of} safe through ${name}`;
}

/** Which piece of clay it is: `the first`, `the spare`, `made anew, no. 3`. */
export function makeWords({ make, isSpare }: Pick<PartMade, 'make' | 'isSpare'>): string {
  if (isSpare) return make === 2 ? 'the spare' : `a spare, no. ${make}`;
  return make === 1 ? 'the first' : `made anew, no. ${make}`;
}

/**
 * Where a part stands, in words: `stands at drying`, `not begun`, `lost`, `finished`.
 */
export function placeWords(steps: readonly { name: string }[], position: number): string {
  const name = placeName({ steps }, position);
  return position >= 1 && position <= steps.length ? `stands at ${name}` : name;
}

/** What went with a move, of one part: `Moved to drying`, `Lost`, `Begun anew`, `Taken back to drying`. */
export function movedPartWords(
  steps: readonly { name: string }[],
  move: { fromPosition: number; toPosition: number; undoesId: string | null },
): string {
  const to = placeName({ steps }, move.toPosition);
  if (move.undoesId !== null) {
    return move.toPosition === outside ? 'Beginning anew was taken back' : `Taken back to ${to}`;
  }
  if (move.fromPosition === outside) return 'Begun anew';
  if (move.toPosition === outside) return 'Lost';
  return to === 'finished' ? 'Finished' : `Moved to ${to}`;
}

/** Numbers in words, runs drawn together: `1 to 4, 7, 9 and 10`. */
export function numbersWords(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers.toSorted((one, other) => one - other)) {
    const last = runs.at(-1);
    if (last?.[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const words = runs.flatMap(([from, to]) => {
    if (from === to) return [String(from)];
    return to === from + 1 ? [String(from), String(to)] : [`${from} to ${to}`];
  });
  const last = words.at(-1) ?? 'none';
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${last}` : last;
}

/** What a number holds up, in two sentences. */
export function holdsUpWords(number: number, held: HoldsUp): string {
  const count = held.waiting.length;
  const wait =
    count === 0
      ? `Nothing waits at ${held.togetherName} yet`
      : `${count === 1 ? '1 part waits' : `${count} parts wait`} for number ${number} at ${held.togetherName}`;
  const ahead =
    held.ahead === 0 ? '' : `; ${held.ahead} more ${held.ahead === 1 ? 'is' : 'are'} ahead of it`;
  return `${wait}${ahead}. ${wayWords(held)}`;
}

function wayWords({ steps, shortestDays, likelyDays, longestDays }: HoldsUp): string {
  const days = `${shortestDays} to ${longestDays} days, most often ${likelyDays}`;
  return `From here: ${steps.join(', ')}; ${days}, without waiting for a bench or a kiln.`;
}

/** When the job is ready as it was last foretold; a day that no future reached is left out. */
export function foretoldWords(told: {
  in50On: Day | null;
  in80On: Day | null;
  in95On: Day | null;
  toldOn: Day;
}): string {
  const days = [
    told.in50On && `even odds by ${formatDay(told.in50On, 'short')}`,
    told.in80On && `four in five by ${formatDay(told.in80On, 'short')}`,
    told.in95On && `nearly sure by ${formatDay(told.in95On, 'short')}`,
  ].filter((words) => words !== null);
  const on = `As foretold on ${formatDay(told.toldOn, 'short')}`;
  return days.length === 0 ? `${on}: no day yet.` : `${on}: ${days.join(', ')}.`;
}
