import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import {
  moneyForCollector,
  type MoneyForCollector,
} from '@/lib/commissions/reads/money/for-collector';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import { paymentWords } from '@/lib/commissions/rules/words';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { currencyNamed, type Cents, type Currency } from '@/lib/money/rules';
import type { OpenPage } from '../open-page';
import css from '../page.module.css';

type Told = Readonly<{ money: MoneyForCollector; currency: Currency }>;

/** Their money: what is agreed, paid and due, what is still to come and when, and what came in. */
export async function TheirMoney({ page }: Readonly<{ page: OpenPage }>) {
  const { link, gallery, at, token } = page;
  const money = await moneyForCollector(link.commissionId, dayOf(at, gallery.timeZone));
  if (!money) return null;
  const currency = currencyNamed(gallery.currency);
  const open = money.endedOn === null ? money.asked : [];
  const toPay = open.filter((each) => each.paidCents < each.amountCents);
  return (
    <Section title="What it comes to" id="money">
      <Sums money={money} currency={currency} />
      {toPay.length > 0 ? (
        <ul className={css['lines']}>
          {toPay.map(({ number, name, dueOn }) => (
            <li key={number}>
              {name} was asked for, to be paid by {formatDay(dueOn, 'long')}:{' '}
              <a href={`/c/${token}/paper/invoice-${number}`}>invoice {number} (PDF)</a>
            </li>
          ))}
        </ul>
      ) : null}
      {money.endedOn === null ? <Price money={money} currency={currency} /> : null}
      <Plan money={money} currency={currency} />
      <CameIn money={money} currency={currency} />
    </Section>
  );
}

function Sums({ money: { money, endedOn }, currency }: Told) {
  const sums: [string, Cents][] = [
    [endedOn === null ? 'Together, with tax' : 'What stays of the early end', money.totalCents],
    ['Paid', money.paidCents],
    ['Due now', money.dueCents],
    ['Still to come in all', money.owedCents],
  ];
  if (money.overpaidCents > 0n) sums.push(['Kept for you, to go back', money.overpaidCents]);
  return (
    <dl className={css['sums']}>
      {sums.map(([name, cents]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <Money cents={cents} currency={currency} size="strong" />
          </dd>
        </div>
      ))}
    </dl>
  );
}

function Price({ money: { price }, currency }: Told) {
  const { lines, changes, letOffCents, tax } = price;
  const rows: [string, Cents][] = [
    ...lines.map(({ words, amountCents }): [string, Cents] => [words, amountCents]),
    ...changes.map(({ number, words, priceCents }): [string, Cents] => [
      `Change order ${number}: ${words}`,
      priceCents,
    ]),
    ...(letOffCents === 0n ? [] : [letOffLine(letOffCents)]),
    [tax.isFixed ? 'Sales tax' : 'Sales tax, as it stands today', tax.taxCents],
  ];
  return (
    <Table
      caption={`What is agreed, since ${formatDay(price.agreedOn, 'long')}`}
      columns={[{ name: 'What' }, { name: 'Amount', figure: true }]}
      rows={rows.map(([name, cents], at) => ({
        key: String(at),
        cells: [name, <Money key="cents" cents={cents} currency={currency} />],
      }))}
      foot={['Together', <Money key="cents" cents={price.totalCents} currency={currency} />]}
    />
  );
}

function letOffLine(cents: Cents): [string, Cents] {
  return ['Let off after the hand-over', -cents];
}

function Plan({ money: { plan }, currency }: Told) {
  if (plan.length === 0) return null;
  return (
    <Table
      caption="The plan of payments"
      columns={[
        { name: 'Step' },
        { name: 'Due' },
        { name: 'Amount', figure: true },
        { name: 'Still to pay', figure: true },
      ]}
      rows={plan.map(({ position, name, event, dueSince, amountCents, leftCents }) => ({
        key: String(position),
        cells: [
          name,
          dueSince ? `since ${formatDay(dueSince, 'short')}` : eventWords[event],
          <Money key="amount" cents={amountCents} currency={currency} />,
          leftCents === 0n ? '✓ paid' : <Money key="left" cents={leftCents} currency={currency} />,
        ],
      }))}
    />
  );
}

function CameIn({ money: { payments, refunds }, currency }: Told) {
  if (payments.length === 0) return null;
  const came = payments.map(({ number, receivedOn, kind, amountCents }) => ({
    ...{ key: `in-${number}`, on: receivedOn, cents: amountCents },
    what: `Slip ${number}, ${paymentWords[kind]}`,
  }));
  const back = refunds.map(({ number, refundedOn, kind, amountCents }) => ({
    ...{ key: `back-${number}`, on: refundedOn, cents: -amountCents },
    what: `Given back, ${paymentWords[kind]}`,
  }));
  return (
    <Table
      caption="What came in"
      columns={[{ name: 'Day' }, { name: 'How' }, { name: 'Amount', figure: true }]}
      rows={[...came, ...back]
        .toSorted((one, other) => (one.on < other.on ? -1 : Number(one.on > other.on)))
        .map(({ key, on, what, cents }) => ({
          key,
          cells: [
            formatDay(on, 'short'),
            what,
            <Money key="cents" cents={cents} currency={currency} />,
          ],
        }))}
    />
  );
}
