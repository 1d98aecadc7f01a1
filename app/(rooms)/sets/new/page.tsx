import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { SetForm } from '../set-form';

export const metadata: Metadata = { title: 'Put a set together' };

/** Pieces that belong together, with a price for the whole. */
export default async function NewSetPage() {
  await requireActor('catalogue.keep');
  return (
    <>
      <PageHead title="Put a set together" back={{ href: '/sets', name: 'Sets' }} />
      <SetForm set={null} />
    </>
  );
}
