import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { tenderWords } from '@/lib/documents/rules';
import type { ChequeIn, DayMoney } from '@/lib/drawer/reads/span';
import {
  moneyInKinds,
  moneyInNames,
  moneyInSum,
  newMoneyKinds,
  type SheetLine,
} from '@/lib/drawer/rules/day-sheet';
import { sumCents } from '@/lib/money/rules';
import css from './drawer.module.css';

type SheetProps = Readonly<{ lines: readonly SheetLine[]; expectedCents: bigint }>;

/** The drawer's sheet, added up line by line to what should be there. */
export function Sheet({ lines, expectedCents }: SheetProps) {
  return (
    <Table
      caption="How it comes to that"
      columns={[{ name: 'What' }, { name: 'Cash', figure: true }]}
      rows={lines.map((line) => ({
        key: line.words,
        cells: [line.words, <Money key="cents" cents={line.cents} />],
      }))}
      foot={['Should be in the drawer', <Money key="sum" cents={expectedCents} size="strong" />]}
    />
  );
}

/** Money that came in and went out, by the bookkeeper's names and by how it was paid. */
export function MoneySplit({ money }: Readonly<{ money: DayMoney }>) {
  const names = moneyInKinds.filter((kind) => money.moneyIn[kind] !== 0n);
  const kinds = newMoneyKinds.filter(
    (kind) => money.paid[kind] !== 0n || money.refunded[kind] !== 0n,
  );
  if (names.length === 0 && kinds.length === 0) {
    return <p className={css['quiet']}>No money has come in or gone out since.</p>;
  }
  const paidSum = sumCents(kinds.map((kind) => money.paid[kind]));
  const backSum = sumCents(kinds.map((kind) => money.refunded[kind]));
  return (
    <>
      <Table
        caption="Money in, by what it is for"
        columns={[{ name: 'For' }, { name: 'Came in', figure: true }]}
        rows={names.map((kind) => ({
          key: kind,
          cells: [moneyInNames[kind], <Money key="cents" cents={money.moneyIn[kind]} />],
        }))}
        foot={['Came in', <Money key="sum" cents={moneyInSum(money.moneyIn)} />]}
      />
      <Table
        caption="By how it was paid"
        columns={[
          { name: 'Paid by' },
          { name: 'Came in', figure: true },
          { name: 'Given back', figure: true },
        ]}
        rows={kinds.map((kind) => ({
          key: kind,
          cells: [
            tenderWords[kind],
            <Money key="in" cents={money.paid[kind]} />,
            <Money key="back" cents={-money.refunded[kind]} />,
          ],
        }))}
        foot={[
          'Together',
          <Money key="in" cents={paidSum} />,
          <Money key="back" cents={-backSum} />,
        ]}
      />
    </>
  );
}

/** Cheques by name, to be laid in order before they are carried to the bank. */
export function Cheques({ cheques }: Readonly<{ cheques: readonly ChequeIn[] }>) {
  if (cheques.length === 0) return null;
  return (
    <Table
      caption="Cheques"
      columns={[
        { name: 'From' },
        { name: 'For', wideOnly: true },
        { name: 'Cheque', figure: true },
      ]}
      rows={cheques.map((cheque, at) => ({
        key: String(at),
        cells: [
          [cheque.from, cheque.reference].filter(Boolean).join(', '),
          cheque.paper,
          <Money key="cents" cents={cheque.amountCents} />,
        ],
      }))}
      foot={[
        'Together',
        '',
        <Money key="sum" cents={sumCents(cheques.map((each) => each.amountCents))} />,
      ]}
    />
  );
}
