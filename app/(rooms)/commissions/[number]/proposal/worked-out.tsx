import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Notice } from '@/app/ui/page/notice';
import { areaBesideCost, type CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import type { PriceWorkedOut } from '@/lib/commissions/rules/proposal/work-out';
import { formatCents, type Currency } from '@/lib/money/rules';
import css from './proposal.module.css';

type WorkedOutProps = Readonly<{ worked: PriceWorkedOut; currency: Currency }>;

/** A price worked out: the figure by cost beside the figure by area, and every step to it. */
export function WorkedOut({ worked, currency }: WorkedOutProps) {
  const { built, priceCents, roundedCents } = worked;
  const money = (cents: bigint) => formatCents(cents, { currency });
  const beside = areaBesideCost(built, money);
  return (
    <>
      <div className={css['beside']}>
        <Figure name="By cost, the work" cents={built.workCents} currency={currency} />
        <Figure name="By area" cents={built.areaCents} currency={currency} />
        <Figure name="What goes out, before tax" cents={priceCents} currency={currency} />
      </div>
      <Notice kind={beside.loses ? 'caution' : 'done'}>
        {beside.words}
        {roundedCents === 0n
          ? ''
          : ` Your own price is ${money(roundedCents < 0n ? -roundedCents : roundedCents)} ${roundedCents < 0n ? 'below' : 'above'} what was worked out.`}
      </Notice>
      <Steps worked={worked} currency={currency} />
    </>
  );
}

type FigureProps = Readonly<{ name: string; cents: bigint; currency: Currency }>;

function Figure({ name, cents, currency }: FigureProps) {
  return (
    <div>
      <div>{name}</div>
      <div className={css['figure']}>
        <Money cents={cents} currency={currency} />
      </div>
    </div>
  );
}

function Steps({ worked: { built }, currency }: WorkedOutProps) {
  const sums = [
    ['Losses', 'what cracks is made again', built.lossCents],
    ['Overhead', 'rent, power, insurance, shop', built.overheadCents],
    ['Contingency', '', built.contingencyCents],
    ['Margin', '', built.marginCents],
    ['Crate, freight, travel, hanging', 'as they are charged', built.extrasCents],
  ] as const;
  const rows = [
    ...built.direct.map(({ words, basis, cents }) => [words, basis, cents] as const),
    ...sums,
  ];
  return (
    <Table
      caption="How the price is built up"
      columns={[
        { name: 'What' },
        { name: 'From', wideOnly: true },
        { name: 'Amount', figure: true },
      ]}
      rows={rows.map(([words, basis, cents]) => ({
        key: words,
        cells: [words, basis, <Money key="cents" cents={cents} currency={currency} />],
      }))}
      foot={['Together', '', <Money key="all" cents={built.totalCents} currency={currency} />]}
    />
  );
}

type LinesProps = Readonly<{ lines: readonly CommissionLine[]; currency: Currency }>;

/** The lines as the collector sees them. */
export function LinesShown({ lines, currency }: LinesProps) {
  return (
    <Table
      caption="What the collector sees"
      columns={[{ name: 'What' }, { name: 'Before tax', figure: true }]}
      rows={lines.map(({ kind, words, amountCents }) => ({
        key: kind,
        cells: [words, <Money key="cents" cents={amountCents} currency={currency} />],
      }))}
      foot={[
        'Together',
        <Money
          key="all"
          cents={lines.reduce((sum, line) => sum + line.amountCents, 0n)}
          currency={currency}
        />,
      ]}
    />
  );
}
