import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';
import type { BoxRefusal } from './boxes';
import { carrierRefusalMessage, type CarrierRefusal } from './carriers';
import { claimEventWords, claimStageWords, type ClaimRefusal } from './claims';
import type { MarkRefusal } from './condition';
import type { ContentsRefusal } from './typed/contents';
import type { PiecesRefusal } from './typed/pieces';
import type { WayRefusal } from './way';
import { eventWords, howWords, stageWords } from './words';

/** Why a shipment was not written down or changed. */
export type StartRefusal =
  | { code: 'no_such_shipment' }
  | { code: 'no_such_commission' }
  | { code: 'no_such_receipt' }
  | { code: 'receipt_was_taken_along' }
  | { code: 'no_such_collector' }
  | { code: 'no_such_terms' }
  | { code: 'nobody_to_send_to' }
  | { code: 'nowhere_to_send_to' };

/** Everything that something about sending may be refused with, before who may do it is asked. */
export type SendingRefusal =
  | StartRefusal
  | WayRefusal
  | BoxRefusal
  | PiecesRefusal
  | ContentsRefusal
  | MarkRefusal
  | ClaimRefusal
  | CarrierRefusal
  | { code: 'picture_not_kept'; picture: PictureRefusal }
  | { code: 'drawing_not_kept' }
  | { code: 'too_many_pictures'; most: number };

/** See {@link SendingRefusal}. */
export type AnySendingRefusal =
  SendingRefusal | NotAllowed | { code: 'key_used_for_something_else' };

const plainWords = {
  key_used_for_something_else:
    'This page was sent before with something else in it. Load it again, please.',
  no_such_shipment: 'There is no such shipment. Look for it in the list.',
  no_such_commission: 'There is no such commission.',
  no_such_receipt: 'There is no receipt of that number.',
  receipt_was_taken_along:
    'By its receipt that was taken along. A sale that is sent says so on its receipt.',
  no_such_collector: 'There is no such collector. Look in the address book.',
  no_such_terms: 'Choose the carrier’s terms from the list.',
  nobody_to_send_to: 'Write who gets it, as it is to stand on the label.',
  nowhere_to_send_to: 'Write where it goes, as it is to stand on the label.',
  no_such_box: 'There is no such box any more. Load the page again.',
  left_already: 'It has left. What was sent stays as it was packed.',
  too_many_boxes: 'That is more than 99 boxes. Make two shipments of it.',
  changed_meanwhile: 'Somebody changed the boxes meanwhile. Load the page again.',
  nothing_to_go: 'Write what is to go, one on each line.',
  nothing_in_it: 'Write what is in it, one on each line; or take the box away.',
  too_much_in_it: 'That is more than 300 lines. Use another box.',
  no_boxes_yet: 'There is no box yet. Pack it first.',
  no_carrier_named: 'Write which carrier takes it, on how and where to.',
  no_such_view: 'There is no such picture in a report.',
  no_marks: 'Touch the picture where it is, and write what is seen there.',
  drawing_not_kept: 'Nothing is drawn yet. Sign in the field, or let the typed name sign.',
  no_such_claim: 'There is no such claim.',
  not_told_yet: 'First the carrier is told of the damage. Write down when that was.',
  not_claimed_yet: 'First it is claimed. Write down when everything was sent in.',
  paid_nothing: 'Write how much was paid.',
  amount_for_nothing: 'An amount belongs to a payment alone. Leave it empty.',
} as const;

type Plain = Extract<AnySendingRefusal, { code: keyof typeof plainWords }>;
type Going = Exclude<WayRefusal, Plain>;
type Claiming = Exclude<ClaimRefusal, Plain>;
type Packing = Exclude<BoxRefusal | PiecesRefusal | ContentsRefusal, Plain>;
type Other = Exclude<AnySendingRefusal, Plain | Going | Claiming | Packing | CarrierRefusal>;

const short = (day: Day) => formatDay(day, 'short');

/** Says in a full sentence why something about sending was not done. */
export function sendingRefusalMessage(refusal: AnySendingRefusal): string {
  if (isPlain(refusal)) return plainWords[refusal.code];
  if (isGoing(refusal)) return goingMessage(refusal);
  if (isClaiming(refusal)) return claimingMessage(refusal);
  if (isPacking(refusal)) return packingMessage(refusal);
  return isOfCarrier(refusal) ? carrierRefusalMessage(refusal) : otherMessage(refusal);
}

function isPlain(refusal: AnySendingRefusal): refusal is Plain {
  return refusal.code in plainWords;
}

const goingCodes: Readonly<Record<Going['code'], true>> = {
  ...{ was_called_off: true, happened_already: true, not_on_the_way: true, goes_otherwise: true },
  ...{ box_is_empty: true, day_to_come: true, sent_before_sold: true, before_it: true },
};

