import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';

/** What can be said without further facts. */
const plainSentences = {
  key_used_for_something_else:
    'This page was sent before with something else in it. Load it again, please.',
  unknown_sale: 'No receipt has that number.',
  nothing_chosen: 'Say which piece came back, and how many of it.',
  unknown_line: 'One of these lines is not on the receipt. Load the page again, please.',
  card_number_typed:
    'That looks like the number of a card, which is never kept. Write it without, please.',
  void_after_return:
    'Something of it came back already, so it cannot be struck out whole. Take back the rest.',
  only_as_credit:
    'It was paid with money from before, or is not paid yet in full: give the rest back as store credit.',
  no_payments: 'Nothing was paid for it at the counter, so there is nothing to give back.',
} as const;

type PlainRefusal = { code: keyof typeof plainSentences };

type LineRefusal = { lineId: string; title: string } & (
  | { code: 'not_so_many'; left: number }
  | { code: 'number_missing' }
  | { code: 'number_not_sold'; number: number }
  | { code: 'flaw_missing' }
  | { code: 'second_already' }
  | { code: 'not_a_place' }
);

type SoldForGood = { title: string } & (
  | { code: 'final_sale'; why: string }
  | { code: 'belongs_to_a_paper' }
  | { code: 'voucher_was_used'; balanceCents: Cents }
);

type FactRefusal =
  | { code: 'void_another_day'; soldOn: Day }
  | { code: 'too_late'; days: number; endedOn: Day }
  | { code: 'fee_above_price'; feeCents: Cents; netCents: Cents }
  | { code: 'refund_does_not_add_up'; totalCents: Cents; givenCents: Cents }
  | { code: 'refund_above_paid'; tenderId: string; leftCents: Cents; givenCents: Cents }
  | { code: 'deposit_was_used'; leftCents: Cents; wantedCents: Cents };

/** Why nothing was taken back; each carries the facts that explain it. */
export type ReturnRefusal = NotAllowed | PlainRefusal | LineRefusal | SoldForGood | FactRefusal;

/** Says in full sentences why nothing was taken back, as one would say it over the counter. */
export function returnRefusalMessage(refusal: ReturnRefusal): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (isPlain(refusal)) return plainSentences[refusal.code];
  return 'title' in refusal ? ofALine(refusal) : withFacts(refusal);
}

function isPlain(refusal: ReturnRefusal): refusal is PlainRefusal {
  return refusal.code in plainSentences;
}

function ofALine(refusal: LineRefusal | SoldForGood): string {
  const { title } = refusal;
  switch (refusal.code) {
    case 'not_so_many':
      return notSoMany(title, refusal.left);
    case 'number_missing':
      return `Choose which numbers of ${title} came back, as many as pieces.`;
    case 'number_not_sold':
      return `Number ${refusal.number} of ${title} is not out by this receipt. Look at the back of the piece.`;
    case 'flaw_missing':
      return `Say what is wrong with ${title}, in words that can be said aloud.`;
    case 'second_already':
      return `${title} is a second already. Put it back on the shelf, or write it off as broken.`;
    case 'not_a_place':
      return `Say what becomes of ${title}.`;
    case 'final_sale':
      return `${title} was sold for good: ${refusal.why}. The owner may take it back all the same.`;
    case 'belongs_to_a_paper':
      return `${title} was paid towards something that is not handed over yet. Give it back there: on the layaway, the order or the commission.`;
    case 'voucher_was_used':
      return `The voucher was used already: ${formatCents(refusal.balanceCents)} is left on it. Only an unspent one is taken back.`;
  }
}

function withFacts(refusal: FactRefusal): string {
  switch (refusal.code) {
    case 'void_another_day':
      return `It was sold on ${formatDay(refusal.soldOn, 'long')}. A sale is struck out on its own day only; take the pieces back instead.`;
    case 'too_late':
      return tooLate(refusal);
    case 'fee_above_price':
      return `The fee of ${formatCents(refusal.feeCents)} is more than the ${formatCents(refusal.netCents)} that come back.`;
    case 'refund_does_not_add_up':
      return `What is given back comes to ${formatCents(refusal.givenCents)}, and should come to ${formatCents(refusal.totalCents)}.`;
    case 'refund_above_paid':
      return `At most ${formatCents(refusal.leftCents)} was paid that way and is not back yet.`;
    case 'deposit_was_used':
      return `Only ${formatCents(refusal.leftCents)} of the ${formatCents(refusal.wantedCents)} is still held. The rest was used already.`;
  }
}

function notSoMany(title: string, left: number): string {
  if (left === 0) return `${title} came back already, all that was sold with this receipt.`;
  return `Of ${title} only ${left} ${left === 1 ? 'is' : 'are'} still out with this receipt.`;
}

function tooLate({ days, endedOn }: { days: number; endedOn: Day }): string {
  if (days === 0)
    return 'The gallery takes nothing back after the day. The owner may, all the same.';
  const ended = formatDay(endedOn, 'long');
  return `The ${days} days for bringing it back ended on ${ended}. The owner may take it back all the same.`;
}

/** The sentence, and the field of the return's form at which it stands. */
export function returnRefusalWords(refusal: ReturnRefusal): {
  message: string;
  fields: Record<string, string>;
} {
  const message = returnRefusalMessage(refusal);
  const field = fieldOf(refusal);
  return { message, fields: field === null ? {} : { [field]: message } };
}

const fieldsOfLines = {
  not_so_many: 'pieces',
  number_missing: 'number',
  number_not_sold: 'number',
  flaw_missing: 'flaw',
  second_already: 'to',
  not_a_place: 'to',
} as const;

function fieldOf(refusal: ReturnRefusal): string | null {
  if ('lineId' in refusal) return `${fieldsOfLines[refusal.code]}.${refusal.lineId}`;
  if (refusal.code === 'refund_above_paid') return `refund.${refusal.tenderId}`;
  if (refusal.code === 'fee_above_price') return 'feePercent';
  return refusal.code === 'card_number_typed' ? 'reason' : null;
}
