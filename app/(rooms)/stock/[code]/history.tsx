import Link from 'next/link';
import { InstantText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import type { MovementTold, PieceSheet } from '@/lib/stock/reads/stock-room';
import { movementWords } from '@/lib/stock/rules/words';
import css from '../stock.module.css';

type HistoryProps = Readonly<{ sheet: PieceSheet; timeZone: string }>;

/** What happened to a piece's stock, the newest first, in words. */
export function History({ sheet, timeZone }: HistoryProps) {
  const { movements, movementsInAll } = sheet;
  if (movements.length === 0) {
    return <p className={css['quiet']}>Nothing has come or gone yet.</p>;
  }
  return (
    <>
      <Table
        caption="What came and went"
        captionHeardOnly
        columns={[
          { name: 'What' },
          { name: 'When' },
          { name: 'Where', wideOnly: true },
          { name: 'Who', wideOnly: true },
          { name: 'Pieces', figure: true },
        ]}
        rows={movements.map((movement) => ({
          key: String(movement.id),
          cells: [
            <What key="what" movement={movement} />,
            <InstantText key="when" at={movement.at} zone={timeZone} />,
            movement.place,
            movement.staff ?? '',
            movement.quantity > 0 ? `+${movement.quantity}` : `−${-movement.quantity}`,
          ],
        }))}
      />
      {movementsInAll > movements.length ? (
        <p className={css['quiet']}>
          The latest {movements.length} of {movementsInAll.toLocaleString('en-US')}.
        </p>
      ) : null}
    </>
  );
}

function What({ movement }: Readonly<{ movement: MovementTold }>) {
  const note = movement.note === '' ? '' : `: ${movement.note}`;
  return (
    <>
      {movementWords(movement)}
      {note}
      {movement.saleNumber === null ? null : (
        <>
          {', '}
          <Link href={`/receipts/${movement.saleNumber}`}>receipt {movement.saleNumber}</Link>
        </>
      )}
      {movement.stockListId === null ? null : (
        <>
          {', '}
          <Link href={`/stock/list/${movement.stockListId}`}>from a list</Link>
        </>
      )}
    </>
  );
}
