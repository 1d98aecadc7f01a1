import { skuLength } from '@/lib/catalogue/rules';

/**
 * A SKU for a design in a colour or size that was never made: the first two parts of the SKU it
 * was ordered from, and the first letters of the colour's words; a number when that is taken.
 *
 * @param taken codes that are used, in capitals
 * @example orderSkuCode('TERN-10-CEL', 'Moon white', new Set()) // 'TERN-10-MW'
 */
export function orderSkuCode(from: string, colourway: string, taken: ReadonlySet<string>): string {
  const letters = colourway.toUpperCase().match(/[A-Z0-9]+/g) ?? ['X'];
  const mark = letters
    .map((word) => word.slice(0, 1))
    .join('')
    .slice(0, 4);
  const head = from
    .split('-')
    .slice(0, 2)
    .join('-')
    .slice(0, skuLength.most - 8);
  for (let number = 1; ; number += 1) {
    const code = `${head.replace(/-+$/, '')}-${mark}${number === 1 ? '' : number}`;
    if (code.length >= skuLength.least && !taken.has(code)) return code;
  }
}
