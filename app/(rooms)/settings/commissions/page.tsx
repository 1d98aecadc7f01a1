import type { Metadata } from 'next';
import { Caution } from '@/app/ui/page/caution';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import { getGallery } from '@/lib/platform/settings';
import { CommissionTermsForm } from './terms-form';

export const metadata: Metadata = { title: 'How commissions are priced and agreed' };

/** Rates, hours, percents, plan, rounds and terms: what every proposal begins with. */
export default async function CommissionTermsPage() {
  const actor = await requireActor('settings.keep');
  const [gallery, terms] = await Promise.all([getGallery(), readCommissionTerms()]);
  return (
    <>
      <PageHead
        title="How commissions are priced and agreed"
        lead="What every proposal begins with. What you have not changed is common practice; your own history is better."
      />
      <InThisRoom room="settings" here="commissions" roles={actor.roles} />
      <CommissionTermsForm gallery={gallery} terms={terms} />
      <Caution>
        terms, what stays when somebody cancels, and fees meet the law of your place. A lawyer looks
        them over before the first is signed.
      </Caution>
    </>
  );
}
