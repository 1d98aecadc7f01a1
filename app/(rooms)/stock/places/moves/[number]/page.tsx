import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { findMove } from '@/lib/stock/reads/moves/papers';
import { numberIn } from '../../number-in';

export const metadata: Metadata = { title: 'A move' };

type MovePaperProps = Readonly<{ params: Promise<{ number: string }> }>;

/** The paper of a move: what went from where to where, by whom. */
export default async function MovePaperPage({ params }: MovePaperProps) {
  const actor = await requireActor('stock.move');
  const number = numberIn((await params).number);
  const move = number === null ? null : await findMove(actor, number);
  if (!move) notFound();
  return (
    <>
      <PageHead
        title={`Move ${move.number}`}
        back={{ href: '/stock/places', name: 'Places and moves' }}
        lead={
          <>
            {move.from} to {move.to}, <DayText day={move.movedOn} />, by {move.by}.
          </>
        }
      >
        <ButtonLink href={`/stock/places/moves/${move.number}/pdf`} download size="counter">
          Print it
        </ButtonLink>
        <ButtonLink href="/stock/places/move" variant="quiet" size="counter">
          Move more
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="places" roles={actor.roles} />
      {move.consignmentNote !== null && isAllowed(actor.roles, 'outside.keep') ? (
        <p>
          It stands under{' '}
          <Link href={`/galleries/notes/${move.consignmentNote}`}>
            consignment note {move.consignmentNote}
          </Link>
          .
        </p>
      ) : null}
      <Table
        caption="What was moved"
        captionHeardOnly
        columns={[
          { name: 'Piece' },
          { name: 'SKU' },
          { name: 'What it is', wideOnly: true },
          { name: 'Pieces', figure: true },
        ]}
        rows={move.lines.map(({ piece, quantity, numbers }) => ({
          key: piece.id,
          cells: [
            <Link key="title" href={`/stock/${piece.code}`}>
              <i>{piece.title}</i>
            </Link>,
            piece.code,
            numbers.length === 0 ? piece.what : `${piece.what}, number ${numbers.join(', ')}`,
            quantity,
          ],
        }))}
        foot={['Together', '', '', move.pieces]}
      />
      {move.note === '' ? null : <p>{move.note}</p>}
    </>
  );
}
