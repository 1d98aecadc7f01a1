import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import type { AgreementTold } from '@/lib/commissions/reads/papers';
import type { MoneyLines as Lines } from '@/lib/commissions/reads/payments';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { paymentWords } from '@/lib/commissions/rules/words';
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
      {agreements.length === 0 ? <p className={css['quiet']}>Nothing is agreed yet.</p> : null}
      {agreements.length > 0 ? <Agreements agreements={agreements} /> : null}
      {lines.asked.length > 0 ? <AskedFor lines={lines} /> : null}
      {lines.payments.length > 0 ? <CameIn lines={lines} number={number} /> : null}
    </Section>
  );
}

function Agreements({ agreements }: Readonly<{ agreements: readonly AgreementTold[] }>) {
  return (
    <Table
      caption="Agreed"
      columns={[
        { name: 'On' },
        { name: 'By' },
        { name: 'Promised for', wideOnly: true },
        { name: 'Before tax', figure: true },
        { name: 'Deposit', figure: true },
      ]}
      rows={agreements.map((each) => ({
        key: String(each.version),
        cells: [
          <DayText key="on" day={each.agreedOn} />,
          each.agreedBy,
          each.promisedOn ? <DayText key="promised" day={each.promisedOn} /> : 'no day promised',
          <Money key="price" cents={each.priceCents} />,
          <Money key="deposit" cents={each.depositCents} />,
        ],
      }))}
    />
  );
}

function AskedFor({ lines }: Readonly<{ lines: Lines }>) {
  return (
    <Table
      caption="Asked for"
      columns={[
        { name: 'What for' },
        { name: 'Asked on', wideOnly: true },
        { name: 'Due on' },
        { name: 'Amount', figure: true },
        { name: 'Came in for it', figure: true },
      ]}
      rows={lines.asked.map((each) => ({
        key: each.id,
        cells: [
          each.name,
          <DayText key="asked" day={each.askedOn} />,
          <DayText key="due" day={each.dueOn} />,
          <Money key="amount" cents={each.amountCents} />,
          <Money key="paid" cents={each.paidCents} />,
        ],
      }))}
    />
  );
}

function CameIn({ lines, number }: Readonly<{ lines: Lines; number: number }>) {
  return (
    <Table
      caption="Came in"
      columns={[
        { name: 'Slip' },
        { name: 'Day' },
        { name: 'By' },
        { name: 'Amount', figure: true },
        { name: 'In all', figure: true },
      ]}
      rows={lines.payments.map((each) => ({
        key: String(each.number),
        cells: [
          <Link key="slip" href={`/commissions/${number}/payments/${each.number}`}>
            {each.number}
          </Link>,
          <DayText key="day" day={each.receivedOn} />,
          `${each.paidBy}, ${paymentWords[each.kind]}`,
          <Money key="amount" cents={each.amountCents} />,
          <Money key="sum" cents={each.paidSoFarCents} />,
        ],
      }))}
    />
  );
}
