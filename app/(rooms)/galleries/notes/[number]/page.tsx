import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { numberIn } from '@/app/(rooms)/stock/places/number-in';
import { requireActor } from '@/lib/access/reads';
import { findNote } from '@/lib/consignment/reads/papers';

export const metadata: Metadata = { title: 'A consignment note' };

type NotePageProps = Readonly<{ params: Promise<{ number: string }> }>;

/** A consignment note: what went to another gallery, or came back, at which retail price. */
export default async function NotePage({ params }: NotePageProps) {
  const actor = await requireActor('outside.keep');
  const number = numberIn((await params).number);
  const note = number === null ? null : await findNote(actor, number);
  if (!note) notFound();
  const { gallery } = note;
  return (
    <>
      <PageHead
        title={note.isBack ? `Taken back, note ${note.number}` : `Consignment note ${note.number}`}
        back={{ href: `/galleries/${gallery.consigneeId}`, name: gallery.name }}
        lead={
          <>
            {note.from} to {note.to}, <DayText day={note.on} />,{' '}
            <Link href={`/stock/places/moves/${note.moveNumber}`}>move {note.moveNumber}</Link>.
          </>
        }
      >
        <ButtonLink href={`/galleries/notes/${note.number}/pdf`} download size="counter">
          Print it to be signed
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      <Table
        caption="The pieces"
        captionHeardOnly
        columns={[
          { name: 'Piece' },
          { name: 'SKU' },
          { name: 'Pieces', figure: true },
          { name: 'Retail each', figure: true },
        ]}
        rows={note.lines.map((line) => ({
          key: `${line.sku} ${line.number ?? ''}`,
          cells: [
            <i key="title">{line.title}</i>,
            line.number === null ? line.sku : `${line.sku}, number ${line.number}`,
            line.quantity,
            <Money key="retail" cents={line.retailCents} />,
          ],
        }))}
        foot={['Together', '', note.pieces, <Money key="retail" cents={note.retailCents} />]}
      />
      {note.note === '' ? null : <p>{note.note}</p>}
    </>
  );
}
