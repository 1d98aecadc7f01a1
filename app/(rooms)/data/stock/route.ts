import { requireActor } from '@/lib/access/reads';
import { stockFile } from '@/lib/data/reads/take-out';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { csvAnswer } from '../csv-answer';

/** Every piece with its price and where it stands as a CSV file. */
export async function GET(): Promise<Response> {
  const actor = await requireActor('data.take_out');
  const { timeZone } = await getGallery();
  return csvAnswer(await stockFile(actor), `stock-${dayOf(now(), timeZone)}.csv`);
}
