import { daysBetween, formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Currency } from '@/lib/money/rules';
import { lossCauseWords } from '@/lib/studio/rules/jobs/losing';
import type { BeforeClay, LossCause } from '@/lib/studio/rules';

/** `1 piece`, `24 pieces`. */
export function piecesWords(pieces: number): string {
  return pieces === 1 ? '1 piece' : `${pieces} pieces`;
}

/** What the button says that moves them: `Move 24 on to drying`. */
export function moveOnWords(pieces: number, toName: string): string {
  if (toName === 'finished') return pieces === 1 ? 'It is finished' : `All ${pieces} are finished`;
  return pieces === 1 ? `Move it on to ${toName}` : `Move ${pieces} on to ${toName}`;
}

/**
 * What is said after pieces were moved: `24 pieces moved to drying.`
 *
 * @param toName a step's name, `finished`, or `not begun` after an undo of the first move
 */
export function movedWords(pieces: number, toName: string): string {
  const are = pieces === 1 ? 'is' : 'are';
  if (toName === 'finished') return `${piecesWords(pieces)} ${are} finished.`;
  if (toName === 'not begun') return `${piecesWords(pieces)} ${are} not begun again.`;
  return `${piecesWords(pieces)} moved to ${toName}.`;
}

/** What is said after a loss: `3 pieces are lost: the glaze failed. 2 are begun anew.` */
export function lostWords(pieces: number, cause: LossCause, begunAnew: number): string {
  const lost = `${piecesWords(pieces)} ${pieces === 1 ? 'is' : 'are'} lost: ${lossCauseWords[cause]}.`;
  if (begunAnew === 0) return lost;
  return `${lost} ${begunAnew === 1 ? 'One is' : `${begunAnew} are`} begun anew.`;
}

/** What is said after pieces were begun besides: `2 pieces are begun anew.` */
export function begunAnewWords(pieces: number): string {
  return `${piecesWords(pieces)} ${pieces === 1 ? 'is' : 'are'} begun anew.`;
}

/** What is said after a move was taken back: `24 pieces are back at drying.` */
export function undoneWords(pieces: number, toName: string): string {
  if (toName === 'lost')
    return `${piecesWords(pieces)} ${pieces === 1 ? 'is' : 'are'} not begun after all.`;
  if (toName === 'not begun') return movedWords(pieces, toName);
  return `${piecesWords(pieces)} ${pieces === 1 ? 'is' : 'are'} back at ${toName}.`;
}

/**
 * What a commission's clay waits for, as the end of a sentence.
 *
 * @param depositLeftCents what of the deposit is still to come; null when nobody may see money
 * @example beforeClayWords(['colours', 'deposit'], 45_000n)
 *   // 'the yes to its colours and $450.00 of the deposit'
 */
export function beforeClayWords(
  missing: readonly BeforeClay[],
  depositLeftCents: bigint | null,
  currency: Currency = 'USD',
): string {
  const words = missing.map((one) => {
    switch (one) {
      case 'agreement':
        return 'the agreement';
      case 'sketch':
        return 'the yes to a sketch';
      case 'colours':
        return 'the yes to its colours';
      case 'days_to_cancel':
        return 'the days in which the collector may cancel';
      case 'deposit':
        return depositLeftCents === null || depositLeftCents === 0n
          ? 'the deposit'
          : `${formatCents(depositLeftCents, { currency })} of the deposit`;
    }
  });
  const last = words.at(-1) ?? 'nothing';
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${last}` : last;
}

/**
 * Since when pieces stand where they stand: `since today`, `since yesterday`,
 * `since 4 May, 9 days`.
 *
 * @returns `not begun yet` for pieces that never moved
 */
export function sinceWords(sinceOn: Day | null, todayOn: Day): string {
  if (sinceOn === null) return 'not begun yet';
  const days = Math.max(0, daysBetween(sinceOn, todayOn));
  if (days === 0) return 'since today';
  if (days === 1) return 'since yesterday';
  return `since ${shortDay(sinceOn, todayOn)}, ${days} days`;
}

/** A day without its year when it lies in the same year: `4 May`, `4 May 2025`. */
export function shortDay(day: Day, todayOn: Day): string {
  const words = formatDay(day, 'short');
  return day.slice(0, 4) === todayOn.slice(0, 4) ? words.replace(/ \d{4}$/, '') : words;
}

/** How long a step commonly takes: `5 to 14 days, most often 10`, `1 day`. */
export function stepDaysWords(step: {
  shortestDays: number;
  likelyDays: number;
  longestDays: number;
}): string {
  const { shortestDays, likelyDays, longestDays } = step;
  if (shortestDays === longestDays) return longestDays === 1 ? '1 day' : `${longestDays} days`;
  const span = `${shortestDays} to ${longestDays} days`;
  return likelyDays === longestDays ? span : `${span}, most often ${likelyDays}`;
}

/** When a job should be ready: `about 12 June; 3 June at the earliest, 30 June at the latest`. */
export function readyWords(
  ready: { shortestOn: Day; likelyOn: Day; longestOn: Day },
  todayOn: Day,
): string {
  const { shortestOn, likelyOn, longestOn } = ready;
  return (
    `about ${shortDay(likelyOn, todayOn)}; ${shortDay(shortestOn, todayOn)} at the earliest, ` +
    `${shortDay(longestOn, todayOn)} at the latest`
  );
}
