import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { Notice } from '@/app/ui/page/notice';
import type { PieceWithThem } from '@/lib/consignment/reads';
import { sitsTooLongDays } from '@/lib/consignment/rules/owed';
import { daysBetween, type Day } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';

type WithThemProps = Readonly<{ pieces: readonly PieceWithThem[]; today: Day }>;

/** What of ours is with them, the longest first, and what should be swapped. */
export function WithThem({ pieces, today }: WithThemProps) {
  if (pieces.length === 0) {
    return (
      <Empty title="Nothing of ours is with them">
        Send the first pieces: scan them, and print the consignment note for both to sign.
      </Empty>
    );
  }
  const long = pieces.filter((piece) => piece.sitsTooLong).length;
  return (
    <>
      {long > 0 ? (
        <Notice kind="caution">
          {long === 1 ? 'One of them has' : `${long} of them have`} been there for more than{' '}
          {sitsTooLongDays} days. Swap {long === 1 ? 'it' : 'them'} for something else.
        </Notice>
      ) : null}
      <Table
        caption="With them"
        columns={[
          { name: 'Piece' },
          { name: 'SKU', wideOnly: true },
          { name: 'There for', figure: true },
          { name: 'Pieces', figure: true },
          { name: 'Retail each', figure: true },
        ]}
        rows={pieces.map((piece) => ({
          key: piece.skuId,
          cells: [
            <Link key="title" href={`/stock/${piece.sku}`}>
              <i>{piece.title}</i>
            </Link>,
            piece.numbers.length === 0
              ? piece.sku
              : `${piece.sku}, number ${piece.numbers.join(', ')}`,
            <Since key="since" piece={piece} today={today} />,
            piece.quantity,
            <Money key="retail" cents={piece.retailCents} />,
          ],
        }))}
        foot={[
          'Together',
          '',
          '',
          pieces.reduce((sum, piece) => sum + piece.quantity, 0),
          <Money
            key="retail"
            cents={sumCents(pieces.map((piece) => piece.retailCents * BigInt(piece.quantity)))}
          />,
        ]}
      />
    </>
  );
}

function Since({ piece, today }: Readonly<{ piece: PieceWithThem; today: Day }>) {
  const days = daysBetween(piece.sinceOn, today);
  const said = days === 1 ? '1 day' : `${days.toLocaleString('en-US')} days`;
  return (
    <>
      {piece.sitsTooLong ? <strong>{said}</strong> : said}
      <span className="heard-only">
        , since <DayText day={piece.sinceOn} />
      </span>
    </>
  );
}
