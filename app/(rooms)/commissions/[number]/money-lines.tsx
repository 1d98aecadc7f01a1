import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import type { AgreementTold } from '@/lib/commissions/reads/papers';
import type { MoneyLines as Lines } from '@/lib/commissions/reads/payments';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { dayWord, type Telling } from '@/lib/commissions/rules/course/sentences';
import { paymentWords } from '@/lib/commissions/rules/words';
import type { Day } from '@/lib/dates/rules';
import { formatCents, sumCents } from '@/lib/money/rules';
import css from '../commissions.module.css';

type MoneyLinesProps = Readonly<{
  sheet: Sheet;
  agreements: readonly AgreementTold[];
  lines: Lines;
}>;

/** The money lines: what was agreed, what was asked for, what came in. */
export function MoneyLines({ sheet, agreements, lines }: MoneyLinesProps) {
  const { number, acts, handOver } = sheet;
  const here = `/commissions/${number}`;
  return (
    <Section
      title="Money"
      id="money"
      act={
        <span className={css['acts']}>
          {acts.has('payment') ? (
            <ButtonLink href={`${here}/payment`} variant="quiet">
              Take a payment
            </ButtonLink>
          ) : null}
          {acts.has('ask') ? (
            <ButtonLink href={`${here}/ask`} variant="quiet">
              Ask for money
            </ButtonLink>
          ) : null}
          {acts.has('agreement') ? (
            <ButtonLink href={`${here}/agreement`} variant="quiet">
              {agreements.length === 0 ? 'Write down what was agreed' : 'Change what was agreed'}
            </ButtonLink>
          ) : null}
          {acts.has('hand-over') ? (
            <ButtonLink href={`${here}/hand-over`} variant="quiet">
              Hand it over
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      {handOver ? (
        <p>
          Handed over on <DayText day={handOver.handedOn} />, signed by {handOver.signedBy}.{' '}
          <Link href={`/receipts/${handOver.receiptNumber}`}>Receipt {handOver.receiptNumber}</Link>
        </p>
      ) : null}
      {agreements.length === 0 ? (
        <p className={css['quiet']}>Nothing is agreed yet.</p>
      ) : (
        <Statement sheet={sheet} agreements={agreements} lines={lines} />
      )}
    </Section>
  );
}

function Statement({ sheet, agreements, lines }: MoneyLinesProps) {
  const { currency } = sheet.telling;
  const money = (cents: bigint | null) =>
    cents === null ? null : <Money key="money" cents={cents} currency={currency} />;
  const told = moneyStory(sheet, agreements, lines);
  return (
    <Table
      caption="What was agreed, asked for and paid, in time"
      captionHeardOnly
      columns={[
        { name: 'Day' },
        { name: 'What' },
        { name: 'Agreed, before tax', figure: true },
        { name: 'Asked for', figure: true },
        { name: 'Came in', figure: true },
      ]}
      rows={told.map((line) => ({
        key: line.key,
        cells: [
          <DayText key="day" day={line.on} />,
          line.href ? (
            <Link key="what" href={line.href}>
              {line.what}
            </Link>
          ) : (
            line.what
          ),
          money(line.agreedCents),
          money(line.askedCents),
          money(line.paidCents),
        ],
      }))}
      foot={[
        'Now',
        '',
        money(agreements[0]?.priceCents ?? 0n),
        money(sumCents(lines.asked.map((each) => each.amountCents))),
        money(sumCents(lines.payments.map((each) => each.amountCents))),
      ]}
    />
  );
}

type StoryLine = {
  key: string;
  on: Day;
  what: string;
  href?: string;
  agreedCents: bigint | null;
  askedCents: bigint | null;
  paidCents: bigint | null;
};

const nothing = { agreedCents: null, askedCents: null, paidCents: null };

function moneyStory(
  { number, telling }: Sheet,
  agreements: readonly AgreementTold[],
  lines: Lines,
): StoryLine[] {
  const agreed = agreements.map((each) => ({
    ...nothing,
    key: `agreed-${each.version}`,
    on: each.agreedOn,
    what: agreedWords(each, telling),
    agreedCents: each.priceCents,
  }));
  const asked = lines.asked.map((each) => ({
    ...nothing,
    key: `asked-${each.id}`,
    on: each.askedOn,
    what: `${each.name}, due ${dayWord(each.dueOn, telling.today)}`,
    askedCents: each.amountCents,
  }));
  const paid = lines.payments.map((each) => ({
    ...nothing,
    key: `paid-${each.number}`,
    on: each.receivedOn,
    what: `Payment slip ${each.number}: ${each.paidBy}, ${paymentWords[each.kind]}`,
    href: `/commissions/${number}/payments/${each.number}`,
    paidCents: each.amountCents,
  }));
  const inTime = [...agreed.reverse(), ...asked, ...paid];
  return inTime.sort((one, other) => (one.on < other.on ? -1 : Number(one.on > other.on)));
}

function agreedWords(each: AgreementTold, telling: Telling): string {
  const deposit = `deposit ${formatCents(each.depositCents, telling)}`;
  const promised = each.promisedOn
    ? `, promised for ${dayWord(each.promisedOn, telling.today)}`
    : '';
  return `Agreed by ${each.agreedBy}: ${deposit}${promised}`;
}
