import type { Metadata } from 'next';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { GalleryForm } from './gallery-form';

export const metadata: Metadata = { title: 'How the gallery works' };

/** Name, address and how things are shown. */
export default async function Settings() {
  const actor = await requireActor('settings.keep');
  const gallery = await getGallery();
  return (
    <>
      <PageHead
        title="How the gallery works"
        back={{ href: '/staff', name: 'Staff' }}
        lead={`Days here begin and end in the time zone ${gallery.timeZone.replaceAll('_', ' ')}.`}
      />
      <InThisRoom room="settings" here="gallery" roles={actor.roles} />
      <Section title="The gallery" lead="As it stands on receipts, labels and papers.">
        <GalleryForm gallery={gallery} />
      </Section>
    </>
  );
}
