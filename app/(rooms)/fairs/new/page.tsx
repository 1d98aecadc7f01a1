import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { listTaxPlaces } from '@/lib/tax/reads';
import { FairForm } from '../fair-form';

export const metadata: Metadata = { title: 'Write a fair down' };

/** A new fair. */
export default async function NewFairPage() {
  await requireActor('outside.keep');
  const [taxPlaces, { taxPlaceId }] = await Promise.all([listTaxPlaces(), getGallery()]);
  return (
    <>
      <PageHead
        title="Write a fair down"
        back={{ href: '/fairs', name: 'Fairs' }}
        lead="Sales tax is charged at the rate of the fair’s town."
      />
      <Slab>
        <FairForm fair={null} taxPlaces={taxPlaces} homeTaxPlaceId={taxPlaceId} />
      </Slab>
    </>
  );
}
