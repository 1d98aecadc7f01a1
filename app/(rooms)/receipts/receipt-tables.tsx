import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { formatInstant } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';
import { returnsListed, type ReturnInList } from '@/lib/returns/reads';
import {
  receiptsListed,
  type DayOfReceipts,
  type ReceiptInList,
} from '@/lib/sales/reads/receipts-of-day';
import css from './receipts.module.css';

const columns = [
  { name: 'Receipt' },
  { name: 'What' },
  { name: 'When', wideOnly: true },
  { name: 'By', wideOnly: true },
  { name: 'Total', figure: true },
];

/** What was sold on a day, the newest first, with its sum. */
export function DayTable({ shown, zone }: Readonly<{ shown: DayOfReceipts; zone: string }>) {
  if (shown.receipts.length === 0) return null;
  const rows = shown.receipts.map((receipt) => ({
    key: String(receipt.number),
    cells: [...beginning(receipt), timeOf(receipt.soldAt, zone), receipt.soldBy, total(receipt)],
  }));
  const foot = ['Sum', '', '', '', <Money key="sum" cents={shown.totalCents} />];
  return (
    <>
      <Table
        caption="Sold on this day"
        captionHeardOnly
        columns={columns}
        rows={rows}
        foot={foot}
      />
      {shown.receipts.length === receiptsListed ? (
        <p>Only the newest {receiptsListed} are listed; the sum counts all of them.</p>
      ) : null}
    </>
  );
}

type FoundProps = Readonly<{ caption: string; receipts: readonly ReceiptInList[] }>;

/** Receipts of several days. */
export function FoundTable({ caption, receipts }: FoundProps) {
  const rows = receipts.map((receipt) => ({
    key: String(receipt.number),
    cells: [
      ...beginning(receipt),
      <DayText key="on" day={receipt.soldOn} />,
      receipt.soldBy,
      total(receipt),
    ],
  }));
  return <Table caption={caption} columns={columns} rows={rows} />;
}

function beginning(receipt: ReceiptInList) {
  return [
    <Link key="number" href={`/receipts/${receipt.number}`} className={css['number']}>
      {receipt.number}
    </Link>,
    <span key="what">
      <em className="work-title">{receipt.titles.join(', ')}</em>
      {receipt.collector === null ? null : `, for ${receipt.collector}`}
    </span>,
  ];
}

function total(receipt: ReceiptInList) {
  return <Money key="total" cents={receipt.totalCents} />;
}

function timeOf(at: Date, zone: string) {
  return (
    <time key="at" dateTime={at.toISOString()} className={css['when']}>
      {formatInstant(at, zone).split(', ').at(-1)}
    </time>
  );
}

const kindWords = {
  returned: 'brought back',
  exchanged: 'exchanged',
  voided: 'struck out',
} as const;

type ReturnTableProps = Readonly<{ returns: readonly ReturnInList[]; zone: string }>;

/** What came back on a day, with what was given back for it. */
export function ReturnTable({ returns, zone }: ReturnTableProps) {
  if (returns.length === 0) return null;
  const rows = returns.map((back) => ({
    key: String(back.number),
    cells: [
      <Link key="number" href={`/receipts/returns/${back.number}`} className={css['number']}>
        {back.number}
      </Link>,
      <span key="what">
        <em className="work-title">{back.titles.join(', ')}</em>, {kindWords[back.kind]}
      </span>,
      timeOf(back.at, zone),
      <Link key="of" href={`/receipts/${back.receiptNumber}`} className={css['number']}>
        {back.receiptNumber}
      </Link>,
      <Money key="total" cents={-back.totalCents} />,
    ],
  }));
  const sum = -sumCents(returns.map((back) => back.totalCents));
  return (
    <>
      <Table
        caption="Brought back on this day"
        columns={[
          { name: 'Return' },
          { name: 'What' },
          { name: 'When', wideOnly: true },
          { name: 'Of receipt', wideOnly: true },
          { name: 'Given back', figure: true },
        ]}
        rows={rows}
        foot={['Sum', '', '', '', <Money key="sum" cents={sum} />]}
      />
      {returns.length === returnsListed ? <p>Only the newest {returnsListed} are listed.</p> : null}
    </>
  );
}
