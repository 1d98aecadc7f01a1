import { z } from 'zod';
import { known, knownLine, lines, saidLine } from '@/lib/commissions/input/atoms';
import { signatureFields } from '@/lib/commissions/input/signature';
import { taxWays } from '@/lib/commissions/rules/agreement/tax';
import { lineKinds } from '@/lib/commissions/rules/proposal/lines';
import { approvalWays } from '@/lib/commissions/rules/words';
import { dayInput } from '@/lib/dates/input';
import { centsInput, percentInput, someCentsInput } from '@/lib/money/input';
import { lengthInput } from '@/lib/units/input';
import { planFields, readPlan } from './terms';

const requestKey = z.uuid();
const commissionId = z.uuid();
const countMost = 5_000;

function count(least: number) {
  return z
    .string()
    .trim()
    .regex(/^\d{1,4}$/, 'Write a whole number.')
    .transform(Number)
    .refine((number) => number >= least && number <= countMost, {
      message: `From ${least} to ${countMost}.`,
    });
}

const hours = z
  .string()
  .trim()
  .regex(/^\d{1,4}(\.\d{1,2})?$/, 'Write hours, such as 6 or 2.5.');

const someCharge = centsInput.prefault('0');

/** What a price is built up from, as a form says it: also the address of the page that works it out. */
export const buildUpFields = {
  widthUm: lengthInput,
  heightUm: lengthInput,
  depthUm: lengthInput,
  pieces: count(1),
  coats: count(0),
  firings: count(0),
  design: hours,
  making: hours,
  glazing: hours,
  kiln: hours,
  assembly: hours,
  office: hours,
  framed: z.enum(['yes', 'no'], { error: 'Say whether it is framed.' }),
  otherCents: someCharge,
  crateCents: someCharge,
  freightCents: someCharge,
  travelCents: someCharge,
  installationCents: someCharge,
  /** The price she asks for; empty for the built-up one. */
  askedCents: known(someCentsInput),
  apart: z
    .preprocess(listOf, z.array(z.enum(lineKinds)))
    .transform((kinds) => lineKinds.filter((kind) => kinds.includes(kind))),
  designFeePercent: percentInput,
  designFeeCredited: z.enum(['yes', 'no']),
};

/** The numbers alone, for working a price out before anything is kept. */
export const buildUpInput = z.object(buildUpFields);

/** What working a price out takes. */
export type BuildUpFields = z.output<typeof buildUpInput>;

/** The form that keeps a proposal. */
export const writeProposalInput = z
  .strictObject({
    ...buildUpFields,
    ...planFields,
    requestKey,
    commissionId,
    understanding: lines,
    taxPlaceId: z.uuid({ error: 'Choose the place whose sales tax applies.' }),
    taxAs: z.enum(taxWays, { error: 'Say how the tax looks at it.' }),
    roundsIncluded: count(0),
    extraRoundCents: centsInput,
    readyFromOn: known(dayInput),
    readyToOn: known(dayInput),
    validUntilOn: dayInput,
    notIncluded: lines,
    terms: lines,
  })
  .transform((form, context) => {
    const read = readPlan(form);
    if ('fault' in read) {
      context.addIssue({ code: 'custom', path: [read.field], message: read.fault });
      return z.NEVER;
    }
    return { ...withoutPlanFields(form), plan: read.plan };
  })
  .superRefine((form, context) => {
    const { readyFromOn, readyToOn } = form;
    if (readyFromOn !== null && (readyToOn === null || readyToOn < readyFromOn)) {
      const message = 'A span goes from the earlier day to the later one.';
      context.addIssue({ code: 'custom', path: ['readyToOn'], message });
    }
  });

/** What keeping a proposal takes. */
export type WriteProposalInput = z.output<typeof writeProposalInput>;

/** The form that says how a proposal went out. */
export const sendProposalInput = z.strictObject({
  requestKey,
  commissionId,
  proposalId: z.uuid(),
  how: z.enum(['on their page', 'by mail', 'on paper'], { error: 'Say how it went out.' }),
});

/** What sending a proposal takes. */
export type SendProposalInput = z.output<typeof sendProposalInput>;

const answered = {
  requestKey,
  commissionId,
  proposalId: z.uuid(),
  contentSha256: z.string().regex(/^[0-9a-f]{64}$/, 'Look at the proposal again first.'),
  accepted: z.enum(['yes', 'no'], { error: 'Say yes or no.' }),
  words: knownLine,
};

/** The answer as it is written down at the gallery. */
export const noteAnswerInput = z.strictObject({
  ...answered,
  answeredBy: saidLine('Write who answered.'),
  how: z.enum(approvalWays, { error: 'Say how it was said.' }),
  answeredOn: dayInput,
});

/** The answer as the collector gives it on their own page: signed. */
export const answerProposalInput = z.strictObject({ ...answered, ...signatureFields });

/** What writing an answer down takes. */
export type NoteAnswerInput = z.output<typeof noteAnswerInput>;

/** What answering on their own page takes. */
export type AnswerProposalInput = z.output<typeof answerProposalInput>;

type PlanField = keyof typeof planFields;

function withoutPlanFields<Form extends Record<PlanField, unknown>>(
  form: Form,
): Omit<Form, PlanField> {
  const rest = Object.entries(form).filter(([name]) => !(name in planFields));
  return Object.fromEntries(rest) as Omit<Form, PlanField>;
}

function listOf(chosen: unknown): unknown[] {
  if (chosen === undefined || chosen === '') return [];
  return Array.isArray(chosen) ? (chosen as unknown[]) : [chosen];
}
