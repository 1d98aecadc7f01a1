import { z } from 'zod';
import { icsAnswer } from '@/app/ics-answer';
import { calendarForCollector } from '@/lib/installation/reads/calendar/appointments';
import { theirEvent, methodOf } from '@/lib/installation/rules/calendar/told';
import { openForFile } from '../../../../open-page';

type Context = { params: Promise<{ token: string; id: string }> };

/** The collector's day as a file for their own calendar; of this address's commission alone. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const page = await openForFile(params);
  const id = z.uuid().safeParse((await params).id);
  const told =
    page && id.success ? await calendarForCollector(page.link.commissionId, id.data) : null;
  if (!page || !told) return new Response('No such day is kept here.', { status: 404 });
  const { gallery, at } = page;
  const { name, timeZone: zone } = gallery;
  const events = [theirEvent(told, gallery)];
  return icsAnswer({ name, zone, method: methodOf(told), at, events }, 'your-day');
}
