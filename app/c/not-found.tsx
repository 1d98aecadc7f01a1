import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { findGallery } from '@/lib/platform/settings';
import { ReachGallery } from './parts/reach-gallery';

export const metadata: Metadata = { title: 'This address no longer opens a page' };

/** The same calm page for an address that never was, ran out, or was withdrawn. */
export default async function NoLongerOpens() {
  const gallery = await findGallery();
  return (
    <>
      <PageHead
        title="This address no longer opens a page"
        lead="Addresses like this one open for a while only. The gallery gladly sends you a new one."
      />
      {gallery ? <ReachGallery gallery={gallery} /> : null}
    </>
  );
}
