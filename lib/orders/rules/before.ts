import type { PieceKind } from '@/lib/catalogue/rules';
import { castsWords } from '@/lib/catalogue/rules/moulds';
import { addDays, formatDay, type Day } from '@/lib/dates/rules';
import type { StepDays, Technique } from '@/lib/studio/rules/routes';

/** How many tile-sized pieces go into the kiln at once. */
export const piecesATurn = 80;
/** How often the kiln is turned in a week. */
export const turnsAWeek = 2;

/**
 * Pieces to begin, so that the wanted ones come out good: one more in ten, at least one.
 *
 * @source common practice: a mural has one spare in ten, and a single piece its twin
 * @example piecesToBegin(22) // 25
 */
export function piecesToBegin(quantity: number): number {
  return quantity + Math.max(1, Math.ceil(quantity / 10));
}

/** When an order may be ready: not before the one day, hardly after the other. */
export type ReadySpan = { fromOn: Day; untilOn: Day; fromWeeks: number; untilWeeks: number };

/**
 * When pieces that are begun today may be ready: the days of their route, and what the kiln still
 * has before it when they are dry.
 *
 * @param steps the route of the technique; its kiln steps have the pegs bisque and glaze
 * @param turnsWaiting loads that other jobs still need, in turns of the kiln
 * @source common practice: a kiln-week is two loads, and about 80 tiles make one; a studio
 *   replaces both by its own
 * @example six weeks of route and a kiln that is free: `fromWeeks` is 6
 */
export function readySpan(
  steps: readonly StepDays[],
  turnsWaiting: number,
  todayOn: Day,
): ReadySpan {
  const daysOf = (some: readonly StepDays[], which: 'likelyDays' | 'longestDays') =>
    some.reduce((sum, step) => sum + step[which], 0);
  const firstKiln = steps.findIndex((step) => step.peg === 'bisque');
  const beforeKiln = daysOf(steps.slice(0, Math.max(0, firstKiln)), 'likelyDays');
  const queueDays = Math.ceil((Math.ceil(turnsWaiting) / turnsAWeek) * 7);
  const waitDays = Math.max(0, queueDays - beforeKiln);
  const fromDays = daysOf(steps, 'likelyDays') + waitDays;
  const untilDays = daysOf(steps, 'longestDays') + waitDays;
  return {
    fromOn: addDays(todayOn, fromDays),
    untilOn: addDays(todayOn, untilDays),
    fromWeeks: Math.ceil(fromDays / 7),
    untilWeeks: Math.ceil(untilDays / 7),
  };
}

/** What must be known before money is taken for pieces that are still to be made. */
export type BeforeFacts = {
  quantity: number;
  /** The working mould with the most casts left, and what is said of it; null when there is none. */
  mould: { code: string; left: number; said?: string } | null;
  /** Whether pieces of this technique need a mould at all. */
  needsMould: boolean;
  colourway: { name: string; endedOn: Day | null };
  span: ReadySpan;
  turnsWaiting: number;
  /** When the collector must have it; null when no day presses. */
  wantedOn: Day | null;
};

/** One thing to say at the counter; `mind` when it speaks against a promise. */
export type SaidBefore = {
  about: 'mould' | 'glaze' | 'kiln' | 'day';
  mind: boolean;
  words: string;
};

/**
 * What to say before money is taken: whether the mould lasts, whether the glaze is still made,
 * what the kiln makes of the day. In that order; the day only when one presses.
 *
 * @source common practice: mould, glaze and kiln are asked before a deposit is taken
 */
export function saidBefore(facts: BeforeFacts, todayOn: Day): SaidBefore[] {
  return [
    aboutMould(facts),
    aboutGlaze(facts, todayOn),
    aboutKiln(facts),
    ...(facts.wantedOn === null ? [] : [aboutDay(facts.wantedOn, facts.span)]),
  ];
}

function aboutMould({ mould, needsMould, quantity }: BeforeFacts): SaidBefore {
  const about = 'mould';
  const begin = piecesToBegin(quantity);
  if (!needsMould) return { about, mind: false, words: 'It is made by hand, without a mould.' };
  if (!mould) {
    const words = 'No mould of this design is written down. Ask the studio whether there is one.';
    return { about, mind: true, words };
  }
  const left = `Mould ${mould.code} has ${castsWords(mould.left)} left`;
  const wanted = `${begin} are begun for ${quantity}, with what may crack`;
  if (mould.left >= begin) return { about, mind: false, words: `${left}; ${wanted}.` };
  const why = mould.left === 0 && mould.said ? ` ${mould.said}` : '';
  const words = `${left}, and ${wanted}.${why} A new mould comes first, or fewer pieces.`;
  return { about, mind: true, words };
}

function aboutGlaze({ colourway }: BeforeFacts, todayOn: Day): SaidBefore {
  const about = 'glaze';
  const { name, endedOn } = colourway;
  if (endedOn === null) return { about, mind: false, words: `${name} is made.` };
  const day = formatDay(endedOn, 'short');
  if (endedOn > todayOn) {
    return { about, mind: true, words: `${name} is made until ${day} only.` };
  }
  const words = `The glazes of ${name} are no longer made since ${day}. Ask the studio first.`;
  return { about, mind: true, words };
}

function aboutKiln({ span, turnsWaiting }: BeforeFacts): SaidBefore {
  const turns = Math.ceil(turnsWaiting);
  const queue =
    turns === 0
      ? 'The kiln is free'
      : `The kiln has ${turns === 1 ? 'one load' : `${turns} loads`} before it`;
  return {
    about: 'kiln',
    mind: false,
    words: `${queue}: ${spanWords(span)}. That is about, and no promise.`,
  };
}

/** A span in weeks: `about 6 to 9 weeks`. */
export function spanWords({ fromWeeks, untilWeeks }: ReadySpan): string {
  if (fromWeeks === untilWeeks) return `about ${fromWeeks} weeks`;
  return `about ${fromWeeks} to ${untilWeeks} weeks`;
}

function aboutDay(wantedOn: Day, span: ReadySpan): SaidBefore {
  const about = 'day';
  const day = formatDay(wantedOn, 'short');
  if (wantedOn >= span.untilOn) return { about, mind: false, words: `It can be ready by ${day}.` };
  if (wantedOn >= span.fromOn) {
    const words = `If it must be ready by ${day}, it may be late: say so now.`;
    return { about, mind: true, words };
  }
  const words = `If it must be ready by ${day}, it will likely be late: say so now.`;
  return { about, mind: true, words };
}

/** How a kind of piece is commonly made here, for a first choice. */
export function usualTechnique(kind: PieceKind, hasMould: boolean): Technique {
  if (hasMould || kind === 'relief_tile') return 'slip_cast';
  return kind === 'plaque' || kind === 'wall_panel' ? 'slab_relief' : 'thrown';
}

/** Whether pieces of a technique come out of a mould. */
export function comesFromMould(technique: Technique): boolean {
  return technique === 'slip_cast' || technique === 'press_moulded';
}
