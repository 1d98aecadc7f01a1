import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { findGalleryTerms, listWithThem, type GalleryTerms } from '@/lib/consignment/reads';
import { listNotes, type NoteListed } from '@/lib/consignment/reads/papers';
import { listStatements } from '@/lib/consignment/reads/statements';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { ChangeAgreed } from '../terms-form';
import { Owed } from './owed';
import { WithThem } from './with-them';

export const metadata: Metadata = { title: 'Another gallery' };

type SheetProps = Readonly<{ params: Promise<{ id: string }> }>;

/** One other gallery: what is with them, what they sold and owe, what was agreed. */
export default async function GalleryPage({ params }: SheetProps) {
  const actor = await requireActor('outside.keep');
  const gallery = await findGalleryTerms(actor, (await params).id);
  if (!gallery) notFound();
  const at = now();
  const [pieces, notes, statements, { timeZone }] = await Promise.all([
    listWithThem(actor, gallery, at),
    listNotes(actor, gallery.consigneeId),
    listStatements(actor, gallery.consigneeId),
    getGallery(),
  ]);
  return (
    <>
      <PageHead
        title={gallery.name}
        back={{ href: '/galleries', name: 'Other galleries' }}
        lead={gallery.address ?? 'Their address is not known yet.'}
      >
        {gallery.endedOn === null ? <Acts id={gallery.consigneeId} /> : null}
      </PageHead>
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      <Columns
        wide={<WithThem pieces={pieces} today={dayOf(at, timeZone)} />}
        beside={
          <Slab>
            <h2>What is agreed</h2>
            <Agreed gallery={gallery} />
            {gallery.endedOn === null ? <ChangeAgreed gallery={gallery} /> : null}
          </Slab>
        }
      />
      <Owed statements={statements} today={dayOf(at, timeZone)} />
      <Section title="Notes">
        <Notes notes={notes} />
      </Section>
    </>
  );
}

function Acts({ id }: Readonly<{ id: string }>) {
  return (
    <>
      <ButtonLink href={`/galleries/${id}/sold`} size="counter">
        They sold something
      </ButtonLink>
      <ButtonLink href={`/galleries/${id}/send`} variant="quiet" size="counter">
        Send pieces
      </ButtonLink>
      <ButtonLink href={`/galleries/${id}/back`} variant="quiet" size="counter">
        Take pieces back
      </ButtonLink>
    </>
  );
}

function Agreed({ gallery }: Readonly<{ gallery: GalleryTerms }>) {
  const { sharePercent, payDays, sinceOn, endedOn, terms, reach, collectorId, name } = gallery;
  return (
    <Facts
      facts={[
        { name: 'Their share', value: `${sharePercent}% of retail` },
        { name: 'They pay within', value: payDays === 1 ? '1 day' : `${payDays} days` },
        { name: 'Since', value: <DayText day={sinceOn} /> },
        ...(endedOn === null ? [] : [{ name: 'Ended', value: <DayText day={endedOn} /> }]),
        { name: 'Reached at', value: reach.phone ?? reach.email },
        {
          name: 'In the address book',
          value: <Link href={`/collectors/${collectorId}`}>{name}</Link>,
        },
        { name: 'Besides', value: terms === '' ? null : terms, notKnown: 'nothing more' },
      ]}
    />
  );
}

function Notes({ notes }: Readonly<{ notes: readonly NoteListed[] }>) {
  if (notes.length === 0) return <p>Nothing went there yet, and nothing came back.</p>;
  return (
    <ul>
      {notes.map((note) => (
        <li key={note.number}>
          <Link href={`/galleries/notes/${note.number}`}>Note {note.number}</Link>,{' '}
          <DayText day={note.on} />: {note.pieces} {note.isBack ? 'came back' : 'went there'}
        </li>
      ))}
    </ul>
  );
}
