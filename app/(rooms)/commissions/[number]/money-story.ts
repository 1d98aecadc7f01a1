import type { MoneyLines } from '@/lib/commissions/reads/payments';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { paymentWords } from '@/lib/commissions/rules/words';
import type { Day } from '@/lib/dates/rules';

/** Something that was asked for, came in or went back. */
export type StoryLine = {
  key: string;
  on: Day;
  what: string;
  href?: string;
  askedCents: bigint | null;
  paidCents: bigint | null;
};

/** Every line of a commission's money, by its day. */
export function moneyStory({ number, telling }: Sheet, lines: MoneyLines): StoryLine[] {
  const here = `/commissions/${number}`;
  const asked = lines.asked.map((each) => ({
    key: `asked-${each.id}`,
    on: each.askedOn,
    what:
      each.withdrawnWhy === null
        ? `${each.name}, number ${each.number}, due ${dayWord(each.dueOn, telling.today)}`
        : `${each.name}, taken back: ${each.withdrawnWhy}`,
    href: `${here}/ask/${each.number}/pdf`,
    askedCents: each.withdrawnWhy === null ? each.amountCents : null,
    paidCents: null,
  }));
  const paid = lines.payments.map((each) => ({
    key: `paid-${each.number}`,
    on: each.receivedOn,
    what: `Payment slip ${each.number}: ${each.paidBy}, ${paymentWords[each.kind]}`,
    href: `${here}/payments/${each.number}`,
    askedCents: null,
    paidCents: each.amountCents,
  }));
  const back = lines.refunds.map((each) => ({
    key: `back-${each.number}`,
    on: each.refundedOn,
    what: `Given back of payment ${each.ofPayment}, ${paymentWords[each.kind]}: ${each.why}`,
    askedCents: null,
    paidCents: -each.amountCents,
  }));
  const inTime = [...asked, ...paid, ...back];
  return inTime.sort((one, other) => (one.on < other.on ? -1 : Number(one.on > other.on)));
}
