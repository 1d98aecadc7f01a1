import { certificateWords, type CertificateStanding } from '@/lib/collectors/rules/trade';
import { formatDay, type Day } from '@/lib/dates/rules';
import { shareCents, type Cents } from '@/lib/money/rules';

/** What holds for a shop's order when nothing else is agreed. */
export const usualTerms = { pricePercent: '50', netDays: 30 } as const;

/**
 * The terms as they stand on an order's paper, to be changed by whoever writes it.
 *
 * @source common practice
 */
export const usualWords =
  'A first order is paid before it leaves. Breakage is told within 14 days, with pictures. ' +
  'Freight at what it costs.';

/**
 * What a shop pays for a piece: a share of its price in the gallery, rounded half up to a cent.
 *
 * @param percent decimal string, `'50'`
 * @source common practice: half of retail
 * @example wholesalePriceCents(9_965n, '50') // 4_983n
 */
export function wholesalePriceCents(retailCents: Cents, percent: string): Cents {
  return shareCents(retailCents, percent, 'half-up');
}

/** Where an order stands. */
export type OrderStanding = 'open' | 'shipped' | 'cancelled';

/** Where an order stands: told by what happened, never written down. */
export function orderStanding(order: {
  saleId: string | null;
  endedAt: Date | null;
}): OrderStanding {
  if (order.saleId !== null) return 'shipped';
  return order.endedAt === null ? 'open' : 'cancelled';
}

/** Why something about a shop was not done. */
export type ShopRefusal =
  | { code: 'unknown_shop' }
  | { code: 'unknown_order' }
  | { code: 'order_is_shipped'; number: number }
  | { code: 'order_is_cancelled'; number: number }
  | { code: 'unknown_code'; typed: string }
  | { code: 'no_price'; title: string; sku: string }
  | { code: 'town_is_promised'; town: string; shop: string; untilOn: Day | null }
  | { code: 'unknown_promise' }
  | { code: 'no_state'; shop: string }
  | { code: 'no_certificate'; shop: string; standing: CertificateStanding }
  | { code: 'unknown_place' }
  | { code: 'not_enough'; title: string; sku: string; wanted: number; free: number; held: number }
  | { code: 'paid_first' }
  | { code: 'card_number_typed' };

const plainMessages = {
  unknown_shop: 'That shop is not among the people. Write it down first, as a business.',
  unknown_order: 'That order is not in the book.',
  unknown_promise: 'That promise is not in the book, or it has ended already.',
  unknown_place: 'Choose a place of ours that is open.',
  paid_first: 'This order is paid before it leaves. Say how the money came.',
  card_number_typed:
    'That looks like the number of a card, which is never kept. Write the slip number of the card ' +
    'terminal instead, or nothing.',
} as const;

type PlainRefusal = Extract<ShopRefusal, { code: keyof typeof plainMessages }>;

function isPlain(refusal: ShopRefusal): refusal is PlainRefusal {
  return refusal.code in plainMessages;
}

/** Says in full sentences why something about a shop was not done. */
export function shopRefusalMessage(refusal: ShopRefusal): string {
  if (isPlain(refusal)) return plainMessages[refusal.code];
  switch (refusal.code) {
    case 'order_is_shipped':
      return `Order ${refusal.number} has left already. What comes after it is a new order.`;
    case 'order_is_cancelled':
      return `Order ${refusal.number} was cancelled.`;
    case 'unknown_code':
      return `${refusal.typed} is not in the catalogue. Look at the tag once more.`;
    case 'no_price':
      return `${refusal.title} (${refusal.sku}) has no price yet. Give it one first.`;
    case 'town_is_promised':
      return promisedMessage(refusal);
    case 'no_state':
      return `Write down in which state ${refusal.shop} is, so that their certificate can be looked at.`;
    case 'no_certificate':
      return noCertificateMessage(refusal);
    case 'not_enough':
      return notEnoughMessage(refusal);
  }
}

function promisedMessage(refusal: Extract<ShopRefusal, { code: 'town_is_promised' }>): string {
  const { town, shop, untilOn } = refusal;
  const until = untilOn === null ? '' : ` until ${formatDay(untilOn, 'short')}`;
  return `${town} is promised to ${shop}${until}: no other shop there gets our pieces.`;
}

function noCertificateMessage(refusal: Extract<ShopRefusal, { code: 'no_certificate' }>): string {
  const said = certificateWords(refusal.standing).replace(/ (Until then t|T)ax is charged.*$/, '');
  return (
    `${said} Without a resale certificate nothing leaves for ${refusal.shop} untaxed. ` +
    'Ask for it, and keep it with the shop.'
  );
}

function notEnoughMessage(refusal: Extract<ShopRefusal, { code: 'not_enough' }>): string {
  const { title, sku, wanted, free, held } = refusal;
  const are = free === 0 ? 'is none' : free === 1 ? 'is one' : `are ${free}`;
  const kept = held === 0 ? '' : ` (${held} more ${held === 1 ? 'is' : 'are'} held for somebody)`;
  return `The order says ${wanted} of ${title} (${sku}), and there ${are} free${kept}. Change the order, or make more first.`;
}
