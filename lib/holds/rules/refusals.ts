import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatInstant } from '@/lib/dates/rules';

/** Somebody for whom pieces are kept back. */
export type Holder = {
  forWhom: string;
  /** Null when they are kept for a layaway or an order, and end with it. */
  untilAt: Date | null;
  staffName: string;
  /** The number of the edition that is kept back. */
  editionNumber: number | null;
};

/** Why pieces were not kept back, or a hold not ended. */
export type HoldRefusal =
  | { code: 'unknown_piece' }
  | { code: 'unknown_collector' }
  | { code: 'until_has_passed'; untilAt: Date }
  | { code: 'until_too_far'; daysMost: number }
  | { code: 'number_wanted'; title: string; numbersHere: readonly number[] }
  | { code: 'number_is_one_piece' }
  | { code: 'number_not_here'; title: string; number: number }
  | { code: 'number_is_held'; number: number; holder: Holder }
  | {
      code: 'not_enough_free';
      title: string;
      wanted: number;
      onHand: number;
      held: number;
      holders: readonly Holder[];
    }
  | { code: 'unknown_hold' }
  | { code: 'hold_has_ended'; how: HoldEnd; endedAt: Date }
  | { code: 'ends_with_its_paper'; paper: 'layaway' | 'order' }
  | { code: 'unknown_waiting' }
  | { code: 'waits_no_longer' };

/** How a hold can end. */
export type HoldEnd = 'sold' | 'released' | 'lapsed';

/** What a command about holds may be refused with. */
export type AnyHoldRefusal = HoldRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/** Says in full sentences why pieces were not kept back, in the gallery's own time. */
export function holdRefusalMessage(refusal: AnyHoldRefusal, zone: string): string {
  if (isPlain(refusal)) return plainWords[refusal.code];
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'until_has_passed':
      return `${formatInstant(refusal.untilAt, zone)} has passed. Choose a day and an hour to come.`;
    case 'hold_has_ended':
      return `This hold ended ${formatInstant(refusal.endedAt, zone)}: ${endWords[refusal.how]}.`;
    case 'ends_with_its_paper':
      return paperWords[refusal.paper];
    case 'number_wanted':
    case 'number_not_here':
    case 'number_is_held':
    case 'not_enough_free':
      return piecesMessage(refusal, zone);
  }
}

type PlainRefusal = Extract<AnyHoldRefusal, { code: keyof typeof plainWords }>;

function isPlain(refusal: AnyHoldRefusal): refusal is PlainRefusal {
  return refusal.code in plainWords;
}

const plainWords = {
  key_used_for_something_else:
    'This page was sent before with something else in it. Load it again, please.',
  unknown_piece: 'This piece is not in the catalogue. Load the page again, please.',
  unknown_collector:
    'Nobody by that name is in the address book. Find them by a few letters, or add them.',
  until_too_far:
    'That is more than a year away. Choose an earlier day; it can be made longer later.',
  number_is_one_piece: 'A number of an edition is one piece. Hold the numbers one by one.',
  unknown_hold: 'There is no such hold. Load the page again, please.',
  unknown_waiting: 'Nobody waits like that. Load the page again, please.',
  waits_no_longer: 'They wait no longer; somebody has seen to it.',
} as const;

type PiecesRefusal = Extract<
  HoldRefusal,
  { code: 'number_wanted' | 'number_not_here' | 'number_is_held' | 'not_enough_free' }
>;

function piecesMessage(refusal: PiecesRefusal, zone: string): string {
  switch (refusal.code) {
    case 'number_wanted':
      return refusal.numbersHere.length === 0
        ? `No number of ${refusal.title} is here.`
        : `${refusal.title} is an edition. Say which number; here are ${refusal.numbersHere.join(', ')}.`;
    case 'number_not_here':
      return `Number ${refusal.number} of ${refusal.title} is not here.`;
    case 'number_is_held':
      return `Number ${refusal.number} is held ${heldWords(refusal.holder, zone)}.`;
    case 'not_enough_free':
      return notEnoughMessage(refusal, zone);
  }
}

function notEnoughMessage(
  { title, onHand, held, holders }: Extract<HoldRefusal, { code: 'not_enough_free' }>,
  zone: string,
): string {
  if (onHand === 0) return `There is no ${title} here to hold.`;
  const free = Math.max(onHand - held, 0);
  const words = holders.map((holder) => heldWords(holder, zone)).join('; ');
  const who = words === '' ? '' : ` Held ${words}.`;
  if (onHand === 1) return `The only ${title} here is held already.${who}`;
  const are = free === 0 ? 'none is' : free === 1 ? 'only one is' : `only ${free} are`;
  return `Of ${onHand} ${title} here ${are} free.${who}`;
}

/**
 * For whom and until when something is held, and by whom, to read on after "held".
 *
 * @example 'for Marit Oland until 27 Nov 2026, 3:00 pm, by Perrin Oday'
 */
export function heldWords(holder: Omit<Holder, 'editionNumber'>, zone: string): string {
  const until = holder.untilAt === null ? '' : ` until ${formatInstant(holder.untilAt, zone)}`;
  return `for ${holder.forWhom}${until}, by ${holder.staffName}`;
}

/** How a hold ended, in words. */
export const endWords: Readonly<Record<HoldEnd, string>> = {
  sold: 'it was sold to them',
  released: 'it was let go',
  lapsed: 'its time was over',
};

const paperWords = {
  layaway: 'This is put away for a layaway. It is free again when the layaway is cancelled.',
  order: 'This is kept for a special order. It is free again when the order ends.',
} as const;
