import type { Metadata } from 'next';
import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listBatches, type BatchTold } from '@/lib/commissions/reads/colours/studio';
import { dayOf } from '@/lib/dates/rules';
import { listGlazeNames } from '@/lib/glazes/reads/tiles';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { formatWeight } from '@/lib/units/rules';
import { LetGo, NewBatch } from './batch-forms';

export const metadata: Metadata = { title: 'Buckets of glaze' };

type GlazesProps = Readonly<{ searchParams: Promise<{ done?: string | string[] }> }>;

/** The buckets of glaze by the number on their label, and for which commission each is kept. */
export default async function Glazes({ searchParams }: GlazesProps) {
  const actor = await requireActor('commissions.write');
  const [batches, gallery] = await Promise.all([listBatches(actor), getGallery()]);
  const today = dayOf(now(), gallery.timeZone);
  const glazes = await listGlazeNames(actor, today);
  const { done } = await searchParams;
  return (
    <>
      <PageHead
        title="Buckets of glaze"
        lead="A new bucket can be another colour: each has its number and a test of its own."
      />
      <InThisRoom room="settings" here="glazes" roles={actor.roles} />
      {done === 'yes' ? (
        <Notice kind="done">The bucket is written down. A colour tile can name it now.</Notice>
      ) : null}
      {done === 'released' ? (
        <Notice kind="done">The bucket is kept for nobody now. The reason is on the sheet.</Notice>
      ) : null}
      <Columns
        wide={
          <Section title="Written down">
            <Batches batches={batches} unit={gallery.lengthUnit === 'in' ? 'lb' : 'kg'} />
          </Section>
        }
        beside={
          <>
            <NewBatch today={today} glazes={glazes} />
            <LetGo batches={batches} />
          </>
        }
      />
      <Caution>
        glaze dust scars lungs: mix with a fitted respirator, wipe wet, never sweep. On food only
        what a laboratory’s leach test allows.
      </Caution>
    </>
  );
}

function Batches({
  batches,
  unit,
}: Readonly<{ batches: readonly BatchTold[]; unit: 'lb' | 'kg' }>) {
  if (batches.length === 0) {
    return <Empty title="No bucket is written down">The next one gets a number and a label.</Empty>;
  }
  return (
    <Table
      caption="Buckets of glaze"
      captionHeardOnly
      columns={[
        { name: 'Number' },
        { name: 'Glaze' },
        { name: 'Mixed', wideOnly: true },
        { name: 'Weight', figure: true, wideOnly: true },
        { name: 'Kept for' },
      ]}
      rows={batches.map(({ id, number, glaze, inBook, mixedOn, weightG, keptFor }) => ({
        key: id,
        cells: [
          number,
          inBook ? <InBook key="glaze" glaze={glaze} inBook={inBook} /> : glaze,
          <DayText key="day" day={mixedOn} />,
          weightG === null ? '' : formatWeight(weightG, unit),
          keptFor ? (
            <Link key="for" href={`/commissions/${keptFor.number}`}>
              {keptFor.title}
            </Link>
          ) : (
            'nobody'
          ),
        ],
      }))}
    />
  );
}

/** The glaze of a bucket, with the way to its page for those who see the studio. */
function InBook({
  glaze,
  inBook,
}: Readonly<{ glaze: string; inBook: NonNullable<BatchTold['inBook']> }>) {
  return (
    <>
      <Link href={`/studio/glazes/${inBook.id}`}>{glaze}</Link>
      {inBook.version === null ? null : `, recipe ${inBook.version}`}
    </>
  );
}