function isGoing(refusal: AnySendingRefusal): refusal is Going {
  return refusal.code in goingCodes;
}

function goingMessage(refusal: Going): string {
  switch (refusal.code) {
    case 'was_called_off':
      return `It was called off on ${short(refusal.on)}.`;
    case 'happened_already':
      return `It was ${eventWords[refusal.kind]} on ${short(refusal.on)} already.`;
    case 'not_on_the_way':
      return `It cannot be that now: it is ${stageWords[refusal.stage]}.`;
    case 'goes_otherwise':
      return `By its sheet: ${howWords[refusal.how]}. Change how it goes first.`;
    case 'box_is_empty':
      return `Nothing is in box ${refusal.box}. Fill it or take it away.`;
    case 'day_to_come':
      return `That day is yet to come; today is ${short(refusal.today)}.`;
    case 'sent_before_sold':
      return `It was sold on ${short(refusal.soldOn)}; it did not leave before.`;
    case 'before_it':
      return `It was ${eventWords[refusal.kind]} on ${short(refusal.on)}; this was no earlier.`;
  }
}

const claimingCodes: Readonly<Record<Claiming['code'], true>> = {
  ...{ not_sent_yet: true, found_before_sent: true, claim_day_to_come: true },
  ...{ claim_is_closed: true, came_of_it_already: true, before_found: true },
};

function isClaiming(refusal: AnySendingRefusal): refusal is Claiming {
  return refusal.code in claimingCodes;
}

function claimingMessage(refusal: Claiming): string {
  switch (refusal.code) {
    case 'not_sent_yet':
      return `It has not left yet: it is ${stageWords[refusal.stage]}.`;
    case 'found_before_sent':
      return `It left on ${short(refusal.sentOn)}; damage on the way came later.`;
    case 'claim_day_to_come':
      return `That day is yet to come; today is ${short(refusal.today)}.`;
    case 'claim_is_closed':
      return `Nothing more comes of it: it is ${claimStageWords[refusal.stage]}.`;
    case 'came_of_it_already':
      return `On ${short(refusal.on)} ${claimEventWords[refusal.kind]} already.`;
    case 'before_found':
      return `The damage was found on ${short(refusal.foundOn)}; this came later.`;
  }
}

const packingCodes: Readonly<Record<Packing['code'], true>> = {
  ...{ part_elsewhere: true, no_such_part: true, part_twice: true, too_much_to_go: true },
  ...{ line_not_read: true, content_not_read: true },
};

function isPacking(refusal: AnySendingRefusal): refusal is Packing {
  return refusal.code in packingCodes;
}

function packingMessage(refusal: Packing): string {
  switch (refusal.code) {
    case 'part_elsewhere':
      return `Part ${refusal.partNumber} lies in box ${refusal.box}. Take it out there first.`;
    case 'no_such_part':
      return `The drawing has no part ${refusal.partNumber}; its numbers end at ${refusal.parts}.`;
    case 'part_twice':
      return `Part ${refusal.partNumber} is named twice.`;
    case 'too_much_to_go':
      return `That is ${refusal.pieces} pieces. Send at most 600 at once.`;
    case 'line_not_read':
      return `${lineWords(refusal)}. Write it as: 2 × Tern over shoals; 10 × 10 × 1 in; 6 lb.`;
    case 'content_not_read':
      return `${lineWords(refusal)}. Write it as: Part 7; 4 lb 2 oz.`;
  }
}

const lineFaults = {
  parts: 'three things are wanted, with a semicolon between them: what it is; its size; its weight',
  name: 'what it is cannot be read',
  size: 'its size cannot be read',
  weight: 'its weight cannot be read',
} as const;

function lineWords(told: { line: number; text: string; what: keyof typeof lineFaults }): string {
  return `Line ${told.line}, “${told.text}”: ${lineFaults[told.what]}`;
}

function isOfCarrier(refusal: Other | CarrierRefusal): refusal is CarrierRefusal {
  return refusal.code === 'holds_already' || refusal.code === 'size_without_divisor';
}

function otherMessage(refusal: Other): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'mark_without_words':
      return `Write what is seen at mark ${refusal.mark}.`;
    case 'mark_without_place':
      return `Touch the picture where mark ${refusal.mark} belongs.`;
    case 'too_many_marks':
      return `A picture has at most ${refusal.most} marks. Take another picture.`;
    case 'picture_not_kept':
      return pictureRefusalMessage(refusal.picture);
    case 'too_many_pictures':
      return `At most ${refusal.most} pictures at once.`;
  }
}
