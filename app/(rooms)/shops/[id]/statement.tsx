import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import type { OrderListed } from '@/lib/wholesale/reads';
import { ageWords, statementByAge } from '@/lib/wholesale/rules/ageing';

type StatementProps = Readonly<{ orders: readonly OrderListed[]; today: Day }>;

/** What a shop owes, by how late it is. */
export function Statement({ orders, today }: StatementProps) {
  const invoices = orders.flatMap(({ owedCents, dueOn }) =>
    dueOn === null || owedCents <= 0n ? [] : [{ owedCents, dueOn }],
  );
  if (invoices.length === 0) {
    return (
      <Section title="What they owe">
        <p>Nothing is owed.</p>
      </Section>
    );
  }
  const { byAge, totalCents } = statementByAge(invoices, today);
  return (
    <Section title="What they owe">
      <Table
        caption="Owed, by how late it is"
        captionHeardOnly
        columns={[{ name: 'How late' }, { name: 'Owed', figure: true }]}
        rows={byAge.map(({ age, cents }) => ({
          key: age,
          cells: [ageWords[age], <Money key="cents" cents={cents} />],
        }))}
        foot={['Together', <Money key="total" cents={totalCents} size="strong" />]}
      />
    </Section>
  );
}
