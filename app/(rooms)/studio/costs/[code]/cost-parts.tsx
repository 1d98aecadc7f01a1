import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { formatCents, type Cents } from '@/lib/money/rules';
import type { CostSheet } from '@/lib/studio/reads/costs/sheet';
import { channelsAt, commonPrices, type UnitCost } from '@/lib/studio/rules/costs/cost';
import { spendingWords } from '../words';

/** The lines of a cost; those that come to nothing are left out. */
export function CostLines({ cost }: Readonly<{ cost: UnitCost }>) {
  return (
    <Table
      caption="What one good piece costs"
      captionHeardOnly
      columns={[{ name: 'For' }, { name: 'Amount', figure: true }]}
      rows={cost.lines
        .filter(({ cents }) => cents !== 0n)
        .map(({ what, cents }) => ({
          key: what,
          cells: [spendingWords[what], <Money key="cents" cents={cents} />],
        }))}
      foot={['One good piece', <Money key="total" cents={cost.totalCents} size="strong" />]}
    />
  );
}

type PricesProps = Readonly<{ priceCents: Cents; costCents: Cents }>;

/** What the price leaves by each way of selling, and what is commonly asked for such a cost. */
export function WaysToSell({ priceCents, costCents }: PricesProps) {
  const common = commonPrices(costCents);
  const channels = channelsAt(priceCents, costCents);
  const worst = channels.reduce((least, each) =>
    each.left.cents < least.left.cents ? each : least,
  );
  return (
    <Section
      title="What its price leaves"
      lead={
        worst.left.cents < 0n
          ? `${worst.name}, it brings less than it costs.`
          : 'Every way of selling it still pays.'
      }
    >
      <Table
        caption="What its price leaves"
        captionHeardOnly
        columns={[
          { name: 'Sold' },
          { name: 'Brings', figure: true },
          { name: 'Left', figure: true },
          { name: 'Of 100', figure: true },
        ]}
        rows={channels.map(({ name, netCents, left }) => ({
          key: name,
          cells: [
            name,
            <Money key="net" cents={netCents} />,
            <Money key="left" cents={left.cents} />,
            `${left.percent}`,
          ],
        }))}
      />
      <p>
        Small studios commonly ask twice the cost from shops, {formatCents(common.wholesaleCents)},
        and twice that at the counter, {formatCents(common.retailCents)}. That is only to hold the
        price against.
      </p>
    </Section>
  );
}

/** How each figure was found, what was taken for want of better, and what is not in the sum. */
export function HowReckoned({ sheet }: Readonly<{ sheet: CostSheet }>) {
  const { said, steps } = sheet;
  const missing = said.filter(({ kind }) => kind === 'missing');
  const lost = steps.filter(({ lossPercent }) => Number(lossPercent) > 0);
  const lossWords = lost.map(({ name, lossPercent }) => `${name} ${lossPercent}`).join(', ');
  return (
    <>
      {missing.length > 0 ? (
        <Section title="Not in this sum">
          <ul>
            {missing.map(({ what, words }) => (
              <li key={`${what} ${words}`}>
                {spendingWords[what]}: {words}
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Working
        steps={[
          ...said
            .filter(({ kind }) => kind !== 'missing')
            .map(({ what, words }) => `${spendingWords[what]}: ${words}`),
          lost.length > 0
            ? `Lost on the way, of a hundred: ${lossWords}.`
            : 'Nothing is lost on its way.',
        ]}
        formula="What is spent at a step, over the share of pieces that come through it and all later steps; together, and overhead on top."
        source="Common practice: clay and glaze by weight and face, hours by the rate, a firing by the room a piece takes, losses spread over the good ones."
        caution="Minutes and losses are those of the route. Watch a few pieces with a clock before a price rests on it."
      />
    </>
  );
}
