import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { InstantText } from '@/app/ui/figures/day-text';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { pageInput } from '@/lib/stock/input';
import { findCount, type CountSheet } from '@/lib/stock/reads/moves/counts';
import { numberIn } from '../../places/number-in';
import { Leaves } from '../../leaves';
import { BookIt, LeaveIt } from './book-it';
import { BookedLines, CountedLines } from './counted-lines';
import { ScanForm } from './scan-form';

export const metadata: Metadata = { title: 'A count' };

type CountPageProps = Readonly<{
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[]>>;
}>;

/** One count: scan, see what differs, say why, book it. */
export default async function CountPage({ params, searchParams }: CountPageProps) {
  const actor = await requireActor('stock.move');
  const number = numberIn((await params).number);
  const { page } = pageInput.parse(await searchParams);
  const count = number === null ? null : await findCount(actor, number, page);
  if (!count) notFound();
  const { timeZone } = await getGallery();
  return (
    <>
      <PageHead
        title={`Count ${count.number}`}
        back={{ href: '/stock/counts', name: 'Counts' }}
        lead={
          <>
            {count.partOnly ? 'A part of ' : 'All of '}
            {count.place}, begun by {count.startedBy},{' '}
            <InstantText at={count.startedAt} zone={timeZone} />.
          </>
        }
      />
      <InThisRoom room="stock" here="counts" roles={actor.roles} />
      {count.state === 'open' ? <Open count={count} /> : <Over count={count} timeZone={timeZone} />}
    </>
  );
}

function Open({ count }: Readonly<{ count: CountSheet }>) {
  return (
    <>
      <Columns
        wide={
          <>
            <ScanForm countId={count.id} />
            {count.lines.length === 0 ? (
              <Empty title="Nothing is counted yet">
                Scan the first piece. Several devices may scan into this count at once.
              </Empty>
            ) : (
              <Section title={countedWords(count)}>
                <CountedLines countId={count.id} lines={count.lines} />
                <CountLeaves count={count} />
              </Section>
            )}
          </>
        }
        beside={
          <Slab>
            <BookIt count={count} />
            <LeaveIt countId={count.id} />
          </Slab>
        }
      />
    </>
  );
}

function countedWords({ pieces, skus }: CountSheet): string {
  const of = skus === 1 ? 'one kind' : `${skus.toLocaleString('en-US')} different ones`;
  return `${pieces.toLocaleString('en-US')} counted so far, ${of}`;
}

function Over({ count, timeZone }: Readonly<{ count: CountSheet; timeZone: string }>) {
  const at = count.bookedAt ?? count.leftAt;
  return (
    <>
      <Notice kind={count.state === 'booked' ? 'done' : 'caution'}>
        {count.state === 'booked' ? 'It was booked' : 'It was left, and nothing of it was booked,'}{' '}
        {at ? <InstantText at={at} zone={timeZone} /> : null}.
      </Notice>
      <Section title="What was counted">
        <BookedLines count={count} />
        <CountLeaves count={count} />
      </Section>
    </>
  );
}

function CountLeaves({ count }: Readonly<{ count: CountSheet }>) {
  return (
    <Leaves
      page={count.page}
      pages={count.pages}
      hrefOf={(leaf) => `/stock/counts/${count.number}?page=${leaf}`}
    />
  );
}
