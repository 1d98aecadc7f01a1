import { requireActor } from '@/lib/access/reads';
import { readListTemplate } from '@/lib/stock/reads/list-template';

/** The blank stock list, to be opened in a spreadsheet. */
export async function GET(): Promise<Response> {
  await requireActor('stock.load');
  return new Response(await readListTemplate(), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="stock-list.csv"',
      'cache-control': 'private, no-store',
    },
  });
}
