import { requireActor } from '@/lib/access/reads';
import { salesFile } from '@/lib/data/reads/take-out';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { csvAnswer } from '../csv-answer';

/** Every sale, line by line, as a CSV file. */
export async function GET(): Promise<Response> {
  const actor = await requireActor('data.take_out');
  const { timeZone } = await getGallery();
  return csvAnswer(await salesFile(actor), `sales-${dayOf(now(), timeZone)}.csv`);
}
