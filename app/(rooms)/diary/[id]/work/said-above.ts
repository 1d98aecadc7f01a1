import { handOverBody } from '@/lib/commissions/rules/agreement/hand-over';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { textOf, type DayShown } from './day-shown';

/** What stands above a signature on the device, and its words. */
export type SaidAbove = {
  signedName: string;
  parts: number | null;
  fixings: string;
  careGiven: boolean;
  remarks: string;
  readOn: Day;
  words: string;
};

/**
 * What the form says that is signed, with what is to be put right among the remarks. A form that
 * nobody touched yet says what is known.
 */
export function saidAbove(
  form: FormData,
  day: Pick<DayShown, 'handOverFacts' | 'zone'>,
  { snags, careTold }: { snags: readonly string[]; careTold: boolean },
): SaidAbove {
  const facts = day.handOverFacts;
  const isTouched = form.has('signedName');
  const signedName = isTouched ? textOf(form, 'signedName') : (facts?.collector ?? '');
  const said = {
    signedName,
    parts: isTouched ? countOf(textOf(form, 'parts')) : (facts?.parts ?? null),
    fixings: isTouched ? textOf(form, 'fixings') : (facts?.fixings ?? ''),
    careGiven: isTouched ? form.get('careGiven') === 'yes' : careTold,
    remarks: [textOf(form, 'remarks'), ...snags].filter((each) => each !== '').join('; '),
    readOn: dayOf(now(), day.zone),
  };
  const words = facts
    ? handOverBody({ ...facts, ...said, takenBy: signedName, handedOn: said.readOn })
    : '';
  return { ...said, words };
}

function countOf(typed: string): number | null {
  return /^[1-9]\d{0,3}$/.test(typed) ? Number(typed) : null;
}
