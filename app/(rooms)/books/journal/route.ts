import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { journalCsv } from '@/lib/documents/rules/journal';
import { listJournalOfMonth } from '@/lib/ledger/reads';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { readBooksPlace } from '../book-address';

/** A month of the journal as a CSV file. */
export async function GET(request: Request): Promise<Response> {
  const actor = await requireActor('books.see');
  const gallery = await getGallery();
  const query = Object.fromEntries(new URL(request.url).searchParams);
  const { month } = readBooksPlace(query, dayOf(now(), gallery.timeZone));
  const file = journalCsv(await listJournalOfMonth(actor, month));
  return new Response(file, {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="journal-${month}.csv"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
