import type { Metadata } from 'next';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { TermsForm } from './terms-form';

export const metadata: Metadata = { title: 'What holds at the counter' };

/** Discounts, returns, holds, layaways, approval and the drawer. */
export default async function CounterTerms() {
  const actor = await requireActor('settings.keep');
  const gallery = await getGallery();
  return (
    <>
      <PageHead
        title="What holds at the counter"
        back={{ href: '/staff', name: 'Staff' }}
        lead="Who may take off how much, how long things are kept, and what is given back."
      />
      <InThisRoom room="settings" here="counter" roles={actor.roles} />
      <TermsForm gallery={gallery} />
    </>
  );
}
