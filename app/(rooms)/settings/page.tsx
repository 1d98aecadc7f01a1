import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listRates } from '@/lib/tax/reads';
import { GalleryForm } from './gallery-form';
import { RateForm, RateList } from './rates';

export const metadata: Metadata = { title: 'How the gallery works' };

/** Name, address, what receipts say, and the sales tax by authority and day. */
export default async function Settings() {
  await requireActor('settings.keep');
  const gallery = await getGallery();
  const rates = await listRates(gallery.taxPlaceId);
  const today = dayOf(now(), gallery.timeZone);
  return (
    <>
      <PageHead
        title="How the gallery works"
        back={{ href: '/staff', name: 'Staff' }}
        lead={`Days here begin and end in the time zone ${gallery.timeZone.replaceAll('_', ' ')}.`}
      />
      <Columns
        wide={
          <Section title="The gallery" lead="As it stands on receipts, labels and papers.">
            <GalleryForm gallery={gallery} />
          </Section>
        }
        beside={
          <>
            <Section title="Sales tax" lead="What each authority takes of a sale at the gallery.">
              <RateList rates={rates} today={today} />
            </Section>
            <Section title="A rate from a day on">
              <RateForm rates={rates} today={today} />
            </Section>
          </>
        }
      />
    </>
  );
}
