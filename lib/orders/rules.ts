import { daysBetween, formatDay, type Day } from '@/lib/dates/rules';
import { shareCents, type Cents } from '@/lib/money/rules';

/** What of an order's price is paid down when nobody says otherwise, in a hundred. */
export const downPercent = '50';
/** The most pieces of one order. */
export const orderPiecesMost = 900;

/**
 * What is paid down on an order when nobody says otherwise: half, never a cent short.
 *
 * @source common practice: half down; small things in full
 * @example usualDepositCents(5_201n, 1) // 2_601n
 */
export function usualDepositCents(unitPriceCents: Cents, quantity: number): Cents {
  return shareCents(unitPriceCents * BigInt(quantity), downPercent, 'up');
}

/** Where an order's pieces stand in the studio; null when no job was opened. */
export type OrderJob = {
  number: number;
  /** The step at which most of its pieces stand, `not begun` or `finished`. */
  at: string;
  pieces: number;
  finished: number;
  /** When it should be ready as things stand; null when it is finished. */
  likelyOn: Day | null;
};

/** The facts from which it follows where an order stands. Cents. */
export type OrderFacts = {
  quantity: number;
  depositCents: Cents;
  /** What was paid down so far, less what was given back. */
  paidCents: Cents;
  readyAboutOn: Day;
  isSent: boolean;
  job: OrderJob | null;
  /** Pieces that were brought in and are kept back for it. */
  waitingHere: number;
  handedOver: number;
  toldReadyOn: Day | null;
  hasEnded: boolean;
};

/** Where an order stands, whose clock runs, and whether its day is over. */
export type OrderStanding = {
  where: 'ended' | 'handed_over' | 'told' | 'ready' | 'deposit' | 'to_begin' | 'making' | 'made';
  words: string;
  clock: 'nobody' | 'gallery' | 'studio' | 'collector';
  isLate: boolean;
};

/**
 * Where an order stands, from facts alone: never typed in.
 *
 * @example paid down and its job at the bisque kiln: 'In the studio: at the bisque kiln.'
 */
export function orderStanding(facts: OrderFacts, todayOn: Day): OrderStanding {
  const isOver = facts.hasEnded || facts.handedOver >= facts.quantity;
  const isLate = !isOver && facts.readyAboutOn < todayOn;
  return { ...whereOf(facts), isLate };
}

function whereOf(facts: OrderFacts): Omit<OrderStanding, 'isLate'> {
  const { quantity, waitingHere, handedOver, toldReadyOn } = facts;
  if (facts.hasEnded) return { where: 'ended', words: 'Called off.', clock: 'nobody' };
  if (handedOver >= quantity) {
    return { where: 'handed_over', words: 'Handed over.', clock: 'nobody' };
  }
  if (waitingHere + handedOver >= quantity) {
    if (toldReadyOn === null) {
      const words = 'It is here, and the collector is not told yet.';
      return { where: 'ready', words, clock: 'gallery' };
    }
    const words = `It is here; the collector was told on ${formatDay(toldReadyOn, 'short')}.`;
    return { where: 'told', words, clock: 'collector' };
  }
  return inTheMaking(facts);
}

function inTheMaking({ depositCents, paidCents, job }: OrderFacts): Omit<OrderStanding, 'isLate'> {
  if (paidCents < depositCents) {
    const words = paidCents === 0n ? 'The deposit is not paid.' : 'Part of the deposit is paid.';
    return { where: 'deposit', words, clock: 'collector' };
  }
  if (!job || job.at === 'not begun') {
    return { where: 'to_begin', words: 'To be begun in the studio.', clock: 'studio' };
  }
  if (job.finished >= job.pieces) {
    const words = 'Finished in the studio; bring the pieces in.';
    return { where: 'made', words, clock: 'gallery' };
  }
  return { where: 'making', words: `In the studio: at ${job.at}.`, clock: 'studio' };
}

/** Whose clock runs, in words. */
export const clockWords: Readonly<Record<OrderStanding['clock'] | 'installer', string>> = {
  installer: 'the installer’s',
  nobody: 'nobody’s',
  gallery: 'the gallery’s',
  studio: 'the studio’s',
  collector: 'the collector’s',
};

/**
 * The reminder of what is owed to a buyer far away whose order is late; empty otherwise.
 *
 * @source the federal rule for goods ordered by mail or telephone, as common practice tells it:
 *   send by the day that was stated, or within 30 days when none was; otherwise tell the buyer,
 *   give a new day, and offer to cancel with the whole money back
 */
export function mailOrderReminder(facts: OrderFacts & { askedOn: Day }, todayOn: Day): string {
  const { isSent, hasEnded, handedOver, quantity, readyAboutOn, askedOn } = facts;
  if (!isSent || hasEnded || handedOver >= quantity || readyAboutOn >= todayOn) return '';
  const days = daysBetween(askedOn, todayOn);
  return (
    `It is to be sent, and the day that was named, ${formatDay(readyAboutOn, 'short')}, is over ` +
    `(${days} days since it was ordered). Tell the collector, name a new day, and offer to call ` +
    'it off with all the money back. An adviser knows the rule of your place.'
  );
}
