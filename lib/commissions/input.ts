import { z } from 'zod';
import { collectorName } from '@/lib/collectors/input';
import { dayInput } from '@/lib/dates/input';
import { centsInput, percentInput, someCentsInput } from '@/lib/money/input';
import { routes } from '@/lib/studio/rules/routes';
import { lengthInput } from '@/lib/units/input';
import { approvalWays, exposures, paymentKinds, wallKinds } from './rules/words';

/** The most pictures that one request or one later addition takes. */
export const picturesMost = 8;
const linesMost = 4_000;
const lineMost = 160;

const requestKey = z.uuid();
const commissionId = z.uuid();

/** A line that has to be written. */
function saidLine(fault: string, most = lineMost) {
  return z.string().trim().min(1, fault).max(most, `Keep it to ${most} letters.`);
}

/** A field that may be left empty: null is "not known yet"; anything else goes to the schema. */
function known<Schema extends z.ZodType>(schema: Schema) {
  return z
    .string()
    .trim()
    .transform((text, context): z.output<Schema> | null => {
      if (text === '') return null;
      const read = schema.safeParse(text);
      if (read.success) return read.data;
      for (const { message } of read.error.issues) context.addIssue({ code: 'custom', message });
      return z.NEVER;
    })
    .prefault('');
}

const lines = z.string().trim().max(linesMost, 'Keep it to 4,000 letters.').prefault('');
const knownLine = known(z.string().max(lineMost, `Keep it to ${lineMost} letters.`));

/** Pictures from a form: none, one or several; an empty choice is none. */
const pictures = z
  .preprocess(
    (chosen) => (chosen === undefined ? [] : Array.isArray(chosen) ? chosen : [chosen]),
    z.array(z.instanceof(Blob, { error: 'Choose a picture.' })),
  )
  .transform((chosen) => chosen.filter((picture) => picture.size > 0))
  .refine((chosen) => chosen.length <= picturesMost, {
    message: `Bring in at most ${picturesMost} pictures at once.`,
  });

const onePicture = z.instanceof(Blob, { error: 'Choose the picture that is shown.' });

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
  wishedOn: known(dayInput),
  budgetFromCents: known(centsInput),
  budgetToCents: known(centsInput),
});

const mayStateNewCollector = {
  collectorId: known(z.uuid({ error: 'Choose the collector once more.' })),
  newName: known(collectorName),
  newPhone: known(z.string().max(40, 'Keep it to 40 letters.')),
  newEmail: known(z.email({ error: 'A mail address has one @ with something on both sides.' })),
};

/** The form that logs a request; the collector is one we know or a new one, by name. */
export const logCommissionInput = z.preprocess(
  withOwnUnit,
  requestFields
    .extend({ requestKey, pictures, ...mayStateNewCollector })
    .superRefine((form, context) => {
      if (form.collectorId === null && form.newName === null) {
        const message = 'Choose who asks for it, or write the name of someone new.';
        context.addIssue({ code: 'custom', path: ['newName'], message });
      }
      checkBudget(form, context);
    }),
);

/** The form that changes what is known of a request. */
export const changeRequestInput = z.preprocess(
  withOwnUnit,
  requestFields.extend({ requestKey, commissionId }).superRefine(checkBudget),
);

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
  caption: z.string().trim().max(lineMost).prefault(''),
  pictures: pictures.refine((chosen) => chosen.length > 0, { message: 'Choose a picture first.' }),
});

/** The form that writes down what was agreed: the deposit is an amount or a share of the whole. */
export const agreeInput = z
  .strictObject({
    requestKey,
    commissionId,
    priceCents: someCentsInput,
    depositAs: z.enum(['amount', 'percent'], { error: 'Say how the deposit is given.' }),
    depositText: z.string().trim().min(1, 'Write the deposit; 0 for none.'),
    taxPlaceId: z.uuid({ error: 'Choose the place whose sales tax applies.' }),
    promisedOn: known(dayInput),
    agreedOn: dayInput,
    agreedBy: saidLine('Write who agreed, as they sign.'),
  })
  .transform(({ depositAs, depositText, ...form }, context) => {
    const read = (depositAs === 'amount' ? centsInput : percentInput).safeParse(depositText);
    if (!read.success) {
      const message = read.error.issues[0]?.message ?? 'Write the deposit.';
      context.addIssue({ code: 'custom', path: ['depositText'], message });
      return z.NEVER;
    }
    const deposit =
      typeof read.data === 'bigint'
        ? { as: 'amount' as const, amountCents: read.data }
        : { as: 'percent' as const, percent: read.data };
    return { ...form, deposit };
  });

