import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import type { StatementListed } from '@/lib/consignment/reads/statements';
import { ageOf, ages, owedByAge } from '@/lib/consignment/rules/owed';
import type { Day } from '@/lib/dates/rules';

type OwedProps = Readonly<{ statements: readonly StatementListed[]; today: Day }>;

/** What they owe, by how late it is, and the statements it comes from. */
export function Owed({ statements, today }: OwedProps) {
  if (statements.length === 0) {
    return (
      <Section title="What they sold">
        <p>Nothing was told yet. When their list comes, touch “They sold something”.</p>
      </Section>
    );
  }
  const owed = owedByAge(statements, today);
  return (
    <Section title="What they sold, and owe">
      <Facts
        facts={ages.map(({ age, words }) => ({
          name: words.charAt(0).toUpperCase() + words.slice(1),
          value: <Money cents={owed[age]} />,
        }))}
      />
      <Table
        caption="Statements"
        captionHeardOnly
        columns={[
          { name: 'Statement' },
          { name: 'Sold', wideOnly: true },
          { name: 'Due' },
          { name: 'Comes to', figure: true },
          { name: 'Still owed', figure: true },
          { name: 'Where it is' },
        ]}
        rows={statements.map((each) => ({
          key: String(each.number),
          cells: [
            <Link key="number" href={`/galleries/statements/${each.number}`}>
              {each.number}
            </Link>,
            <Sold key="sold" each={each} />,
            <DayText key="due" day={each.dueOn} />,
            <Money key="comes" cents={each.dueCents} />,
            <Money key="owed" cents={each.owedCents} />,
            whereItIs(each, today),
          ],
        }))}
      />
    </Section>
  );
}

function Sold({ each }: Readonly<{ each: StatementListed }>) {
  return (
    <>
      <DayText day={each.fromOn} /> to <DayText day={each.untilOn} />
    </>
  );
}

function whereItIs({ owedCents, dueOn }: StatementListed, today: Day): string {
  if (owedCents <= 0n) return 'paid';
  return ages.find(({ age }) => age === ageOf(dueOn, today))?.words ?? '';
}
