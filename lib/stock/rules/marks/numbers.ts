import { ok, refuse, type Result } from '@/lib/platform/result';

/** What is known of an edition when pieces of it come or go. */
export type KnownEdition = {
  skuId: string;
  /** The SKU's code, for the sentence. */
  code: string;
  size: number;
  artistProofs: number;
  /** The highest of its own numbers that was ever given; nought before the first. */
  lastNumber: number;
};

/** Why pieces of an edition were not written down. */
export type EditionRefusal =
  | { code: 'beyond_edition'; sku: string; size: number; came: number; wanted: number }
  | { code: 'which_number'; sku: string };

/** Pieces that come (above zero) or go (below), with their number where they have one. */
export type ToNumber = { skuId: string; quantity: number; editionNumber?: number };

/**
 * Gives pieces of editions that arrive the next numbers, one line for each piece. A number that
 * was given once is not given again: what broke leaves its number empty.
 *
 * @param editions those of the SKUs that have one; anything else passes as it is
 * @returns refuses, in the order of the arrivals: more than the edition has left, pieces that
 *   leave without their number
 * @source common practice: a cast's number is its place among the good ones, and one policy for
 *   what is lost is kept: here its number stays empty
 */
export function numberArrivals<Piece extends ToNumber>(
  arrivals: readonly Piece[],
  editions: readonly KnownEdition[],
): Result<Piece[], EditionRefusal> {
  if (editions.length === 0) return ok([...arrivals]);
  const editionOf = new Map(editions.map((edition) => [edition.skuId, edition]));
  const lastOf = new Map(editions.map((edition) => [edition.skuId, edition.lastNumber]));
  const numbered: Piece[] = [];
  for (const arrival of arrivals) {
    const edition = editionOf.get(arrival.skuId);
    if (!edition || arrival.editionNumber !== undefined) {
      numbered.push(arrival);
      continue;
    }
    const { code: sku, size } = edition;
    if (arrival.quantity < 0) return refuse({ code: 'which_number', sku });
    const last = lastOf.get(arrival.skuId) ?? 0;
    const wanted = arrival.quantity;
    if (last + wanted > size) {
      return refuse({ code: 'beyond_edition', sku, size, came: last, wanted });
    }
    lastOf.set(arrival.skuId, last + wanted);
    for (let place = 1; place <= wanted; place += 1) {
      numbered.push({ ...arrival, quantity: 1, editionNumber: last + place });
    }
  }
  return ok(numbered);
}

/** Says in a full sentence why pieces of an edition were not written down. */
export function editionRefusalMessage(refusal: EditionRefusal): string {
  if (refusal.code === 'which_number') {
    return `${refusal.sku} is an edition: say which number it is, one piece at a time.`;
  }
  const { sku, size, came } = refusal;
  const left = size - came;
  if (left <= 0) return `All ${size} of the edition ${sku} have come. No other follows.`;
  return `${sku} is an edition of ${size}, and ${came} have come: ${left} more at most.`;
}

/** Why a piece that was named by its number was not written down. */
export type NumberRefusal =
  | { code: 'no_such_number' }
  | { code: 'one_number_at_a_time' }
  | { code: 'number_not_here' }
  | { code: 'number_came_before' };

/** Says in a full sentence why a numbered piece was not written down. */
export function numberMessage(refusal: EditionRefusal | NumberRefusal): string {
  switch (refusal.code) {
    case 'beyond_edition':
    case 'which_number':
      return editionRefusalMessage(refusal);
    case 'no_such_number':
      return 'This edition has no such number. Write it as 7, or AP 2 for an artist’s proof.';
    case 'one_number_at_a_time':
      return 'A numbered piece is written down by itself: one number, one piece.';
    case 'number_not_here':
      return 'That number is not here. Look which numbers are.';
    case 'number_came_before':
      return 'That number came before, and a number is given once.';
  }
}

/** What is known of an edition when one of its numbers is named. */
export type NamedNumber = {
  sku: string;
  /** Which number is named; null when none is. */
  number: number | null;
  /** Whether it stands here now, and whether it ever came. */
  isHere: boolean;
  hasCome: boolean;
};

/**
 * What more is asked of a piece of an edition: it goes by its number, and comes by one that was
 * never given. A count does not say which numbers there are, so it changes none.
 *
 * @param quantity pieces that come (above zero) or go (below)
 * @returns true; refuses, in this order: pieces that go or were counted without their number,
 *   several of one number, a number that is not here, a number that came before
 */
export function decideNumbered(
  said: { reason: string; quantity: number },
  named: NamedNumber,
): Result<true, EditionRefusal | NumberRefusal> {
  const { reason, quantity } = said;
  const { sku, number, isHere, hasCome } = named;
  if (number === null) {
    return reason === 'made' ? ok(true) : refuse({ code: 'which_number', sku });
  }
  if (reason === 'counted') return refuse({ code: 'which_number', sku });
  if (Math.abs(quantity) !== 1) return refuse({ code: 'one_number_at_a_time' });
  if (quantity < 0) return isHere ? ok(true) : refuse({ code: 'number_not_here' });
  return hasCome ? refuse({ code: 'number_came_before' }) : ok(true);
}