/** The form that shows a sketch. */
export const showSketchInput = z.strictObject({
  requestKey,
  commissionId,
  picture: onePicture,
  note: lines,
  shownOn: dayInput,
});

/** The form that shows a colour tile. */
export const showColourTileInput = z.strictObject({
  requestKey,
  commissionId,
  picture: onePicture,
  glazes: saidLine('Write the glazes in order, as on the back of the tile.', 400),
  shownOn: dayInput,
});

/** The form that writes down a yes; the hash says which picture was looked at. */
export const approveInput = z.strictObject({
  requestKey,
  commissionId,
  what: z.enum(['sketch', 'colour_tile']),
  shownId: z.uuid(),
  fileSha256: z.string().regex(/^[0-9a-f]{64}$/, 'Look at the sheet again first.'),
  approvedBy: saidLine('Write who said yes.'),
  how: z.enum(approvalWays, { error: 'Say how the yes was given.' }),
  approvedOn: dayInput,
});

/** The form that asks for money. */
export const askForMoneyInput = z.strictObject({
  requestKey,
  commissionId,
  name: saidLine('Say what it is for, such as Deposit.', 60),
  amountCents: someCentsInput,
  dueOn: dayInput,
});

/** The form that takes a payment. */
export const takePaymentInput = z.strictObject({
  requestKey,
  commissionId,
  instalmentId: known(z.uuid()),
  amountCents: someCentsInput,
  kind: z.enum(paymentKinds, { error: 'Say how it was paid.' }),
  reference: z.string().trim().max(60, 'Keep it to 60 letters.').prefault(''),
  paidBy: saidLine('Write who paid.'),
});

const why = saidLine('Say why, in a few words.', 600).min(3, 'Say why, in a few words.');

/** The form by which the owner lets the making begin. */
export const letMakingBeginInput = z.strictObject({ requestKey, commissionId, why });

/** The form that ends a commission early. */
export const endCommissionInput = z.strictObject({
  requestKey,
  commissionId,
  why,
  endedOn: dayInput,
});

/** The form that hands a piece over. */
export const handOverInput = z.strictObject({
  requestKey,
  commissionId,
  signedBy: saidLine('Write who signs for it.'),
  handedOn: dayInput,
});

const partsMost = 2_000;

/** The form that opens the job of a commission. */
export const openCommissionJobInput = z.strictObject({
  requestKey,
  commissionId,
  technique: z.literal(Object.keys(routes) as (keyof typeof routes)[], {
    error: 'Say how it is made.',
  }),
  pieces: z
    .string()
    .trim()
    .regex(/^\d{1,4}$/, 'Write how many parts, in figures.')
    .transform((text) => Number(text))
    .refine((count) => count >= 1 && count <= partsMost, {
      message: `From 1 to ${partsMost} parts.`,
    }),
  neededOn: known(dayInput),
});

/** What logging a request takes. */
export type LogCommissionInput = z.output<typeof logCommissionInput>;
/** What a request says; null is "not known yet". */
export type RequestFields = z.output<typeof requestFields>;
/** What changing a request takes. */
export type ChangeRequestInput = z.output<typeof changeRequestInput>;
/** What adding pictures takes. */
export type AddPicturesInput = z.output<typeof addPicturesInput>;
/** What writing down an agreement takes. */
export type AgreeInput = z.output<typeof agreeInput>;
/** What showing a sketch takes. */
export type ShowSketchInput = z.output<typeof showSketchInput>;
/** What showing a colour tile takes. */
export type ShowColourTileInput = z.output<typeof showColourTileInput>;
/** What writing down a yes takes. */
export type ApproveInput = z.output<typeof approveInput>;
/** What asking for money takes. */
export type AskForMoneyInput = z.output<typeof askForMoneyInput>;
/** What taking a payment takes. */
export type TakePaymentInput = z.output<typeof takePaymentInput>;
/** What letting the making begin takes. */
export type LetMakingBeginInput = z.output<typeof letMakingBeginInput>;
/** What ending a commission takes. */
export type EndCommissionInput = z.output<typeof endCommissionInput>;
/** What handing over takes. */
export type HandOverInput = z.output<typeof handOverInput>;
/** What opening its job takes. */
export type OpenCommissionJobInput = z.output<typeof openCommissionJobInput>;
