import { z } from 'zod';
import { lines, saidLine } from '@/lib/commissions/input/atoms';
import { daysMost } from '@/lib/installation/rules/offers/days';
import { dayInput, timeInput } from '@/lib/dates/input';
import { parseDay, type Day } from '@/lib/dates/rules';
import { crewIds, minutesOfWay, words, wordsOf } from '@/lib/installation/input/diary/atoms';

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

/** A free time as the page proposes it: its day and the hour at which it begins. */
const slot = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2} ([01]\d|2[0-3]):[0-5]\d$/, 'Choose times from the page.')
  .transform((text) => ({ day: text.slice(0, 10), from: text.slice(11) }));
const slots = z.union([slot.transform((one) => [one]), z.array(slot).max(200)]).default([]);

/** What days can be offered for. */
export const offeredKinds = ['hanging', 'delivery', 'site_visit', 'fetching'] as const;

/** What days are offered of, and by whom they are kept. */
const offered = {
  kind: z.enum(offeredKinds, { error: 'Choose what it is.' }),
  leadId: z.uuid('Choose who leads it.'),
  crewIds,
  hours: minutes,
  address: saidLine('Write where it is, so that the van finds it.', 200),
  travelMinutes: minutesOfWay,
};

/** Days from which the collector chooses: one to six, each with the hour at which it begins. */
export const offerDaysInput = z
  .strictObject({
    requestKey: z.uuid(),
    commissionId: z.uuid(),
    ...offered,
    note: lines,
    slot: slots,
    ...dayFields,
    ...words,
  })
  .transform(wordsOf)
  .transform(({ hours, slot: ticked, words: said, ...form }, context) => {
    const { requestKey, commissionId, kind, leadId, crewIds: crew, ...more } = form;
    const { address, travelMinutes, note, ...rest } = more;
    const days: { day: Day; from: string }[] = [];
    for (const { day, from } of ticked) {
      const read = parseDay(day);
      if (read.ok) days.push({ day: read.value, from });
    }
    days.push(...typedDays(rest, context));
    if (days.length === 0) {
      context.addIssue({ code: 'custom', path: ['day.1'], message: 'Offer one day at least.' });
    }
    if (days.length > daysMost) {
      const message = `Offer ${daysMost} days at most, so that choosing stays easy.`;
      context.addIssue({ code: 'custom', path: ['slot'], message });
    }
    const whole = { requestKey, commissionId, kind, leadId, crewIds: crew, address, note };
    return { ...whole, travelMinutes, minutes: hours, days, words: said };
  });
/** What {@link offerDaysInput} reads. */
export type OfferDaysInput = z.output<typeof offerDaysInput>;

type Issues = { addIssue: (issue: { code: 'custom'; path: string[]; message: string }) => void };

/** Days that were written by hand. */
function typedDays(
  fields: Record<string, string | null>,
  context: Issues,
): { day: Day; from: string }[] {
  const days: { day: Day; from: string }[] = [];
  for (const at of places) {
    const [day, from] = [fields[`day.${at}`] ?? null, fields[`from.${at}`] ?? null];
    if (day === null) continue;
    if (from !== null) {
      const read = parseDay(day);
      if (read.ok) days.push({ day: read.value, from });
    } else {
      const message = 'Write when it begins.';
      context.addIssue({ code: 'custom', path: [`from.${at}`], message });
    }
  }
  return days;
}

/** What free times are looked for, as the address of the page says it. */
export const slotWishInput = z
  .object({
    kind: z.enum(offeredKinds).catch('hanging'),
    leadId: z.string().catch(''),
    crewIds: crewIds.catch([]),
    hours: minutes.catch(180),
    address: z.string().max(200).catch(''),
    travelMinutes: minutesOfWay.catch(0),
    fromOn: dayOrEmpty.catch(null),
    untilOn: dayOrEmpty.catch(null),
  })
  .transform(({ hours, ...wish }) => ({ ...wish, minutes: hours }));
/** What {@link slotWishInput} reads. */
export type SlotWishInput = z.output<typeof slotWishInput>;

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
