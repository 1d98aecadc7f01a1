import { lineWords, type CommissionLineKind } from '@/lib/commissions/rules/proposal/lines';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import type { PlanEvent } from '@/lib/commissions/rules/facts';
import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents, type Currency } from '@/lib/money/rules';

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

/** A change order, word for word: what a name under it binds to. */
export function changeBody(said: ChangeSaid, telling: { currency: Currency }): string {
  const money = (cents: Cents) => formatCents(cents, telling);
  const { priceBeforeCents, priceCents, promisedBefore, promisedAfter } = said;
  const day = (on: Day | null) => (on === null ? 'no day' : formatDay(on, 'long'));
  return [
    `Change order ${said.number} for commission ${said.commissionNumber}: ${said.title}`,
    `Asked for by ${said.askedBy}. The work: ${said.stage}.`,
    `What becomes: ${said.words}`,
    ...(said.why === '' ? [] : [`Why: ${said.why}`]),
    `${lineWords[said.kind]}: ${priceCents < 0n ? 'less by' : 'more by'} ${money(priceCents < 0n ? -priceCents : priceCents)}, before tax.`,
    `The price was ${money(priceBeforeCents)} and becomes ${money(priceBeforeCents + priceCents)}, before tax.`,
    said.dueEvent === null
      ? 'It is paid with the last step of the plan.'
      : `It falls due ${eventWords[said.dueEvent]}.`,
    promisedAfter === null
      ? `The promised day stays: ${day(promisedBefore)}.`
      : `The promised day was ${day(promisedBefore)} and becomes ${day(promisedAfter)}.`,
    'It counts once it is signed; before that nothing changes.',
  ].join('\n');
}
