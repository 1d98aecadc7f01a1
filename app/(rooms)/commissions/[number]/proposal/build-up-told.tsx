import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import type { BuildUpKept } from '@/lib/commissions/reads/proposal/proposals';
import type { Currency } from '@/lib/money/rules';

type BuildUpToldProps = Readonly<{ kept: BuildUpKept; currency: Currency }>;

/** How the newest price was built up, as it was kept; for the owner alone. */
export function BuildUpTold({ kept, currency }: BuildUpToldProps) {
  return (
    <details>
      <summary>How its price was built up, for your eyes alone</summary>
      <Table
        caption="How the price was built up"
        captionHeardOnly
        columns={[
          { name: 'What' },
          { name: 'From', wideOnly: true },
          { name: 'Amount', figure: true },
        ]}
        rows={[
          ...kept.steps.map(({ words, basis, cents }) => ({
            key: words,
            cells: [words, basis, <Money key="cents" cents={cents} currency={currency} />],
          })),
          {
            key: 'cost',
            cells: [
              'It costs',
              'without margin and charges',
              <Money key="c" cents={kept.costCents} currency={currency} />,
            ],
          },
          {
            key: 'area',
            cells: [
              'By area it would be',
              '',
              <Money key="a" cents={kept.areaCents} currency={currency} />,
            ],
          },
        ]}
      />
    </details>
  );
}
