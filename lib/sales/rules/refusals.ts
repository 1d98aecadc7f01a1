import { formatCents, type Cents } from '@/lib/money/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { howLongAgo } from './how-long-ago';

/** The ways of selling. */
export type Channel = 'counter' | 'fair' | 'shipped' | 'commission' | 'consigned' | 'wholesale';

/** When a piece last went, and who sold it where. */
export type LastSold = {
  soldAt: Date;
  by: string;
  channel: Channel;
};

/** Why a sale was not made; each carries the facts that explain it. */
export type SaleRefusal =
  | { code: 'nothing_on_slip' }
  | { code: 'unknown_piece'; skuId: string }
  | { code: 'unknown_collector'; collectorId: string }
  | { code: 'no_price'; title: string; sku: string }
  | {
      code: 'not_enough_pieces';
      title: string;
      sku: string;
      size: string;
      wanted: number;
      onHand: number;
      askedAt: Date;
      last: LastSold | null;
    }
  | { code: 'no_tax_rate'; place: string; on: Day }
  | { code: 'price_changed'; shownCents: Cents; nowCents: Cents }
  | { code: 'card_number_typed' }
  | { code: 'not_enough_cash'; dueCents: Cents; givenCents: Cents }
  | { code: 'far_too_much_cash'; dueCents: Cents; givenCents: Cents }
  | { code: 'unknown_voucher'; typed: string }
  | { code: 'voucher_ran_out'; voucher: string; expiresOn: Day }
  | { code: 'voucher_has_less'; voucher: string; onItCents: Cents }
  | { code: 'tenders_do_not_add_up'; totalCents: Cents; paidCents: Cents };

/** Says in full sentences why a sale was not made, as one would say it over the counter. */
export function saleRefusalMessage(refusal: SaleRefusal): string {
  return isOfTheMoney(refusal) ? moneyMessage(refusal) : piecesMessage(refusal);
}

type OfTheMoney = Extract<
  SaleRefusal,
  { code: `${string}cash` | `${string}voucher${string}` | `tenders${string}` | `card${string}` }
>;

function isOfTheMoney(refusal: SaleRefusal): refusal is OfTheMoney {
  return /cash$|voucher|^tenders|^card/.test(refusal.code);
}

function piecesMessage(refusal: Exclude<SaleRefusal, OfTheMoney>): string {
  switch (refusal.code) {
    case 'nothing_on_slip':
      return 'There is nothing on the slip yet. Find a piece first.';
    case 'unknown_piece':
      return 'One of the pieces on the slip is not in the catalogue. Take it off and find it again.';
    case 'unknown_collector':
      return 'That collector is not in the address book. Choose another, or sell without a name.';
    case 'no_price':
      return `${refusal.title} (${refusal.sku}) has no price yet. Give it one before it is sold.`;
    case 'not_enough_pieces':
      return notEnoughMessage(refusal);
    case 'no_tax_rate':
      return (
        `No sales tax rate is kept for ${refusal.place} on ${formatDay(refusal.on, 'short')}. ` +
        'The owner keeps the rates; a rate of 0 is one too.'
      );
    case 'price_changed':
      return (
        `The total was ${formatCents(refusal.shownCents)} when you saw it and is ` +
        `${formatCents(refusal.nowCents)} now, because a price or a tax rate was changed meanwhile. ` +
        'Nothing was sold. Look at the slip once more.'
      );
  }
}

function moneyMessage(refusal: OfTheMoney): string {
  switch (refusal.code) {
    case 'card_number_typed':
      return 'That looks like the number of a card, which is never kept. Write the slip number of the card terminal instead, or nothing.';
    case 'not_enough_cash':
      return (
        `${formatCents(refusal.givenCents)} is not enough for ${formatCents(refusal.dueCents)}: ` +
        `${formatCents(refusal.dueCents - refusal.givenCents)} is missing.`
      );
    case 'far_too_much_cash':
      return (
        `${formatCents(refusal.givenCents)} in cash for ${formatCents(refusal.dueCents)} cannot be ` +
        'right. Count once more what was given.'
      );
    case 'unknown_voucher':
      return `No voucher has the number ${refusal.typed}. Scan it once more, or look at its letters.`;
    case 'voucher_ran_out':
      return `${refusal.voucher} was good until ${formatDay(refusal.expiresOn, 'short')}. Ask the owner.`;
    case 'voucher_has_less':
      return `There is ${formatCents(refusal.onItCents)} on ${refusal.voucher}, and no more.`;
    case 'tenders_do_not_add_up': {
      const { paidCents, totalCents } = refusal;
      const left = totalCents - paidCents;
      const says =
        left > 0n ? `${formatCents(left)} is left to pay` : `${formatCents(-left)} too much`;
      return `What was paid comes to ${formatCents(paidCents)}, and ${formatCents(totalCents)} is due: ${says}.`;
    }
  }
}

const wheres = {
  counter: 'at the counter',
  fair: 'at the fair',
  shipped: 'to be sent',
  commission: 'with a commission',
  consigned: 'by another gallery',
  wholesale: 'to a shop',
} as const;

function notEnoughMessage(refusal: Extract<SaleRefusal, { code: 'not_enough_pieces' }>): string {
  const { title, size, wanted, onHand, last, askedAt } = refusal;
  const piece = `${title} ${size}`.trim();
  if (onHand > 0) {
    const are = onHand === 1 ? 'is only one' : `are only ${onHand}`;
    return `There ${are} of ${piece} here, and the slip says ${wanted}.`;
  }
  if (!last) return `There is no ${piece} here.`;
  const when = howLongAgo(last.soldAt, askedAt);
  return `The last ${piece} was sold ${when}, ${wheres[last.channel]}, by ${last.by}.`;
}
