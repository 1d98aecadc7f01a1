import { plainCents } from '@/lib/money/rules';
import type { WorthLine } from '@/lib/stock/rules/moves/worth';
import { csvText } from '@/lib/files/rules/csv';

const heads = [
  'code',
  'title',
  'place',
  'pieces',
  'cost known',
  'worth by moving average',
  'worth first in first out',
  'worth at retail',
];

/** What the stock is worth as a CSV file: one row for each SKU at each place, in plain figures. */
export function worthCsv(lines: readonly WorthLine[]): string {
  const rows = lines.map((line) => [
    line.sku,
    line.title,
    line.place,
    String(line.units),
    line.isKnown ? 'yes' : 'no',
    line.isKnown ? plainCents(line.averageCents) : '',
    line.isKnown ? plainCents(line.fifoCents) : '',
    plainCents(line.retailCents),
  ]);
  return csvText([heads, ...rows]);
}
