import { expect, test } from 'vitest';
import { sendingRefusalMessage, type AnySendingRefusal } from '@/lib/sending/rules/refusals';

type Rows = { [Code in AnySendingRefusal['code']]: Extract<AnySendingRefusal, { code: Code }> };

// One of each, so that a new refusal without a row does not compile.
const each: Rows = {
  not_allowed: { code: 'not_allowed', permission: 'sending.do' },
  key_used_for_something_else: { code: 'key_used_for_something_else' },
  no_such_shipment: { code: 'no_such_shipment' },
  no_such_commission: { code: 'no_such_commission' },
  no_such_receipt: { code: 'no_such_receipt' },
  receipt_was_taken_along: { code: 'receipt_was_taken_along' },
  no_such_collector: { code: 'no_such_collector' },
  no_such_terms: { code: 'no_such_terms' },
  nobody_to_send_to: { code: 'nobody_to_send_to' },
  nowhere_to_send_to: { code: 'nowhere_to_send_to' },
  was_called_off: { code: 'was_called_off', on: '2026-11-20' },
  happened_already: { code: 'happened_already', kind: 'sent', on: '2026-11-20' },
  not_on_the_way: { code: 'not_on_the_way', stage: 'packed' },
  goes_otherwise: { code: 'goes_otherwise', how: 'fetched' },
  no_boxes_yet: { code: 'no_boxes_yet' },
  box_is_empty: { code: 'box_is_empty', box: 2 },
  no_carrier_named: { code: 'no_carrier_named' },
  day_to_come: { code: 'day_to_come', today: '2026-11-20' },
  sent_before_sold: { code: 'sent_before_sold', soldOn: '2026-11-20' },
  before_it: { code: 'before_it', kind: 'sent', on: '2026-11-20' },
  no_such_box: { code: 'no_such_box' },
  left_already: { code: 'left_already' },
  too_many_boxes: { code: 'too_many_boxes', boxes: 100 },
  part_elsewhere: { code: 'part_elsewhere', partNumber: 3, box: 2 },
  no_such_part: { code: 'no_such_part', partNumber: 7, parts: 6 },
  changed_meanwhile: { code: 'changed_meanwhile' },
  nothing_to_go: { code: 'nothing_to_go' },
  too_much_to_go: { code: 'too_much_to_go', pieces: 601 },
  line_not_read: { code: 'line_not_read', line: 2, text: 'Tern', what: 'parts' },
  part_twice: { code: 'part_twice', partNumber: 3 },
  nothing_in_it: { code: 'nothing_in_it' },
  too_much_in_it: { code: 'too_much_in_it' },
  content_not_read: { code: 'content_not_read', line: 1, text: 'Tern; x', what: 'weight' },
  no_such_view: { code: 'no_such_view' },
  no_marks: { code: 'no_marks' },
  mark_without_words: { code: 'mark_without_words', mark: 1 },
  mark_without_place: { code: 'mark_without_place', mark: 1 },
  too_many_marks: { code: 'too_many_marks', most: 24 },
  no_such_claim: { code: 'no_such_claim' },
  not_sent_yet: { code: 'not_sent_yet', stage: 'packed' },
  found_before_sent: { code: 'found_before_sent', sentOn: '2026-11-20' },
  claim_day_to_come: { code: 'claim_day_to_come', today: '2026-11-20' },
  claim_is_closed: { code: 'claim_is_closed', stage: 'paid' },
  came_of_it_already: { code: 'came_of_it_already', kind: 'told', on: '2026-11-20' },
  not_told_yet: { code: 'not_told_yet' },
  not_claimed_yet: { code: 'not_claimed_yet' },
  before_found: { code: 'before_found', foundOn: '2026-11-20' },
  paid_nothing: { code: 'paid_nothing' },
  amount_for_nothing: { code: 'amount_for_nothing' },
  holds_already: { code: 'holds_already', name: 'Parcel', holdsFromOn: '2026-11-20' },
  size_without_divisor: { code: 'size_without_divisor' },
  picture_not_kept: { code: 'picture_not_kept', picture: { code: 'not_a_picture' } },
  drawing_not_kept: { code: 'drawing_not_kept' },
  too_many_pictures: { code: 'too_many_pictures', most: 8 },
};

test.each(Object.values(each).map((refusal) => [refusal.code, refusal] as const))(
  '%s is told in a full sentence',
  (_code, refusal) => {
    expect(sendingRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/s);
    expect(sendingRefusalMessage(refusal)).not.toMatch(/undefined|null|_/);
  },
);
