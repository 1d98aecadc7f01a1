import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { addDays, formatDay, formatInstant, type Day } from '@/lib/dates/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { holdRefusalMessage, type HoldRefusal } from './refusals';

/** Why pieces were not given on approval, or not taken back. */
export type ApprovalRefusal =
  | { code: 'unknown_collector' }
  | { code: 'nothing_chosen' }
  | { code: 'unknown_piece_chosen'; sku: string }
  | { code: 'due_has_passed'; dueOn: Day }
  | { code: 'due_too_far'; daysMost: number }
  | { code: 'picture_not_kept'; picture: PictureRefusal }
  | { code: 'not_free'; hold: HoldRefusal }
  | { code: 'unknown_approval' }
  | { code: 'all_came_back'; endedAt: Date }
  | { code: 'nothing_comes_back' }
  | { code: 'fewer_are_out'; title: string; out: number };

/** What a command about approvals may be refused with. */
export type AnyApprovalRefusal =
  ApprovalRefusal | NotAllowed | { code: 'key_used_for_something_else' };

const plainWords = {
  key_used_for_something_else:
    'This page was sent before with something else in it. Load it again, please.',
  unknown_collector: 'Say who takes it home: find them by a few letters, or add them.',
  nothing_chosen: 'Choose the pieces first; at least one.',
  unknown_approval: 'There is no such slip. Load the page again, please.',
  nothing_comes_back: 'Write how many came back; at least one.',
} as const;

type PlainRefusal = { code: keyof typeof plainWords };

/** Says in full sentences why nothing was written. */
export function approvalRefusalMessage(refusal: AnyApprovalRefusal, zone: string): string {
  if (isPlain(refusal)) return plainWords[refusal.code];
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'unknown_piece_chosen':
      return `${refusal.sku} is not in the catalogue. Choose the piece again.`;
    case 'due_has_passed':
      return `${formatDay(refusal.dueOn, 'short')} has passed. Choose a day to come.`;
    case 'due_too_far':
      return `A piece is tried at home for at most ${refusal.daysMost} days. Choose an earlier day.`;
    case 'picture_not_kept':
      return pictureRefusalMessage(refusal.picture);
    case 'not_free':
      return holdRefusalMessage(refusal.hold, zone);
    case 'all_came_back':
      return `Nothing of it is out any more since ${formatInstant(refusal.endedAt, zone)}.`;
    case 'fewer_are_out':
      return refusal.out === 0
        ? `No ${refusal.title} of this slip is out any more.`
        : `Only ${refusal.out} of ${refusal.title} are out on this slip.`;
  }
}

function isPlain(refusal: AnyApprovalRefusal): refusal is PlainRefusal {
  return refusal.code in plainWords;
}

/** The longest that a piece is tried at home, in days. */
export const approvalDaysMost = 92;

/**
 * Whether a piece may be out until that day.
 *
 * @returns true; refuses, in this order: a day that has passed, one too far away
 */
export function checkDueOn(dueOn: Day, todayOn: Day): Result<true, ApprovalRefusal> {
  if (dueOn < todayOn) return refuse({ code: 'due_has_passed', dueOn });
  if (dueOn > addDays(todayOn, approvalDaysMost)) {
    return refuse({ code: 'due_too_far', daysMost: approvalDaysMost });
  }
  return ok(true);
}

/** One line of a slip with how much of it is still out. */
export type LineOut = {
  position: number;
  skuId: string;
  title: string;
  editionNumber: number | null;
  out: number;
};

/** What comes back, by the line's position; those that are left out stay away. */
export type ComesBack = readonly { position: number; quantity: number }[];

/**
 * Decides what comes back of a slip.
 *
 * @returns the lines with how many of each come; refuses, in this order: none at all, more of one
 *   than are out
 * @example two of three come back: one stays out, and the slip stays open
 */
export function decideBack(
  lines: readonly LineOut[],
  comes: ComesBack,
): Result<{ line: LineOut; quantity: number }[], ApprovalRefusal> {
  const asked = lines
    .map((line) => ({
      line,
      quantity: comes.find((each) => each.position === line.position)?.quantity ?? 0,
    }))
    .filter(({ quantity }) => quantity > 0);
  if (asked.length === 0) return refuse({ code: 'nothing_comes_back' });
  const short = asked.find(({ line, quantity }) => quantity > line.out);
  if (short) {
    const { title, out } = short.line;
    return refuse({ code: 'fewer_are_out', title, out });
  }
  return ok(asked);
}
