import { z } from 'zod';
import { lines, saidLine } from '@/lib/commissions/input/atoms';
import { daysMost } from '@/lib/installation/rules/offers/days';
import { dayInput, timeInput } from '@/lib/dates/input';
import type { Day } from '@/lib/dates/rules';

const places = Array.from({ length: daysMost }, (_, at) => at + 1);
const empty = z.literal('').transform(() => null);
const dayOrEmpty = z.union([empty, dayInput]).prefault('');
const timeOrEmpty = z.union([empty, timeInput]).prefault('');

type DayFields = Record<`day.${number}`, typeof dayOrEmpty> &
  Record<`from.${number}`, typeof timeOrEmpty>;

const dayFields: DayFields = {};
for (const at of places) {
  dayFields[`day.${at}`] = dayOrEmpty;
  dayFields[`from.${at}`] = timeOrEmpty;
}

/** How long it takes, in minutes: a quarter of an hour to twelve hours. */
const minutes = z
  .string()
  .trim()
  .regex(/^\d{1,2}([.,]\d{1,2})?$/, 'Write the hours it takes, such as 3 or 1.5.')
  .transform((text) => Math.round(Number(text.replace(',', '.')) * 60))
  .refine((each) => each >= 15 && each <= 720, 'It takes a quarter of an hour to twelve hours.');

/** Days from which the collector chooses: one to six, each with the hour at which it begins. */
export const offerDaysInput = z
  .strictObject({
    requestKey: z.uuid(),
    commissionId: z.uuid(),
    kind: z.enum(['hanging', 'delivery'], { error: 'Choose what it is.' }),
    leadId: z.uuid('Choose who leads it.'),
    hours: minutes,
    address: saidLine('Write where it is, so that the van finds it.', 200),
    note: lines,
    ...dayFields,
  })
  .transform(({ hours, ...form }, context) => {
    const { requestKey, commissionId, kind, leadId, address, note, ...rest } = form;
    const fields: Record<string, string | null> = rest;
    const days: { day: Day; from: string }[] = [];
    for (const at of places) {
      const [day, from] = [fields[`day.${at}`] ?? null, fields[`from.${at}`] ?? null];
      if (day === null) continue;
      if (from === null) {
        const message = 'Write when it begins.';
        context.addIssue({ code: 'custom', path: [`from.${at}`], message });
      } else days.push({ day: day as Day, from });
    }
    if (days.length === 0) {
      context.addIssue({ code: 'custom', path: ['day.1'], message: 'Offer one day at least.' });
    }
    return { requestKey, commissionId, kind, leadId, minutes: hours, address, note, days };
  });
/** What {@link offerDaysInput} reads. */
export type OfferDaysInput = z.output<typeof offerDaysInput>;

/** The collector chooses one of the days. */
export const chooseDayInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
  offerId: z.uuid(),
  position: z
    .string('Choose one of the days.')
    .regex(/^[1-6]$/, 'Choose one of the days.')
    .transform(Number),
});
/** What {@link chooseDayInput} reads. */
export type ChooseDayInput = z.output<typeof chooseDayInput>;

/** Days are no longer offered. */
export const withdrawDaysInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
  offerId: z.uuid(),
});
/** What {@link withdrawDaysInput} reads. */
export type WithdrawDaysInput = z.output<typeof withdrawDaysInput>;
