import { icsAnswer } from '@/app/ics-answer';
import { originOf } from '@/app/origin';
import { appointmentsForCalendar } from '@/lib/installation/reads/calendar/appointments';
import { noteFeedUse, openFeed } from '@/lib/installation/reads/calendar/open-feed';
import { calendarStretch } from '@/lib/installation/rules/calendar/feed';
import { eventForStaff } from '@/lib/installation/rules/calendar/told';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

type Context = Readonly<{ params: Promise<{ secret: string }> }>;

/**
 * Somebody's calendar, for their telephone to fetch: opens by the secret in its address alone, and
 * tells of nobody else's days.
 */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const feed = await openFeed((await params).secret);
  if (!feed) {
    return new Response(null, { status: 404, headers: { 'Cache-Control': 'no-store' } });
  }
  const at = now();
  await noteFeedUse(feed, at);
  const { name, timeZone: zone, lengthUnit } = await getGallery();
  const appointments = await appointmentsForCalendar(feed.staffId, calendarStretch(at, zone));
  const system = lengthUnit === 'in' ? 'lb' : 'kg';
  const manner = { zone, system, origin: originOf(request.headers) } as const;
  const events = appointments.map((each) => eventForStaff(each, manner));
  const file = { name: `${feed.staffName} at ${name}`, zone, method: null, at, events };
  return icsAnswer(file, 'diary');
}
