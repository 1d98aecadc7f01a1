import { lineWords, type CommissionLineKind } from '@/lib/commissions/rules/proposal/lines';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import type { PlanEvent } from '@/lib/commissions/rules/facts';
import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents, type Currency } from '@/lib/money/rules';
import { stopped } from './words';

/** Everything that a change order says. */
export type ChangeSaid = {
  readonly commissionNumber: number;
  readonly number: number;
  readonly title: string;
  readonly collector: string;
  readonly words: string;
  readonly why: string;
  readonly askedBy: string;
  /** How far the work is. */
  readonly stage: string;
  readonly kind: CommissionLineKind;
  readonly priceBeforeCents: Cents;
  readonly priceCents: Cents;
  readonly dueEvent: PlanEvent | null;
  readonly promisedBefore: Day | null;
  readonly promisedAfter: Day | null;
};

/** What a change order says of the price and the day, as they stand when it is written. */
export type ChangeFigures = Pick<
  ChangeSaid,
  'kind' | 'priceBeforeCents' | 'priceCents' | 'dueEvent' | 'promisedBefore' | 'promisedAfter'
>;

/**
 * A change order, word for word: what a name under it binds to. What a person wrote keeps its own
 * full stop and gets no second one.
 *
 * @example a change that costs nothing says that the price stays, and no word of when it is due
 */
export function changeBody(said: ChangeSaid, telling: { currency: Currency }): string {
  return [
    `Change order ${said.number} for commission ${said.commissionNumber}: ${said.title}`,
    `Asked for by ${stopped(said.askedBy)} The work: ${stopped(said.stage)}`,
    `What becomes: ${stopped(said.words)}`,
    ...(said.why === '' ? [] : [`Why: ${stopped(said.why)}`]),
    ...figureSentences(said, telling),
    'It counts once it is signed; before that nothing changes.',
  ].join('\n');
}

/**
 * Whether what a change order says of the price and the day is still true: another one that was
 * signed since it was written makes it say what no longer is.
 *
 * @param body the change order, word for word
 * @param now the same change beside the price and the day that are agreed now
 */
export function stillTrue(
  body: string,
  now: ChangeFigures,
  telling: { currency: Currency },
): boolean {
  const lines = new Set(body.split('\n'));
  return figureSentences(now, telling).every((sentence) => lines.has(sentence));
}

/** A change order as it was written, and what is agreed at this moment. */
export type WrittenChange = Pick<
  ChangeFigures,
  'kind' | 'priceCents' | 'dueEvent' | 'promisedAfter'
> & {
  readonly body: string;
};

/**
 * Whether a change order that is not signed yet has been overtaken by another one: see
 * {@link stillTrue}.
 *
 * @example offered at 9,000.00, while another change made it 9,300.00
 */
export function isOvertaken(
  { body, kind, priceCents, dueEvent, promisedAfter }: WrittenChange,
  agreed: { readonly priceCents: Cents; readonly promisedOn: Day | null },
  telling: { currency: Currency },
): boolean {
  const change = { kind, priceCents, dueEvent, promisedAfter };
  const { priceCents: priceBeforeCents, promisedOn: promisedBefore } = agreed;
  return !stillTrue(body, { ...change, priceBeforeCents, promisedBefore }, telling);
}

/**
 * Why a change that takes off the price cannot be: nothing would be left of it, or less than was
 * paid.
 *
 * @param totalCents what the whole would be, tax included
 * @example 900.00 left of a whole of which 1,000.00 was paid: refused
 */
export function refusalToTakeOff(totalCents: Cents, paidCents: Cents): TakeOffRefusal | null {
  if (totalCents <= 0n) return { code: 'change_leaves_nothing' };
  return totalCents < paidCents ? { code: 'change_below_paid', totalCents, paidCents } : null;
}

/** See {@link refusalToTakeOff}. */
export type TakeOffRefusal =
  | { readonly code: 'change_leaves_nothing' }
  | { readonly code: 'change_below_paid'; readonly totalCents: Cents; readonly paidCents: Cents };

function figureSentences(said: ChangeFigures, telling: { currency: Currency }): string[] {
  return [...priceSentences(said, (cents) => formatCents(cents, telling)), promisedSentence(said)];
}

function priceSentences(said: ChangeFigures, money: (cents: Cents) => string): string[] {
  const { kind, priceBeforeCents, priceCents, dueEvent } = said;
  if (priceCents === 0n) return [`The price stays ${money(priceBeforeCents)}, before tax.`];
  const isLess = priceCents < 0n;
  const size = money(isLess ? -priceCents : priceCents);
  const after = money(priceBeforeCents + priceCents);
  return [
    `${lineWords[kind]}: ${isLess ? 'less' : 'more'} by ${size}, before tax.`,
    `The price was ${money(priceBeforeCents)} and becomes ${after}, before tax.`,
    dueSentence(isLess, dueEvent),
  ];
}

function dueSentence(isLess: boolean, dueEvent: PlanEvent | null): string {
  const step =
    dueEvent === null ? 'the last step of the plan' : `what is due ${eventWords[dueEvent]}`;
  if (isLess) return `It comes off ${step}.`;
  return dueEvent === null ? `It is paid with ${step}.` : `It falls due ${eventWords[dueEvent]}.`;
}

function promisedSentence({ promisedBefore, promisedAfter }: ChangeFigures): string {
  if (promisedAfter === null || promisedAfter === promisedBefore) {
    return promisedBefore === null
      ? 'No day is promised, as before.'
      : `The promised day stays ${formatDay(promisedBefore, 'long')}.`;
  }
  const after = formatDay(promisedAfter, 'long');
  return promisedBefore === null
    ? `No day was promised; now it is ${after}.`
    : `The promised day was ${formatDay(promisedBefore, 'long')} and becomes ${after}.`;
}
