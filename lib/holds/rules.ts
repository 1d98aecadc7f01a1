import { ok, refuse, type Result } from '@/lib/platform/result';
import type { Holder, HoldRefusal } from './rules/refusals';

/** What stands at a place of one SKU, as a hold needs to know it. */
export type ShelfToHold = {
  title: string;
  onHand: number;
  held: number;
  /** The numbers of its edition that stand here, ascending; none for anything else. */
  numbersHere: readonly number[];
  isEdition: boolean;
  /** Whoever has some of it kept back here already. */
  holders: readonly Holder[];
};

/** What somebody wishes to have kept back. */
export type HoldWish = {
  quantity: number;
  editionNumber: number | null;
  /** Until when; null for what ends with a layaway or an order. */
  untilAt: Date | null;
};

/** The longest that pieces are kept back without money, in days. */
export const holdDaysMost = 366;

/**
 * Decides whether pieces can be kept back for somebody.
 *
 * @returns true; refuses, in this order: an hour that has passed, one more than a year away, an
 *   edition without its number, more than one of a number, a number that is not here, a number
 *   kept for somebody else, fewer free than wanted
 * @example the last one, held for Mrs Aldous: refused `not_enough_free`, and says who holds it
 */
export function decideHold(
  wish: HoldWish,
  shelf: ShelfToHold,
  at: Date,
): Result<true, HoldRefusal> {
  const { untilAt } = wish;
  if (untilAt && untilAt <= at) return refuse({ code: 'until_has_passed', untilAt });
  if (untilAt && untilAt.getTime() > at.getTime() + holdDaysMost * 86_400_000) {
    return refuse({ code: 'until_too_far', daysMost: holdDaysMost });
  }
  const number = decideNumber(wish, shelf);
  if (!number.ok) return number;
  const { title, onHand, held, holders } = shelf;
  if (wish.quantity > onHand - held) {
    return refuse({ code: 'not_enough_free', title, wanted: wish.quantity, onHand, held, holders });
  }
  return ok(true);
}

function decideNumber(wish: HoldWish, shelf: ShelfToHold): Result<true, HoldRefusal> {
  const { title, isEdition, numbersHere, holders } = shelf;
  const { editionNumber, quantity } = wish;
  if (editionNumber === null) {
    return isEdition ? refuse({ code: 'number_wanted', title, numbersHere }) : ok(true);
  }
  if (quantity !== 1) return refuse({ code: 'number_is_one_piece' });
  if (!numbersHere.includes(editionNumber)) {
    return refuse({ code: 'number_not_here', title, number: editionNumber });
  }
  const holder = holders.find((each) => each.editionNumber === editionNumber);
  return holder ? refuse({ code: 'number_is_held', number: editionNumber, holder }) : ok(true);
}

/** Where a hold is in its life. */
export type HoldStanding = 'lapsed' | 'lapses_soon' | 'stands' | 'with_its_paper' | 'ended';

/** A hold that ends within so many hours is called about. */
export const callAheadHours = 24;

/**
 * Where a hold is: a lapsed one still keeps its pieces back until somebody lets them go, because
 * the trade calls before it releases.
 *
 * @source common practice: a call the day before a hold lapses, not a silent release
 * @example a hold until this very instant has lapsed
 */
export function holdStanding(
  hold: { untilAt: Date | null; endedAt: Date | null },
  at: Date,
): HoldStanding {
  if (hold.endedAt !== null) return 'ended';
  if (hold.untilAt === null) return 'with_its_paper';
  if (hold.untilAt <= at) return 'lapsed';
  const soonAt = at.getTime() + callAheadHours * 3_600_000;
  return hold.untilAt.getTime() <= soonAt ? 'lapses_soon' : 'stands';
}

/**
 * Until when pieces are kept back when nobody says otherwise: so many hours on, at the next full
 * quarter of an hour.
 *
 * @example 48 hours from 3:07 pm are until 3:15 pm the day after tomorrow
 */
export function untilByDefault(at: Date, hours: number): Date {
  const quarterMs = 15 * 60_000;
  return new Date(Math.ceil((at.getTime() + hours * 3_600_000) / quarterMs) * quarterMs);
}

/** Where somebody who waits for a piece is. */
export type WaitingStanding = 'held_for_another' | 'free_now' | 'gone' | 'told' | 'ended';

/**
 * Where somebody is who waits: second in line, or to be told when it is back.
 *
 * @param here how many stand here of the piece, and how many of them are kept back
 * @example the only one was sold to the first in line: `gone`, and the second is told so
 */
export function waitingStanding(
  waiting: { toldAt: Date | null; endedAt: Date | null },
  here: { onHand: number; held: number },
): WaitingStanding {
  if (waiting.endedAt !== null) return 'ended';
  if (here.onHand > here.held) return waiting.toldAt === null ? 'free_now' : 'told';
  return here.onHand > 0 ? 'held_for_another' : 'gone';
}
