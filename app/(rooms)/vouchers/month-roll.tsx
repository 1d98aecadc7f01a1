import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import { Views } from '@/app/ui/page/views';
import { formatMonth, nextMonth, previousMonth, type Month } from '@/lib/dates/rules';
import { creditWords, type CreditRoll } from '@/lib/vouchers/rules';

type MonthRollProps = Readonly<{ roll: readonly CreditRoll[]; month: Month; thisMonth: Month }>;

/** What a month did to what is owed on vouchers and credits, from its first day to its last. */
export function MonthRoll({ roll, month, thisMonth }: MonthRollProps) {
  const months = [previousMonth(month), month, ...(month < thisMonth ? [nextMonth(month)] : [])];
  return (
    <Section title="Over the month" lead="What was owed, what was added and used, what is owed.">
      <Views
        label="Months"
        views={months.map((each) => ({
          href: `/vouchers?month=${each}`,
          name: formatMonth(each),
          current: each === month,
        }))}
      />
      <Table
        caption={`Vouchers and store credits in ${formatMonth(month)}`}
        captionHeardOnly
        columns={[
          { name: 'What' },
          { name: 'At first', figure: true },
          { name: 'Sold', figure: true },
          { name: 'Given', figure: true },
          { name: 'Used', figure: true },
          { name: 'Taken back', figure: true },
          { name: 'At last', figure: true },
        ]}
        rows={roll.map((each) => ({
          key: each.kind,
          cells: [
            creditWords[each.kind],
            <Money key="opening" cents={each.openingCents} />,
            <Money key="sold" cents={each.soldCents} />,
            <Money key="given" cents={each.givenCents} />,
            <Money key="used" cents={each.usedCents} />,
            <Money key="back" cents={each.takenBackCents} />,
            <Money key="closing" cents={each.closingCents} size="strong" />,
          ],
        }))}
      />
    </Section>
  );
}
