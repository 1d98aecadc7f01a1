import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import type { FairSheet } from '@/lib/fairs/reads';
import { fairEarningSteps, fairEarningWords } from '@/lib/fairs/rules/earning';
import css from '../fairs.module.css';

/** What a fair earned, in a sentence, by design, and how it was worked out. */
export function Earned({ sheet }: Readonly<{ sheet: FairSheet }>) {
  const { sold, money, earning } = sheet;
  const unreckoned = sold.reduce((all, each) => all + each.unreckoned, 0);
  const caution =
    unreckoned === 0
      ? undefined
      : `Nobody reckoned what ${unreckoned} of the pieces cost to make; they count as nothing.`;
  return (
    <Section title="What it earned">
      <p className={css['said']}>{fairEarningWords(money, earning)}</p>
      {sold.length === 0 ? null : <Sold sheet={sheet} />}
      <Working
        steps={fairEarningSteps(money, earning)}
        formula="sold − (fee + travel + other) − making, divided by the hours"
        source="Common practice"
        caution={caution}
      />
    </Section>
  );
}

function Sold({ sheet: { sold, money } }: Readonly<{ sheet: FairSheet }>) {
  const pieces = sold.reduce((all, each) => all + each.pieces, 0);
  return (
    <Table
      caption="Sold there by design, before tax"
      columns={[
        { name: 'Design' },
        { name: 'Pieces', figure: true },
        { name: 'Sold', figure: true },
        { name: 'Making', figure: true, wideOnly: true },
      ]}
      rows={sold.map((each) => ({
        key: each.key,
        cells: [
          <cite key="title">{each.title}</cite>,
          each.pieces,
          <Money key="net" cents={each.netCents} />,
          <Money key="making" cents={each.makingCents} />,
        ],
      }))}
      foot={[
        'Together',
        pieces,
        <Money key="net" cents={money.soldCents} />,
        <Money key="making" cents={money.makingCents} />,
      ]}
    />
  );
}
