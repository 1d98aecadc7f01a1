import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listGalleries, type GalleryListed } from '@/lib/consignment/reads';
import { formatCents, sumCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';

export const metadata: Metadata = { title: 'Other galleries' };

/** The other galleries that sell our pieces: what is with them, and what they owe. */
export default async function GalleriesPage() {
  const actor = await requireActor('outside.keep');
  const galleries = await listGalleries(actor, now());
  return (
    <>
      <PageHead title="Other galleries" lead={leadOf(galleries)}>
        <ButtonLink href="/galleries/new" variant={galleries.length > 0 ? 'quiet' : 'main'}>
          Begin with a gallery
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      {galleries.length === 0 ? (
        <Empty title="No other gallery sells for us yet">
          Agree on their share and when they pay, begin with them here, and send the first pieces
          with a consignment note. What they hold stays ours until it is paid.
        </Empty>
      ) : (
        <GalleryTable galleries={galleries} />
      )}
    </>
  );
}

function leadOf(galleries: readonly GalleryListed[]): string {
  const owed = sumCents(galleries.map((each) => each.owedCents));
  const late = sumCents(galleries.map((each) => each.lateCents));
  if (owed === 0n) return 'Nothing is owed by any of them.';
  if (late === 0n) return `They owe ${formatCents(owed)}, none of it late.`;
  return `They owe ${formatCents(owed)}, of which ${formatCents(late)} is late.`;
}

function GalleryTable({ galleries }: Readonly<{ galleries: readonly GalleryListed[] }>) {
  return (
    <Table
      caption="Other galleries"
      captionHeardOnly
      columns={[
        { name: 'Gallery' },
        { name: 'Where', wideOnly: true },
        { name: 'Their share', figure: true, wideOnly: true },
        { name: 'Pieces', figure: true },
        { name: 'At retail', figure: true, wideOnly: true },
        { name: 'Owed', figure: true },
        { name: 'Late', figure: true },
      ]}
      rows={galleries.map((each) => ({
        key: each.consigneeId,
        cells: [
          <Link key="name" href={`/galleries/${each.consigneeId}`}>
            {each.name}
          </Link>,
          each.endedOn === null ? (each.city ?? '') : 'ended',
          `${each.sharePercent}%`,
          each.pieces.toLocaleString('en-US'),
          <Money key="retail" cents={each.retailCents} />,
          <Money key="owed" cents={each.owedCents} />,
          each.lateCents === 0n ? '' : <Money key="late" cents={each.lateCents} />,
        ],
      }))}
    />
  );
}
