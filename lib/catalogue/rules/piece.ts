import type { PieceKind } from '../rules';
import type { Making } from './making';

/**
 * All that the catalogue keeps of a SKU. Lengths in whole micrometres, weight in whole grams,
 * money in cents.
 */
export type CatalogueEntry = {
  title: string;
  kind: PieceKind;
  colourway: string;
  widthUm: number;
  heightUm: number;
  depthUm: number | null;
  weightG: number | null;
  priceCents: bigint;
  costCents: bigint | null;
  gtin: string | null;
  making: Making;
};

/** An entry with its SKU. */
export type CatalogueSku = CatalogueEntry & { code: string };

/**
 * A code for a new design: the first part of its SKU, or that with a number behind it when it is
 * another design's already.
 *
 * @param taken codes that other designs have, in capitals
 * @example designCodeFrom('TS-10-CI', new Set(['TS'])) // 'TS2'
 */
export function designCodeFrom(sku: string, taken: ReadonlySet<string>): string {
  const start = sku.split('-')[0] ?? sku;
  let code = start;
  for (let number = 2; taken.has(code); number += 1) code = `${start}${number}`;
  return code;
}

/**
 * A name as it is compared: two names that differ only in capitals or spaces are one name.
 *
 * @example sameName(' Sword  fern') === sameName('Sword Fern') // true
 */
export function sameName(name: string): string {
  return name.replace(/\s+/g, ' ').trim().toLowerCase();
}
