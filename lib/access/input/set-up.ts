import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { isZone } from '@/lib/dates/rules';
import { ratePercentInput, roundByInput } from '@/lib/tax/input';
import { personNameInput, signInNameInput } from '../input';

const short = z.string().trim().max(120);
const galleryName = z.string().trim().min(1, 'Write the name as it stands on the door.').max(120);
const authority = z.string().trim().min(1).max(80);
const zone = z
  .string()
  .max(60)
  .refine((name) => isZone(name), 'Choose a time zone from the list.');

/** How many authorities the first run has room for; more can be added later. */
export const firstRates = 4;

const rateRow = { authority: short.default(''), ratePercent: z.string().max(12).default('') };

/** The one form of the first run. Rate rows that are left empty are left out. */
export const firstRunInput = z
  .strictObject({
    galleryName,
    timeZone: zone,
    state: short,
    authority1: rateRow.authority,
    rate1: rateRow.ratePercent,
    authority2: rateRow.authority,
    rate2: rateRow.ratePercent,
    authority3: rateRow.authority,
    rate3: rateRow.ratePercent,
    authority4: rateRow.authority,
    rate4: rateRow.ratePercent,
    ownerName: personNameInput,
    signInName: signInNameInput,
    password: z.string().min(1).max(256),
  })
  .transform((form, context) => {
    const rows = [
      { authority: form.authority1, rate: form.rate1.trim() },
      { authority: form.authority2, rate: form.rate2.trim() },
      { authority: form.authority3, rate: form.rate3.trim() },
      { authority: form.authority4, rate: form.rate4.trim() },
    ];
    const rates = rows.flatMap((row, at) => {
      if (row.authority === '' && row.rate === '') return [];
      const rate = ratePercentInput.safeParse(row.rate);
      const path = rate.success ? [`authority${at + 1}`] : [`rate${at + 1}`];
      const message = rate.success ? 'Say whose rate this is.' : rate.error.issues[0]?.message;
      if (rate.success && row.authority !== '') {
        return [{ authority: row.authority, ratePercent: rate.data }];
      }
      context.addIssue({ code: 'custom', path, message: message ?? 'Look at this rate again.' });
      return [];
    });
    const { galleryName: name, timeZone, state, ownerName, signInName, password } = form;
    return { name, timeZone, state, rates, ownerName, signInName, password };
  });
export type FirstRunInput = z.output<typeof firstRunInput>;

/** How the gallery works: name, address, units, and the basis of rounding. */
export const galleryInput = z.strictObject({
  requestKey: z.uuid(),
  name: galleryName,
  tagline: short,
  street: short,
  city: short,
  state: short,
  postcode: z.string().trim().max(20),
  phone: z.string().trim().max(40),
  email: z.union([z.literal(''), z.email('Write a mail address, such as wren@example.org.')]),
  lengthUnit: z.enum(['in', 'mm'], { error: 'Choose inches or millimetres.' }),
  roundTaxBy: roundByInput,
});
export type GalleryInput = z.infer<typeof galleryInput>;

/** One authority's rate at a place, from a day on. */
export const newRateInput = z.strictObject({
  requestKey: z.uuid(),
  placeId: z.uuid(),
  authority,
  ratePercent: ratePercentInput,
  fromOn: dayInput,
});
export type NewRateInput = z.infer<typeof newRateInput>;

/** The day from which an authority takes nothing more. */
export const endRateInput = z.strictObject({
  requestKey: z.uuid(),
  rateId: z.uuid(),
  untilOn: dayInput,
});
export type EndRateInput = z.infer<typeof endRateInput>;
