import type { Day } from '@/lib/dates/rules';
import type { PieceLying } from './lying';
import { layOnShelves, takesOf, type KilnRoom, type ToLay } from './packing';

/** Pieces of a job that wait at a firing, as a load is planned from them. */
export type WaitingForFire = {
  readonly jobId: string;
  readonly jobNumber: number;
  readonly position: number;
  /** How many of them stand there and lie in no other load. */
  readonly pieces: number;
  /** How many of those were in such a firing before and did not come out. */
  readonly againPieces: number;
  readonly sinceOn: Day | null;
  readonly neededOn: Day | null;
  /** Null while nobody knows their size. */
  readonly lying: PieceLying | null;
  /** Parts with a size of their own; empty where the pieces are alike. */
  readonly parts: readonly { readonly partId: string; readonly lying: PieceLying }[];
};

/** What is proposed of one job for a load. */
export type ProposedLine = {
  readonly jobId: string;
  readonly position: number;
  readonly pieces: number;
  readonly lying: PieceLying;
  readonly partIds: readonly string[];
  readonly isAgain: boolean;
};

/** The most pieces that are laid by themselves. */
export const layMost = 600;

/**
 * Whose pieces go into the kiln first: what is needed sooner, then what has waited longer, then the
 * older job.
 *
 * @source common practice: the nearest day first, then first come, first fired
 */
export function byNeedAndWait(
  one: Pick<WaitingForFire, 'neededOn' | 'sinceOn' | 'jobNumber'>,
  other: Pick<WaitingForFire, 'neededOn' | 'sinceOn' | 'jobNumber'>,
): number {
  return (
    dayOrLast(one.neededOn).localeCompare(dayOrLast(other.neededOn)) ||
    dayOrLast(one.sinceOn).localeCompare(dayOrLast(other.sinceOn)) ||
    one.jobNumber - other.jobNumber
  );
}

function dayOrLast(day: Day | null): string {
  return day ?? '9999-12-31';
}

/**
 * Proposes a load from the pieces that wait for one cone: by need and wait, each job with as many as
 * find room beside those before it. What has no size yet is left for a person to measure.
 *
 * @param waiting of one cone; in any order
 * @returns lines that all lie in the kiln together; empty when nothing fits
 */
export function proposeLoad(
  room: KilnRoom,
  waiting: readonly WaitingForFire[],
  roomAroundUm: number,
): ProposedLine[] {
  const lines: ProposedLine[] = [];
  let laid: ToLay[] = [];
  for (const one of waiting.toSorted(byNeedAndWait)) {
    if (one.lying === null) continue;
    const lying = one.lying;
    const most = Math.min(one.pieces, layMost - laid.length);
    const fits = (pieces: number): boolean => {
      const all = [...laid, ...toLayOf(one, lying, pieces)];
      return layOnShelves(room, all, roomAroundUm).left.length === 0;
    };
    const pieces = mostThatFits(most, fits);
    if (pieces === 0) continue;
    laid = [...laid, ...toLayOf(one, lying, pieces)];
    lines.push({
      ...{ jobId: one.jobId, position: one.position, pieces, lying },
      partIds: one.parts.slice(0, pieces).map(({ partId }) => partId),
      isAgain: isOnlyAgain(pieces, one.againPieces),
    });
  }
  return lines;
}

/** Whether all pieces of a line were in such a firing before: those go in first. */
export function isOnlyAgain(pieces: number, againPieces: number): boolean {
  return againPieces > 0 && pieces <= againPieces;
}

function mostThatFits(most: number, fits: (pieces: number) => boolean): number {
  if (most <= 0) return 0;
  if (fits(most)) return most;
  let [low, high] = [0, most];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function toLayOf(one: WaitingForFire, lying: PieceLying, pieces: number): ToLay[] {
  return piecesToLay(
    `${one.jobId}/${one.position}`,
    lying,
    pieces,
    one.parts.map((part) => part.lying),
  );
}

/**
 * The single pieces of a line, for laying. A part with a size of its own lies with that.
 *
 * @param key of the line; each piece gets it with its place, counted from 0: `key#0`
 */
export function piecesToLay(
  key: string,
  lying: PieceLying,
  pieces: number,
  parts: readonly PieceLying[] = [],
): ToLay[] {
  return Array.from({ length: pieces }, (_, at) => ({
    ...(parts[at] ?? lying),
    key: `${key}#${at}`,
  }));
}

/** What waits for one kiln, in turns of it. */
export type Queue = {
  /** In hundredths of a turn. */
  readonly turnHundredths: number;
  /** Pieces that find no room in this kiln, or have no size yet. */
  readonly notReckoned: number;
  /** Weeks until it is cleared at the kiln’s pace, in tenths, rounded up. */
  readonly weekTenths: number;
};

/**
 * How many turns of a kiln the waiting pieces take: each its share of a load of its like, added up.
 *
 * @param turnsAWeek how often this kiln is lit in a week, at least 1
 * @source common practice: a piece takes the part of a load that one of as many as fit takes
 * @example 45 of which a load takes 90, at 2 turns a week // 50 hundredths of a turn, 3 tenths of a week
 */
export function queueOf(
  room: KilnRoom,
  waiting: readonly Pick<WaitingForFire, 'pieces' | 'lying'>[],
  of: { roomAroundUm: number; turnsAWeek: number },
): Queue {
  let turns = 0;
  let notReckoned = 0;
  for (const { pieces, lying } of waiting) {
    const takes = lying === null ? 0 : takesOf(room, lying, of.roomAroundUm);
    if (takes === 0) notReckoned += pieces;
    else turns += pieces / takes;
  }
  const exactly = Math.round(turns * 1e6) / 1e6;
  return {
    turnHundredths: Math.round(exactly * 100),
    notReckoned,
    weekTenths: Math.ceil(Math.round((exactly * 1e7) / of.turnsAWeek) / 1e6),
  };
}

/** Why a load may be lit now, or what it still waits for. */
export type LoadReady = {
  readonly isFull: boolean;
  /** Its longest waiting pieces have waited as long as is allowed. */
  readonly hasWaited: boolean;
};

/**
 * Whether a load is worth a turn: full enough, or waited for long enough.
 *
 * @source common practice: a kiln waits until it is full or the day presses
 */
export function loadReady(
  fillPercent: number,
  waitedDays: number,
  kiln: { leastFillPercent: number; longestWaitDays: number },
): LoadReady {
  return {
    isFull: fillPercent >= kiln.leastFillPercent,
    hasWaited: waitedDays >= kiln.longestWaitDays,
  };
}
