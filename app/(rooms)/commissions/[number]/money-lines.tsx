import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Way } from '@/app/ui/button/way';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import type { MoneyLines as Lines } from '@/lib/commissions/reads/payments';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import { formatCents } from '@/lib/money/rules';
import { moneyStory } from './money-story';
import css from '../commissions.module.css';

type MoneyLinesProps = Readonly<{ sheet: Sheet; lines: Lines }>;

/** The money: what is agreed, asked for, paid and due; the plan; and every line in time. */
export function MoneyLines({ sheet, lines }: MoneyLinesProps) {
  const { handOver, money } = sheet;
  return (
    <Section title="Money" id="money" act={<MoneyActs sheet={sheet} />}>
      {handOver ? (
        <p>
          Handed over on <DayText day={handOver.handedOn} />, signed by {handOver.signedBy}.{' '}
          <Link href={`/receipts/${handOver.receiptNumber}`}>Receipt {handOver.receiptNumber}</Link>
        </p>
      ) : null}
      {sheet.ending ? (
        <p>
          It ended early on <DayText day={sheet.ending.endedOn} />.{' '}
          <a href={`/commissions/${sheet.number}/end/pdf`}>The settlement, as a PDF</a>
        </p>
      ) : null}
      {money ? <Sums sheet={sheet} /> : <p className={css['quiet']}>Nothing is agreed yet.</p>}
      <Plan sheet={sheet} />
      <InTime sheet={sheet} lines={lines} />
    </Section>
  );
}

function MoneyActs({ sheet: { number, acts } }: Readonly<{ sheet: Sheet }>) {
  const here = `/commissions/${number}`;
  const ways = [
    ['payment', 'payment', 'Take a payment'],
    ['ask', 'ask', 'Ask for money'],
    ['refund', 'refund', 'Give money back'],
    ['hand-over', 'hand-over', 'Hand it over'],
  ] as const;
  return (
    <span className={css['acts']}>
      {ways.map(([act, path, words]) =>
        acts.has(act) ? (
          <ButtonLink key={act} href={`${here}/${path}`} variant="quiet">
            {words}
          </ButtonLink>
        ) : null,
      )}
    </span>
  );
}

function Sums({ sheet: { money, telling, ending } }: Readonly<{ sheet: Sheet }>) {
  if (!money) return null;
  const sums = [
    [ending ? 'What stays' : 'Agreed, with tax', money.totalCents],
    ['Asked for', money.invoicedCents],
    ['Paid', money.paidCents],
    ['Due now', money.dueCents],
    ['Balance', money.owedCents],
  ] as const;
  return (
    <>
      <dl className={css['sums']}>
        {sums.map(([name, cents]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <Money cents={cents} currency={telling.currency} size="strong" />
            </dd>
          </div>
        ))}
      </dl>
      {money.overpaidCents > 0n ? (
        <Notice kind="caution">
          {formatCents(money.overpaidCents, telling)} more was paid than{' '}
          {ending ? 'stays of it' : 'it comes to'}. It is kept for them until it goes back.
        </Notice>
      ) : null}
    </>
  );
}

function Plan({ sheet }: Readonly<{ sheet: Sheet }>) {
  const { plan, telling, number, acts } = sheet;
  if (plan.length === 0) return null;
  const money = (cents: bigint) => <Money key="m" cents={cents} currency={telling.currency} />;
  return (
    <Table
      caption="The plan of payments"
      columns={[
        { name: 'Step' },
        { name: 'Due' },
        { name: 'Amount', figure: true },
        { name: 'Left', figure: true },
        { name: 'To do', wideOnly: true },
      ]}
      rows={plan.map((step) => ({
        key: String(step.position),
        cells: [
          step.name,
          step.dueSince ? `since ${dayWord(step.dueSince, telling.today)}` : eventWords[step.event],
          money(step.amountCents),
          money(step.leftCents),
          step.leftCents === 0n ? (
            '✓ paid'
          ) : step.isAsked ? (
            'asked for'
          ) : step.dueSince && acts.has('ask') ? (
            <Link key="ask" href={`/commissions/${number}/ask?step=${step.position}`}>
              Ask for it
            </Link>
          ) : (
            ''
          ),
        ],
      }))}
    />
  );
}

function InTime({ sheet, lines }: MoneyLinesProps) {
  const told = moneyStory(sheet, lines);
  if (told.length === 0) return null;
  const { currency } = sheet.telling;
  const money = (cents: bigint | null) =>
    cents === null ? null : <Money key="money" cents={cents} currency={currency} />;
  return (
    <Table
      caption="What was asked for, what came in and went back, in time"
      columns={[
        { name: 'Day' },
        { name: 'What' },
        { name: 'Asked for', figure: true },
        { name: 'Came in', figure: true },
      ]}
      rows={told.map((line) => ({
        key: line.key,
        cells: [
          <DayText key="day" day={line.on} />,
          line.href ? (
            <Way key="what" href={line.href}>
              {line.what}
            </Way>
          ) : (
            line.what
          ),
          money(line.askedCents),
          money(line.paidCents),
        ],
      }))}
    />
  );
}
