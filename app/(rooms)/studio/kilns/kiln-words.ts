import { formatDay, type Day } from '@/lib/dates/rules';
import { daysWords, turnsWords, weeksWords } from '@/lib/studio/rules/firings/words';
import type { ClosedDays, KilnInList } from '@/lib/studio/reads/kilns/kiln';
import type { Queue } from '@/lib/studio/rules/firings/load';
import { piecesWords, shortDay } from '@/lib/studio/rules/words';
import { formatLength } from '@/lib/units/rules';

/** `1 firing`, `12 firings`. */
export function firingsWords(firings: number): string {
  return firings === 1 ? '1 firing' : `${firings} firings`;
}

/** How much of this week’s turns is taken, as a sentence. */
export function weekSentence({ week, turnsAWeek }: KilnInList): string {
  if (week.taken === 0) return `No turn of this week is taken; it manages ${turnsAWeek}.`;
  const left = week.left === 0 ? 'none is left' : `${week.left} left`;
  return `${week.taken} of this week’s ${turnsAWeek} turns taken, ${left}.`;
}

/** How old its elements are, as a sentence. */
export function ageSentence({ age, elementFirings }: KilnInList, todayOn: Day): string {
  const since = age.sinceOn ? `since ${shortDay(age.sinceOn, todayOn)}` : 'as far as is known';
  const unplanned = age.unplanned > 0 ? `, ${age.unplanned} of them unplanned` : '';
  const due =
    age.left > 0
      ? `${age.left} of ${elementFirings} to go`
      : 'they are due: keep a set at hand before one fails';
  return `Elements: ${firingsWords(age.firings)} ${since}${unplanned}; ${due}.`;
}

/** What waits for it, in turns and weeks, as a sentence. */
export function queueSentence(queue: Queue, turnsAWeek: number): string {
  const unknown =
    queue.notReckoned === 0
      ? ''
      : ` ${piecesWords(queue.notReckoned)} ${queue.notReckoned === 1 ? 'has' : 'have'} no size yet, or no room in it.`;
  if (queue.turnHundredths === 0) return `Nothing that is measured waits for it.${unknown}`;
  const clear =
    `${turnsWords(queue.turnHundredths)} of work ${queue.turnHundredths > 104 ? 'wait' : 'waits'}: ` +
    `${weeksWords(queue.weekTenths)} at ${turnsAWeek} a week.`;
  return `${clear}${unknown}`;
}

/** Days on which it stands still, as they are said. */
export function closedWords(days: ClosedDays): string {
  const span =
    days.fromOn === days.toOn
      ? formatDay(days.fromOn, 'short')
      : `${formatDay(days.fromOn, 'short')} to ${formatDay(days.toOn, 'short')}`;
  const who = days.isWholeStudio ? ', the whole studio' : '';
  return `${span}${who}${days.why ? `: ${days.why}` : ''}`;
}

/** The room inside and its shelves, in one line. */
export function roomWords(kiln: KilnInList, unit: 'in' | 'mm'): string {
  const { shelfWidthUm, shelfDepthUm, insideHeightUm, shelves } = kiln;
  const [width, depth, height] = [shelfWidthUm, shelfDepthUm, insideHeightUm].map((um) =>
    formatLength(um, unit),
  );
  return `${shelves} shelves of ${width ?? ''} × ${depth ?? ''}, ${height ?? ''} high inside`;
}

/** Since when the longest waiting stand there: `waiting 9 days`. */
export function waitedWords(days: number): string {
  return days === 0 ? 'since today' : `for ${daysWords(days)}`;
}
