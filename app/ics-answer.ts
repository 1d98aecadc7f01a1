import 'server-only';
import { calendarText, type CalendarFile } from '@/lib/installation/rules/calendar/file';

/**
 * A calendar file as an answer that nobody on the way keeps. What the file does stands in its type
 * too.
 *
 * @source RFC 5545, section 3.7.2: the method of the type is that of the file
 */
export function icsAnswer(file: CalendarFile, name: string): Response {
  const method = file.method === null ? '' : `; method=${file.method}`;
  return new Response(calendarText(file), {
    headers: {
      'Content-Type': `text/calendar; charset=utf-8${method}`,
      'Content-Disposition': `inline; filename="${name}.ics"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
