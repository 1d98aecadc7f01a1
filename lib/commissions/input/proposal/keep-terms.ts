import { z } from 'zod';
import { lines } from '@/lib/commissions/input/atoms';
import type { WorkKind } from '@/lib/commissions/rules/proposal/build-up';
import { hoursKept, rateKept } from '@/lib/commissions/rules/proposal/measures';
import type { CommissionTerms, PriceBasis } from '@/lib/commissions/rules/proposal/terms';
import { centsInput, percentInput } from '@/lib/money/input';
import { planFields, readPlan } from './terms';

const hours = z
  .string()
  .trim()
  .regex(/^\d{1,3}(\.\d{1,3})?$/, 'Write hours, such as 4 or 1.75.');
const rate = centsInput.refine((cents) => cents <= 10_000_000n, 'At most 100,000.00.');
const yesNo = z.enum(['yes', 'no'], { error: 'Say yes or no.' });
const twoPlaces = percentInput.refine((text) => /^\d+(\.\d{1,2})?$/.test(text), {
  message: 'At most two places after the point.',
});

function count(least: number, most: number) {
  return z
    .string()
    .trim()
    .regex(/^\d{1,3}$/, 'Write a whole number.')
    .transform(Number)
    .refine((number) => number >= least && number <= most, `From ${least} to ${most}.`);
}

/** The form of how the gallery prices and agrees; rates are for the measures that `unit` names. */
export const keepCommissionTermsInput = z
  .strictObject({
    ...planFields,
    requestKey: z.uuid(),
    unit: z.enum(['in', 'mm']),
    paperSize: z.enum(['letter', 'a4'], { error: 'Choose the paper.' }),
    hourCents: rate,
    ...{ design: hours, making: hours, glazing: hours, kiln: hours, assembly: hours },
    office: hours,
    ...{ clayCents: rate, glazeCents: rate, firingCents: rate, boardCents: rate, frameCents: rate },
    ...{ lossPercent: twoPlaces, overheadPercent: twoPlaces },
    ...{ contingencyPercent: twoPlaces, marginPercent: twoPlaces },
    ...{ shallowCents: rate, middleCents: rate, deepCents: rate },
    designFeePercent: twoPlaces,
    designFeeCredited: yesNo,
    roundsIncluded: count(0, 20),
    extraRoundCents: rate,
    validDays: count(1, 365),
    answerDays: count(1, 120),
    cancelMakingPercent: twoPlaces,
    cancelFinishedPercent: twoPlaces,
    colourLimit: twoPlaces,
    ...{ terms: lines, notIncluded: lines },
  })
  .transform((form, context) => {
    const read = readPlan(form);
    if ('fault' in read) {
      context.addIssue({ code: 'custom', path: [read.field], message: read.fault });
      return z.NEVER;
    }
    const { requestKey, paperSize } = form;
    const terms: CommissionTerms = { ...restOf(form), plan: read.plan, basis: basisOf(form) };
    return { requestKey, paperSize, terms };
  });

/** What keeping the terms takes. */
export type KeepCommissionTermsInput = z.output<typeof keepCommissionTermsInput>;

type BasisForm = Record<WorkKind, string> &
  Pick<PriceBasis, 'lossPercent' | 'overheadPercent' | 'contingencyPercent' | 'marginPercent'> &
  Pick<PriceBasis, 'hourCents' | 'firingCents'> &
  Record<'clayCents' | 'glazeCents' | 'boardCents' | 'frameCents', bigint> &
  Record<'shallowCents' | 'middleCents' | 'deepCents', bigint> & { unit: 'in' | 'mm' };

function basisOf(form: BasisForm): PriceBasis {
  const { unit, hourCents, firingCents } = form;
  const area = (cents: bigint) => rateKept(cents, 'area', unit);
  const { lossPercent, overheadPercent, contingencyPercent, marginPercent } = form;
  return {
    ...{ hourCents, firingCents },
    hoursPerM2: {
      design: hoursKept(form.design, unit),
      making: hoursKept(form.making, unit),
      glazing: hoursKept(form.glazing, unit),
      kiln: hoursKept(form.kiln, unit),
      assembly: hoursKept(form.assembly, unit),
      office: hoursKept(form.office, unit),
    },
    clayCentsPerKg: rateKept(form.clayCents, 'weight', unit),
    glazeCentsPerM2: area(form.glazeCents),
    boardCentsPerM2: area(form.boardCents),
    frameCentsPerM: rateKept(form.frameCents, 'length', unit),
    ...{ lossPercent, overheadPercent, contingencyPercent, marginPercent },
    areaCentsPerM2: [area(form.shallowCents), area(form.middleCents), area(form.deepCents)],
  };
}

type RestForm = Omit<CommissionTerms, 'basis' | 'plan' | 'designFeeCredited'> & {
  designFeeCredited: 'yes' | 'no';
};

function restOf(form: RestForm): Omit<CommissionTerms, 'basis' | 'plan'> {
  const { designFeePercent, roundsIncluded, extraRoundCents, validDays, answerDays } = form;
  const { cancelMakingPercent, cancelFinishedPercent, colourLimit, terms, notIncluded } = form;
  return {
    ...{ designFeePercent, designFeeCredited: form.designFeeCredited === 'yes' },
    ...{ roundsIncluded, extraRoundCents, validDays, answerDays, colourLimit },
    ...{ cancelMakingPercent, cancelFinishedPercent, terms, notIncluded },
  };
}
