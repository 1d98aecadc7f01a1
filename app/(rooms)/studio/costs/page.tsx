import type { Metadata } from 'next';
import Link from 'next/link';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listCosts, type CostSheet } from '@/lib/studio/reads/costs/sheet';
import { leftOf } from '@/lib/studio/rules/costs/cost';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { RatesMissing } from './rates-missing';

export const metadata: Metadata = { title: 'What a piece costs' };

const orders = {
  title: 'By title',
  turn: 'What a turn brings',
  hour: 'What an hour brings',
  left: 'What is left of the price',
} as const;
type Order = keyof typeof orders;

type CostsProps = Readonly<{ searchParams: Promise<{ by?: string | string[] }> }>;

/** What each piece costs, beside what a turn of the kiln and an hour of hands bring with it. */
export default async function CostsPage({ searchParams }: CostsProps) {
  const actor = await requireActor('stock.value');
  const { timeZone, lengthUnit } = await getGallery();
  const { sheets, studio } = await listCosts(actor, dayOf(now(), timeZone));
  const { by } = await searchParams;
  const order = (Object.keys(orders) as Order[]).find((each) => each === by) ?? 'title';
  return (
    <>
      <PageHead
        title="What a piece costs"
        lead="Reckoned from its clay, glaze, hands and firings, with what is lost on the way. A turn of the kiln and an hour of hands stand side by side: seldom does the same piece fill both best."
      />
      <InThisRoom room="studio" here="costs" roles={actor.roles} />
      <RatesMissing studio={studio} />
      {sheets.length === 0 ? (
        <Empty title="No piece is written down">
          Once pieces are in the catalogue, this page says what one of each costs to make.
        </Empty>
      ) : (
        <>
          <Views
            label="In which order"
            views={(Object.keys(orders) as Order[]).map((each) => ({
              href: each === 'title' ? '/studio/costs' : `/studio/costs?by=${each}`,
              name: orders[each],
              current: each === order,
            }))}
          />
          <CostTable sheets={inOrder(sheets, order)} lengthUnit={lengthUnit} />
        </>
      )}
      <Caution>
        a figure is as good as the minutes and losses of its route. What a piece brings is what it
        was sold for on average in the last year, or else its price.
      </Caution>
    </>
  );
}

function inOrder(sheets: readonly CostSheet[], order: Order): readonly CostSheet[] {
  if (order === 'title') return sheets;
  const worth = (sheet: CostSheet): number => {
    if (order === 'turn') return Number(sheet.earned?.centsPerTurn ?? -1n);
    if (order === 'hour') return Number(sheet.earned?.centsPerHour ?? -1n);
    return sheet.cost.ok ? leftOf(sheet.priceCents, sheet.cost.value.totalCents).percent : -1_000;
  };
  return sheets.toSorted((one, other) => worth(other) - worth(one));
}

type TableProps = Readonly<{ sheets: readonly CostSheet[]; lengthUnit: LengthSystem }>;

function CostTable({ sheets, lengthUnit }: TableProps) {
  return (
    <Table
      caption="What each piece costs and brings"
      captionHeardOnly
      columns={[
        { name: 'Piece' },
        { name: 'Costs', figure: true },
        { name: 'Price', figure: true },
        { name: 'Left of it', figure: true },
        { name: 'A kiln turn brings', figure: true, wideOnly: true },
        { name: 'An hour brings', figure: true, wideOnly: true },
        { name: 'Sold in a year', figure: true, wideOnly: true },
      ]}
      rows={sheets.map((sheet) => ({
        key: sheet.skuId,
        cells: [
          <span key="piece">
            <Link href={`/studio/costs/${sheet.code}`} className="work-title">
              {sheet.title}
            </Link>{' '}
            {formatSize(sheet, lengthUnit)}, {sheet.colourway}
          </span>,
          sheet.cost.ok ? <Money key="cost" cents={sheet.cost.value.totalCents} /> : 'not known',
          <Money key="price" cents={sheet.priceCents} />,
          leftWords(sheet),
          <Known key="turn" cents={sheet.earned?.centsPerTurn ?? null} />,
          <Known key="hour" cents={sheet.earned?.centsPerHour ?? null} />,
          sheet.sold ? `${sheet.sold.pieces}` : 'none',
        ],
      }))}
    />
  );
}

function leftWords({ cost, priceCents }: CostSheet): string {
  return cost.ok ? `${leftOf(priceCents, cost.value.totalCents).percent}%` : '';
}

function Known({ cents }: Readonly<{ cents: bigint | null }>) {
  return cents === null ? 'not known' : <Money cents={cents} />;
}
