import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { pieceRefusalMessage, type PieceRefusal } from '@/lib/catalogue/rules/pieces';
import { formatDay, type Day } from '@/lib/dates/rules';
import { holdRefusalMessage, type HoldRefusal } from '@/lib/holds/rules/refusals';
import { formatCents, type Cents } from '@/lib/money/rules';
import { returnRefusalMessage, type ReturnRefusal } from '@/lib/returns/rules/refusals';
import { numberMessage, type EditionRefusal } from '@/lib/stock/rules/marks/numbers';

type PlainCode =
  | 'key_used_for_something_else'
  | 'unknown_piece'
  | 'second_is_not_made'
  | 'made_once'
  | 'unknown_collector'
  | 'nobody_named'
  | 'price_needed'
  | 'nowhere_to_send'
  | 'unknown_order'
  | 'order_has_ended'
  | 'all_here'
  | 'not_here_yet'
  | 'told_already'
  | 'handed_over_already'
  | 'deposit_paid';

/** Why nothing was done with a special order; each carries the facts that explain it. */
export type OrderRefusal =
  | NotAllowed
  | { code: PlainCode }
  | { code: 'day_is_over'; todayOn: Day }
  | { code: 'deposit_above_price'; totalCents: Cents }
  | { code: 'piece'; why: PieceRefusal }
  | { code: 'hold'; why: HoldRefusal }
  | { code: 'edition'; why: EditionRefusal }
  | { code: 'money'; why: ReturnRefusal };

const sentences: Readonly<Record<PlainCode, string>> = {
  key_used_for_something_else:
    'This page was sent before with something else in it. Load it again, please.',
  unknown_piece: 'That piece is not in the catalogue. Choose it again, please.',
  second_is_not_made: 'A second is not made to order. Choose the piece that it would have been.',
  made_once: 'This one is not made again. Something like it is a commission, or another piece.',
  unknown_collector: 'That collector is not in the address book. Choose them again, please.',
  nobody_named: 'Write for whom it is, and how to reach them.',
  price_needed: 'This colour or size has no price yet. Write what one costs.',
  nowhere_to_send: 'Write where it is sent.',
  unknown_order: 'That order is not in the book.',
  order_has_ended: 'This order was called off.',
  all_here: 'All its pieces are here already.',
  not_here_yet: 'Its pieces are not here yet. Bring them in first.',
  told_already: 'The collector was told already.',
  handed_over_already: 'It was handed over already. What comes back is a return.',
  deposit_paid: 'The deposit is paid.',
};

/** Says in a full sentence why nothing was done with an order. */
export function orderRefusalMessage(refusal: OrderRefusal, zone: string): string {
  return isPlain(refusal) ? sentences[refusal.code] : messageWithFacts(refusal, zone);
}

function isPlain(refusal: OrderRefusal): refusal is { code: PlainCode } {
  return refusal.code in sentences;
}

function messageWithFacts(
  refusal: Exclude<OrderRefusal, { code: PlainCode }>,
  zone: string,
): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'day_is_over':
      return `That day is over; today is ${formatDay(refusal.todayOn, 'short')}.`;
    case 'deposit_above_price':
      return `It costs ${formatCents(refusal.totalCents)} in all, so no more is paid down.`;
    case 'piece':
      return pieceRefusalMessage(refusal.why);
    case 'hold':
      return holdRefusalMessage(refusal.why, zone);
    case 'edition':
      return numberMessage(refusal.why);
    case 'money':
      return returnRefusalMessage(refusal.why);
  }
}

/** The field of the form at which a refusal is told; null for the form's head. */
export function orderRefusalField({ code }: OrderRefusal): string | null {
  const fields: Partial<Record<OrderRefusal['code'], string>> = {
    nobody_named: 'newName',
    price_needed: 'unitPriceCents',
    nowhere_to_send: 'sendTo',
    day_is_over: 'readyAboutOn',
    deposit_above_price: 'depositCents',
  };
  return fields[code] ?? null;
}
