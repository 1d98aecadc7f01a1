import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { worthCsv } from '@/lib/documents/rules/worth';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { readStockWorth } from '@/lib/stock/reads/worth';
import type { WorthLine } from '@/lib/stock/rules/moves/worth';

/** What the stock is worth, piece by piece and place by place, as a CSV file. */
export async function GET(): Promise<Response> {
  const actor = await requireActor('stock.value');
  const { timeZone } = await getGallery();
  const lines: WorthLine[] = [];
  await readStockWorth(actor, (line) => lines.push(line));
  return new Response(worthCsv(lines), {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="stock-worth-${dayOf(now(), timeZone)}.csv"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
