import { z } from 'zod';
import { dayInput, timeInput } from '@/lib/dates/input';
import { minuteOf, type WorkDay } from '@/lib/installation/rules/crew/hours';
import { minutesOfWay } from '@/lib/installation/input/diary/atoms';

const empty = z.literal('').transform(() => null);
const timeOrEmpty = z.union([empty, timeInput]).prefault('');

/** The weekdays as the form lists them, Monday first; 0 is Sunday. */
export const weekdaysInOrder = [1, 2, 3, 4, 5, 6, 0] as const;

type HourFields = Record<`from.${number}` | `to.${number}`, typeof timeOrEmpty>;

const hourFields: HourFields = {};
for (const weekday of weekdaysInOrder) {
  hourFields[`from.${weekday}`] = timeOrEmpty;
  hourFields[`to.${weekday}`] = timeOrEmpty;
}

/** When somebody works by weekday; a day left empty is a day on which they do not. */
export const keepHoursInput = z
  .strictObject({ requestKey: z.uuid(), staffId: z.uuid(), ...hourFields })
  .transform(({ requestKey, staffId, ...form }, context) => {
    const fields: Record<string, string | null> = form;
    const workDays: WorkDay[] = [];
    for (const weekday of weekdaysInOrder) {
      const [from, to] = [fields[`from.${weekday}`] ?? null, fields[`to.${weekday}`] ?? null];
      if (from === null && to === null) continue;
      if (from === null || to === null) {
        const path = [`${from === null ? 'from' : 'to'}.${weekday}`];
        context.addIssue({ code: 'custom', path, message: 'Write both times, or none.' });
        continue;
      }
      const [fromMinute, toMinute] = [minuteOf(from), minuteOf(to)];
      if (fromMinute < toMinute) workDays.push({ weekday, fromMinute, toMinute });
      else {
        const message = 'This must be later than the time before it.';
        context.addIssue({ code: 'custom', path: [`to.${weekday}`], message });
      }
    }
    return { requestKey, staffId, workDays };
  });
/** What {@link keepHoursInput} reads. */
export type KeepHoursInput = z.output<typeof keepHoursInput>;

/** Days on which somebody is away; one day alone where no last one is given. */
export const addAbsenceInput = z
  .strictObject({
    requestKey: z.uuid(),
    staffId: z.uuid(),
    fromOn: dayInput,
    toOn: z.union([empty, dayInput]).prefault(''),
    why: z.string().trim().max(200, 'Say it in fewer words.').default(''),
  })
  .transform(({ toOn, ...form }) => ({ ...form, toOn: toOn ?? form.fromOn }))
  .refine(({ fromOn, toOn }) => fromOn <= toOn, {
    path: ['toOn'],
    message: 'The last day comes after the first.',
  });
/** What {@link addAbsenceInput} reads. */
export type AddAbsenceInput = z.output<typeof addAbsenceInput>;

/** An absence that does not take place. */
export const withdrawAbsenceInput = z.strictObject({ requestKey: z.uuid(), absenceId: z.uuid() });
/** What {@link withdrawAbsenceInput} reads. */
export type WithdrawAbsenceInput = z.output<typeof withdrawAbsenceInput>;

const placeName = z
  .string()
  .trim()
  .min(3, 'Write the address as it stands in the diary.')
  .max(200, 'Say it in fewer words.');

/** How long the way between two places takes. */
export const keepWayInput = z.strictObject({
  requestKey: z.uuid(),
  from: placeName,
  to: placeName,
  minutes: minutesOfWay,
});
/** What {@link keepWayInput} reads. */
export type KeepWayInput = z.output<typeof keepWayInput>;
