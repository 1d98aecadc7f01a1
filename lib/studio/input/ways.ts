import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput, percentInput } from '@/lib/money/input';
import { lengthInputIn } from '@/lib/units/input';

const requestKey = z.uuid();

const drying = z
  .string()
  .trim()
  .regex(/^\d{2,3}$/, 'Write it in a hundred, such as 120.')
  .transform(Number)
  .refine((percent) => percent >= 20 && percent <= 400, 'From 20 to 400.');

/** The months by number, as the form names their drying: `dry1` for January. */
export const dryingFields = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11', '12'].map(
  (month) => `dry${month}`,
);

/**
 * How the studio works, from its form; a length without a unit is in the gallery's own.
 *
 * @returns a schema; the weekdays come ticked, one or more of 1 (Monday) to 7
 */
export function waysInputIn(unit: 'in' | 'mm') {
  const weekday = z.enum(['1', '2', '3', '4', '5', '6', '7']);
  return z
    .looseObject({
      requestKey,
      closedWeekdays: z.union([weekday.transform((one) => [one]), z.array(weekday)]).default([]),
      promiseInHundred: z
        .string()
        .trim()
        .regex(/^\d{2}$/, 'Write it in a hundred, such as 80.')
        .transform(Number)
        .refine((sure) => sure >= 50 && sure <= 99, 'From 50 to 99.'),
      startInHundred: percentInput.refine(
        (sure) => Number(sure) >= 50 && Number(sure) <= 99.99,
        'From 50 to 99.99.',
      ),
      roomAroundUm: lengthInputIn(unit),
      centsPerHour: centsInput,
      overheadPercent: percentInput,
      glazeCentsPerM2: centsInput,
      degrees: z.enum(['F', 'C']),
    })
    .transform((form, context) => {
      const dryingPercents = dryingFields.map((name) => {
        const read = drying.safeParse(form[name]);
        if (read.success) return read.data;
        const message = read.error.issues[0]?.message ?? '';
        context.addIssue({ code: 'custom', path: [name], message });
        return 100;
      });
      const closedWeekdays = [...new Set(form.closedWeekdays)].map(Number).toSorted();
      if (closedWeekdays.length === 7) {
        const message = 'Leave at least one day open.';
        context.addIssue({ code: 'custom', path: ['closedWeekdays'], message });
      }
      const { promiseInHundred, startInHundred, roomAroundUm, centsPerHour, degrees } = form;
      const { overheadPercent, glazeCentsPerM2 } = form;
      return {
        ...{ requestKey: form.requestKey, closedWeekdays, dryingPercents, promiseInHundred },
        ...{
          startInHundred,
          roomAroundUm,
          centsPerHour,
          overheadPercent,
          glazeCentsPerM2,
          degrees,
        },
      };
    });
}
/** What {@link waysInputIn} reads. */
export type WaysInput = z.output<ReturnType<typeof waysInputIn>>;

/** Days on which the studio stands still. */
export const closeDaysInput = z
  .strictObject({
    requestKey,
    fromOn: dayInput,
    toOn: dayInput,
    why: z.string().trim().max(120, 'Say it in fewer words.').default(''),
  })
  .refine(({ fromOn, toOn }) => fromOn <= toOn, {
    path: ['toOn'],
    message: 'Not before the first day.',
  });
/** What {@link closeDaysInput} reads. */
export type CloseDaysInput = z.output<typeof closeDaysInput>;

/** Closed days that are open after all. */
export const openDaysInput = z.strictObject({ requestKey, closedId: z.uuid() });
/** What {@link openDaysInput} reads. */
export type OpenDaysInput = z.output<typeof openDaysInput>;

/** A bench, new or changed. */
export const keepBenchInput = z.strictObject({
  requestKey,
  benchId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
  name: z.string().trim().min(2, 'Give it a name.').max(60, 'Say it in fewer words.'),
  atOnce: z
    .string()
    .trim()
    .regex(/^\d{1,2}$/, 'Write how many, such as 2.')
    .transform(Number)
    .refine((jobs) => jobs >= 1, 'At least one.'),
});
/** What {@link keepBenchInput} reads. */
export type KeepBenchInput = z.output<typeof keepBenchInput>;

/** A bench that is taken away. */
export const endBenchInput = z.strictObject({ requestKey, benchId: z.uuid() });
/** What {@link endBenchInput} reads. */
export type EndBenchInput = z.output<typeof endBenchInput>;
