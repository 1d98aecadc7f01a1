import { z } from 'zod';
import { collectorName } from '@/lib/collectors/input';
import { bandOf } from '@/lib/commissions/rules/enquiry/bands';
import { sunKinds } from '@/lib/commissions/rules/enquiry/words';
import { exposures, wallKinds } from '@/lib/commissions/rules/words';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { plainCents } from '@/lib/money/rules';
import { lengthInput } from '@/lib/units/input';
import { knownYesNo } from './enquiry/answers';
import { checkReferral, referralFields, type ReferralSaid } from './enquiry/referral';
import { known, knownLine, lineLengthMost, lines, pictures, saidLine } from './atoms';

const requestKey = z.uuid();
const commissionId = z.uuid();

const accessMost = 600;

/** What a collector asked for, without the pictures; every field may be null: "not known yet". */
export const requestFields = z.strictObject({
  title: saidLine('Give it a title to find it by, such as Herons for the stair.'),
  wish: lines,
  avoid: lines,
  colours: lines,
  room: knownLine,
  wall: known(z.enum(wallKinds, { error: 'Choose what the wall is made of.' })),
  exposure: known(z.enum(exposures, { error: 'Choose where it will live.' })),
  siteAddress: knownLine,
  widthUm: known(lengthInput),
  heightUm: known(lengthInput),
  depthUm: known(lengthInput),
  hangHeightUm: known(lengthInput),
  wishedOn: known(dayInput),
  wishedWhy: knownLine,
  isDeadline: knownYesNo,
  budgetFromCents: known(centsInput),
  budgetToCents: known(centsInput),
  decides: knownLine,
  pays: knownLine,
  wallOwner: knownLine,
  freezes: knownYesNo,
  sun: known(z.enum(sunKinds, { error: 'Choose how much sun it gets.' })),
  forFood: knownYesNo,
  access: known(z.string().max(accessMost, `Keep it to ${accessMost} letters.`)),
  bodyId: known(z.uuid({ error: 'Choose the clay body once more.' })),
  foundUs: knownLine,
});

const mayStateNewCollector = {
  collectorId: known(z.uuid({ error: 'Choose the collector once more.' })),
  newName: known(collectorName),
  newPhone: known(z.string().max(40, 'Keep it to 40 letters.')),
  newEmail: known(z.email({ error: 'A mail address has one @ with something on both sides.' })),
};

/** The form that logs a request; the collector is one we know or a new one, by name. */
export const logCommissionInput = z.preprocess(
  asTyped,
  requestFields
    .extend({ requestKey, pictures, ...mayStateNewCollector, ...referralFields })
    .superRefine(checkRequest)
    .refine((form) => form.collectorId !== null || form.newName !== null, {
      path: ['newName'],
      message: 'Choose who asks for it, or write the name of someone new.',
      // Told at once with every other fault, not only when the rest is right.
      when: () => true,
    }),
);

/** The form that changes what is known of a request. */
export const changeRequestInput = z.preprocess(
  asTyped,
  requestFields.extend({ requestKey, commissionId, ...referralFields }).superRefine(checkRequest),
);

function asTyped(form: unknown): unknown {
  return withChosenBand(withOwnUnit(form));
}

/** A band that was chosen says both figures; whatever else stands there leaves them as they are. */
function withChosenBand(form: unknown): unknown {
  if (typeof form !== 'object' || form === null || !('budgetBand' in form)) return form;
  const { budgetBand, ...fields } = form;
  const band = typeof budgetBand === 'string' ? bandOf(budgetBand) : null;
  if (!band) return fields;
  const { fromCents, toCents } = band;
  return { ...fields, budgetFromCents: plainCents(fromCents), budgetToCents: plainCents(toCents) };
}

/** Where the gallery measures in millimetres, a bare number means those. */
function withOwnUnit(form: unknown): unknown {
  if (typeof form !== 'object' || form === null || !('lengthUnit' in form)) return form;
  const { lengthUnit, ...fields } = form;
  if (lengthUnit !== 'mm') return fields;
  const measured = Object.entries(fields).map(([name, value]: [string, unknown]) => {
    const isBare = name.endsWith('Um') && typeof value === 'string' && /^\s*[\d.]+\s*$/.test(value);
    return [name, isBare ? `${value} mm` : value];
  });
  return Object.fromEntries(measured) as unknown;
}

type Budget = { budgetFromCents: bigint | null; budgetToCents: bigint | null };

function checkRequest(form: Budget & ReferralSaid, context: z.core.$RefinementCtx): void {
  checkBudget(form, context);
  checkReferral(form, context);
}

function checkBudget(form: Budget, context: z.core.$RefinementCtx): void {
  const { budgetFromCents, budgetToCents } = form;
  if (budgetToCents !== null && budgetToCents < (budgetFromCents ?? 0n)) {
    const message = 'The budget goes from the smaller amount to the larger one.';
    context.addIssue({ code: 'custom', path: ['budgetToCents'], message });
  }
}

/** The form that adds pictures to a request later. */
export const addPicturesInput = z.strictObject({
  requestKey,
  commissionId,
  caption: z.string().trim().max(lineLengthMost).prefault(''),
  pictures: pictures.refine((chosen) => chosen.length > 0, { message: 'Choose a picture first.' }),
});

/** What logging a request takes. */
export type LogCommissionInput = z.output<typeof logCommissionInput>;

/** What a request says; null is "not known yet". */
export type RequestFields = z.output<typeof requestFields>;

/** What changing a request takes. */
export type ChangeRequestInput = z.output<typeof changeRequestInput>;

/** What adding pictures takes. */
export type AddPicturesInput = z.output<typeof addPicturesInput>;
