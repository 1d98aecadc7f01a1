import { notFound } from 'next/navigation';
import { z } from 'zod';
import { icsAnswer } from '@/app/ics-answer';
import { originOf } from '@/app/origin';
import { requireActor } from '@/lib/access/reads';
import { appointmentForCalendar } from '@/lib/installation/reads/calendar/appointments';
import { eventForStaff, methodOf } from '@/lib/installation/rules/calendar/told';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

type Context = Readonly<{ params: Promise<{ id: string }> }>;

/** One appointment as a calendar file, for whoever works here. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  await requireActor('diary.see');
  const id = z.uuid().safeParse((await params).id);
  const told = id.success ? await appointmentForCalendar(id.data) : null;
  if (!told) notFound();
  const { name, timeZone: zone, lengthUnit } = await getGallery();
  const system = lengthUnit === 'in' ? 'lb' : 'kg';
  const event = eventForStaff(told, { zone, system, origin: originOf(request.headers) });
  const file = { name, zone, method: methodOf(told), at: now(), events: [event] };
  return icsAnswer(file, `${told.kind}-${told.id}`);
}
