import type { OrderWish } from '@/lib/orders/input';

/** What of a wish stands in the address, as names and texts. */
export function wishFields(wish: OrderWish): [string, string][] {
  const { sku, quantity, colourway, size, wantedOn, technique, collector } = wish;
  const fields = { sku, quantity, colourway, size, wantedOn, technique, collector };
  return Object.entries(fields).flatMap(([name, value]) =>
    value === null || value === '' ? [] : [[name, String(value)] as [string, string]],
  );
}

/** The address of the page that takes an order, with what is wanted so far. */
export function wishHref(wish: OrderWish, over: Partial<OrderWish> = {}): string {
  return `/orders/new?${new URLSearchParams(wishFields({ ...wish, ...over })).toString()}`;
}
