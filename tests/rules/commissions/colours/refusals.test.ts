import { expect, test } from 'vitest';
import { agreementSentences } from '@/lib/commissions/rules/agreement/refusals';
import { coloursSentences } from '@/lib/commissions/rules/colours/refusals';
import { commissionRefusalMessage, type CommissionRefusal } from '@/lib/commissions/rules/refusals';

/** Every refusal about sketches, tiles, agreements and changes: what it has to name, or to say to do. */
const rows: readonly (readonly [CommissionRefusal, ...string[]])[] = [
  [{ code: 'newer_shown', label: 'sketch C' }, 'sketch C', 'look at that one first'],
  [{ code: 'twin_not_given' }, 'A picture on a screen is no colour'],
  [{ code: 'not_seen_in_hand' }, 'in daylight'],
  [{ code: 'round_costs', round: 3, feeCents: 15_000n }, 'round 3', '150.00', 'Tick'],
  [{ code: 'round_not_signed', round: 3 }, 'Round 3', 'signed on paper'],
  [{ code: 'nothing_asked' }, 'mark a spot'],
  [{ code: 'given_already' }, 'already'],
  [{ code: 'not_approved_yet' }, 'approved tile'],
  [{ code: 'not_measured' }, 'None of the range'],
  [{ code: 'unknown_batch' }, 'Write it down first'],
  [{ code: 'unknown_glaze' }, 'is not in the book'],
  [{ code: 'batch_reserved', number: 12 }, 'commission 12'],
  [{ code: 'batch_number_taken' }, 'already'],
  [{ code: 'batch_kept_for_nobody' }, 'anybody may have it'],
  [{ code: 'unknown_body' }, 'settings'],
  [{ code: 'no_accepted_proposal' }, 'No proposal was accepted'],
  [{ code: 'paper_changed' }, 'Nothing was signed', 'read it once more'],
  [{ code: 'unknown_change' }, 'no such change order'],
  [{ code: 'change_signed_already', signedOn: '2026-05-04' }, '4 May 2026'],
  [{ code: 'change_withdrawn' }, 'Nothing was signed'],
  [
    { code: 'change_below_paid', totalCents: 53_999_900n, paidCents: 54_000_000n },
    '539,999.00',
    '540,000.00',
    'Give the difference back first',
  ],
  [{ code: 'change_leaves_nothing' }, 'End the commission instead'],
  [{ code: 'change_overtaken' }, 'Another change was signed', 'written once more'],
  [{ code: 'change_day_is_past', on: '2026-05-04' }, '4 May 2026', 'a day to come'],
  [{ code: 'unknown_state', state: 'Idaho' }, 'Idaho', 'Write down a place there first'],
  [{ code: 'tax_rule_follows_already', fromOn: '2026-05-04' }, '4 May 2026', 'later first day'],
];

const named = rows.map(([refusal, ...words]) => ({ code: refusal.code, refusal, words }));

test.each(named)('$code is told in full', ({ refusal, words }) => {
  const message = commissionRefusalMessage(refusal);
  for (const each of words) expect(message).toContain(each);
  expect(message).toMatch(/^[A-Z].*\.$/);
});

test('none is left out', () => {
  const told = new Set(rows.map(([{ code }]) => code));
  const codes = [...Object.keys(coloursSentences), ...Object.keys(agreementSentences)];
  expect(codes.filter((code) => !told.has(code as CommissionRefusal['code']))).toEqual([]);
});
