import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { requireActor } from '@/lib/access/reads';
import { formatCents } from '@/lib/money/rules';
import { readStockWorth, type StockWorthSheet } from '@/lib/stock/reads/worth';

export const metadata: Metadata = { title: 'What it is worth' };

/** What the stock is worth at cost, by two ways of reckoning, and at retail. */
export default async function WorthPage() {
  const actor = await requireActor('stock.value');
  const sheet = await readStockWorth(actor);
  return (
    <>
      <PageHead title="What it is worth" lead={leadOf(sheet)}>
        <ButtonLink href="/stock/value/csv" variant="quiet" download>
          Take it as a file
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="worth" roles={actor.roles} />
      {sheet.places.length === 0 ? (
        <Empty title="Nothing stands anywhere yet">
          Once pieces are here, this page says what they cost and what they would bring.
        </Empty>
      ) : (
        <>
          <PlaceTable sheet={sheet} />
          <Unknown sheet={sheet} />
          <HowWorkedOut sheet={sheet} />
        </>
      )}
    </>
  );
}

function leadOf({ whole }: StockWorthSheet): string {
  const pieces = whole.units === 1 ? '1 piece' : `${whole.units.toLocaleString('en-US')} pieces`;
  return `${pieces}: ${formatCents(whole.averageCents)} at cost, ${formatCents(whole.retailCents)} at retail.`;
}

function PlaceTable({ sheet }: Readonly<{ sheet: StockWorthSheet }>) {
  const { places, whole } = sheet;
  return (
    <Table
      caption="By place"
      captionHeardOnly
      columns={[
        { name: 'Place' },
        { name: 'Pieces', figure: true },
        { name: 'Moving average', figure: true },
        { name: 'First in, first out', figure: true },
        { name: 'At retail', figure: true },
        { name: 'Cost not known', figure: true, wideOnly: true },
      ]}
      rows={places.map((place) => ({
        key: place.placeId,
        cells: [
          place.place,
          place.units.toLocaleString('en-US'),
          <Money key="average" cents={place.averageCents} />,
          <Money key="fifo" cents={place.fifoCents} />,
          <Money key="retail" cents={place.retailCents} />,
          place.unknownUnits === 0 ? '' : place.unknownUnits,
        ],
      }))}
      foot={[
        'In all',
        whole.units.toLocaleString('en-US'),
        <Money key="average" cents={whole.averageCents} />,
        <Money key="fifo" cents={whole.fifoCents} />,
        <Money key="retail" cents={whole.retailCents} />,
        whole.unknownUnits === 0 ? '' : whole.unknownUnits,
      ]}
    />
  );
}

/** Pieces without a known cost are named, because they are in no sum at cost. */
function Unknown({ sheet }: Readonly<{ sheet: StockWorthSheet }>) {
  const { unknown, unknownSkus } = sheet;
  if (unknownSkus === 0) return null;
  const more = unknownSkus - unknown.length;
  return (
    <Section title="Their cost is not known">
      <Notice kind="caution">
        {unknownSkus === 1 ? 'This one is' : `These ${unknownSkus.toLocaleString('en-US')} are`} in
        no sum at cost. Write down what making one costs, in a stock list with a column cost, before
        more of it comes.
      </Notice>
      <ul>
        {unknown.map((piece) => (
          <li key={piece.skuId}>
            <Link href={`/stock/${piece.sku}`}>
              <i>{piece.title}</i>, {piece.sku}
            </Link>
          </li>
        ))}
      </ul>
      {more > 0 ? <p>And {more.toLocaleString('en-US')} more; the file has them all.</p> : null}
    </Section>
  );
}

function HowWorkedOut({ sheet }: Readonly<{ sheet: StockWorthSheet }>) {
  const { movements, whole } = sheet;
  const pieces = whole.units - whole.unknownUnits;
  return (
    <Working
      steps={[
        `All ${movements.toLocaleString('en-US')} comings and goings were followed, piece by piece, in the order in which they were written down.`,
        `${pieces.toLocaleString('en-US')} pieces with a known cost are left: ${formatCents(whole.averageCents)} by the moving average, ${formatCents(whole.fifoCents)} first in first out.`,
        'Each place has its share by its pieces; the places add up to the whole, to the cent.',
        `At the retail prices of today all ${whole.units.toLocaleString('en-US')} come to ${formatCents(whole.retailCents)}.`,
      ]}
      formula="What came in costs what making it cost; what came back, what it left with. By the moving average every piece that leaves costs the average of what is there; first in first out, it costs what the oldest one cost. Moves between places and firsts that became seconds change nothing in the whole."
      source="OpenStax, Principles of Accounting, volume 1, section 10.3 (perpetual)"
      caution="Which of the two your books use is for your bookkeeper to say, once, and then it stays."
    />
  );
}
