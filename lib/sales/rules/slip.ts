import { readSku } from '@/lib/catalogue/rules';

/** What a slip says in the address of the counter: which SKU, how many. */
export type SlipEntry = { sku: string; quantity: number };

/** The most lines on one slip, and the most of one piece on it. */
export const slipMost = { lines: 60, quantity: 999 } as const;

/**
 * Reads a slip from the counter's address: SKUs parted by points, each with how many.
 *
 * What does not read as a line is left out; the same SKU twice counts together.
 *
 * @example readSlip('TS-10-CI.KF-8-MW*2') // one tern, two of the fern
 */
export function readSlip(text: string): SlipEntry[] {
  const slip = text.split('.').flatMap((part) => {
    const match = /^([^*]+)(?:\*([1-9]\d{0,2}))?$/.exec(part);
    const sku = readSku(match?.[1] ?? '');
    return sku.ok ? [{ sku: sku.value, quantity: Number(match?.[2] ?? '1') }] : [];
  });
  return slip.reduce<SlipEntry[]>((read, entry) => putOn(read, entry.sku, entry.quantity), []);
}

/** Writes a slip as the counter's address keeps it; {@link readSlip} reads it back. */
export function writeSlip(slip: readonly SlipEntry[]): string {
  return slip.map(({ sku, quantity }) => (quantity === 1 ? sku : `${sku}*${quantity}`)).join('.');
}

/**
 * Puts pieces on a slip, under the others or onto their line. A slip that is full stays as it is.
 *
 * @example putOn([{ sku: 'TS-10-CI', quantity: 1 }], 'TS-10-CI') // two of it
 */
export function putOn(slip: readonly SlipEntry[], sku: string, quantity = 1): SlipEntry[] {
  const line = slip.find((entry) => entry.sku === sku);
  if (line) return setQuantity(slip, sku, line.quantity + quantity);
  return slip.length < slipMost.lines ? [...slip, { sku, quantity }] : [...slip];
}

/** Changes how many of a piece are on the slip; none takes the line off. */
export function setQuantity(
  slip: readonly SlipEntry[],
  sku: string,
  quantity: number,
): SlipEntry[] {
  const kept = Math.min(quantity, slipMost.quantity);
  return slip.flatMap((entry) => {
    if (entry.sku !== sku) return [entry];
    return kept > 0 ? [{ sku, quantity: kept }] : [];
  });
}
