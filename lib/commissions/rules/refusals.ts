import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';
import { collectorRefusalMessage, type CollectorRefusal } from '@/lib/collectors/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';

/** Why something about a commission was not done; each carries the facts that explain it. */
export type CommissionRefusal =
  | { code: 'unknown_commission' }
  | { code: 'ended_early'; endedOn: Day }
  | { code: 'handed_over_already'; handedOn: Day }
  | { code: 'day_to_come'; on: Day }
  | { code: 'not_agreed_yet' }
  | { code: 'unknown_tax_place' }
  | { code: 'deposit_above_total'; depositCents: Cents; totalCents: Cents }
  | { code: 'agreed_below_paid'; totalCents: Cents; paidCents: Cents }
  | { code: 'nothing_shown' }
  | { code: 'other_picture' }
  | { code: 'approved_already'; approvedBy: string; approvedOn: Day }
  | { code: 'before_it_was_shown'; shownOn: Day }
  | { code: 'due_before_asked'; askedOn: Day }
  | { code: 'more_than_to_ask'; leftCents: Cents }
  | { code: 'more_than_owed'; owedCents: Cents }
  | { code: 'unknown_instalment' }
  | { code: 'card_number_in_reference' }
  | { code: 'may_begin_already' }
  | { code: 'let_begin_already' }
  | { code: 'job_not_finished'; jobNumber: number }
  | { code: 'older_than_last_payment'; receivedOn: Day }
  | { code: 'no_tax_rate_for_site'; place: string; on: Day }
  | { code: 'paid_above_total'; paidCents: Cents; totalCents: Cents }
  | CollectorRefusal
  | PictureRefusal;

/** What a command may answer besides: the person may not, or the form's key was used before. */
export type CommissionNo = CommissionRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/** Says in full sentences why something about a commission was not done. */
export function commissionRefusalMessage(refusal: CommissionNo): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Open the page again.';
    case 'unknown_commission':
      return 'There is no such commission. Find it in the list.';
    case 'ended_early':
      return `This commission ended on ${formatDay(refusal.endedOn, 'short')}; nothing more is written to it.`;
    case 'handed_over_already':
      return `It was handed over on ${formatDay(refusal.handedOn, 'short')}.`;
    case 'day_to_come':
      return `${formatDay(refusal.on, 'long')} is still to come. Write the day on which it happened.`;
    case 'unknown_collector':
      return collectorRefusalMessage(refusal);
    case 'nothing_shown':
    case 'other_picture':
    case 'approved_already':
    case 'before_it_was_shown':
      return approvalMessage(refusal);
    case 'may_begin_already':
    case 'let_begin_already':
    case 'job_not_finished':
      return makingMessage(refusal);
    case 'picture_empty':
    case 'picture_too_heavy':
    case 'not_a_picture':
    case 'picture_kind_unknown':
    case 'picture_too_large':
    case 'picture_damaged':
      return pictureRefusalMessage(refusal);
    default:
      return moneyMessage(refusal);
  }
}

type ApprovalCode = 'nothing_shown' | 'other_picture' | 'approved_already' | 'before_it_was_shown';

function approvalMessage(refusal: Extract<CommissionRefusal, { code: ApprovalCode }>): string {
  switch (refusal.code) {
    case 'nothing_shown':
      return 'Nothing of that letter or number was shown yet.';
    case 'other_picture':
      return 'The picture is not the one you were looking at. Look at the sheet again before you write down a yes.';
    case 'approved_already':
      return `${refusal.approvedBy} already said yes to it, on ${formatDay(refusal.approvedOn, 'short')}.`;
    case 'before_it_was_shown':
      return `It was shown on ${formatDay(refusal.shownOn, 'short')}; a yes cannot be older than that.`;
  }
}

type MakingCode = 'may_begin_already' | 'let_begin_already' | 'job_not_finished';

function makingMessage(refusal: Extract<CommissionRefusal, { code: MakingCode }>): string {
  switch (refusal.code) {
    case 'may_begin_already':
      return 'Everything is there: the making may begin without a word from the owner.';
    case 'let_begin_already':
      return 'The owner let the making begin before; the reason is on the sheet.';
    case 'job_not_finished':
      return `Job ${refusal.jobNumber} is not finished yet, so there is nothing to hand over.`;
  }
}

type MoneyCode =
  | 'not_agreed_yet'
  | 'unknown_tax_place'
  | 'deposit_above_total'
  | 'agreed_below_paid'
  | 'due_before_asked'
  | 'more_than_to_ask'
  | 'more_than_owed'
  | 'unknown_instalment'
  | 'card_number_in_reference'
  | 'older_than_last_payment'
  | 'no_tax_rate_for_site'
  | 'paid_above_total';

function moneyMessage(refusal: Extract<CommissionRefusal, { code: MoneyCode }>): string {
  switch (refusal.code) {
    case 'not_agreed_yet':
      return 'Nothing is agreed yet. Write down the price first.';
    case 'unknown_tax_place':
      return 'Choose the place whose sales tax applies where the piece will hang.';
    case 'deposit_above_total':
      return `A deposit of ${formatCents(refusal.depositCents)} is more than the whole, ${formatCents(refusal.totalCents)} with tax.`;
    case 'agreed_below_paid':
      return `${formatCents(refusal.paidCents)} was paid already, more than ${formatCents(refusal.totalCents)} with tax. Settle that with the collector first.`;
    case 'due_before_asked':
      return `It is asked for on ${formatDay(refusal.askedOn, 'short')}, so it cannot be due before that.`;
    case 'more_than_to_ask':
      return leftMessage(
        refusal.leftCents,
        'can be asked for',
        'Everything was asked for already.',
      );
    case 'more_than_owed':
      return leftMessage(
        refusal.owedCents,
        'is owed in all',
        'Everything is paid; nothing is owed.',
      );
    case 'unknown_instalment':
      return 'That payment was not asked for on this commission. Choose another, or none.';
    case 'card_number_in_reference':
      return 'That looks like the number of a card, which is never kept. Write the slip number of the card terminal instead, or nothing.';
    case 'older_than_last_payment':
      return `Money came in on ${formatDay(refusal.receivedOn, 'short')}; the hand-over cannot be older than that.`;
    case 'no_tax_rate_for_site':
      return `No sales tax rate is kept for ${refusal.place} on ${formatDay(refusal.on, 'short')}. The owner keeps the rates; a rate of 0 is one too.`;
    case 'paid_above_total':
      return `${formatCents(refusal.paidCents)} was paid, more than the ${formatCents(refusal.totalCents)} it comes to with tax. Settle that with the collector first.`;
  }
}

function leftMessage(cents: Cents, does: string, none: string): string {
  return cents > 0n ? `No more than ${formatCents(cents)} ${does}.` : none;
}
