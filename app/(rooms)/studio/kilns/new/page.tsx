import type { Metadata } from 'next';
import { Caution } from '@/app/ui/page/caution';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import { cautionsFor } from '@/lib/studio/rules/kilns/cautions';
import { KilnForm } from '../kiln-form';

export const metadata: Metadata = { title: 'Another kiln' };

/** A kiln to write down. */
export default async function NewKiln() {
  const actor = await requireActor('studio.keep');
  const [{ lengthUnit }, { degrees }] = await Promise.all([getGallery(), getStudioSettings()]);
  return (
    <>
      <PageHead
        title="Another kiln"
        back={{ href: '/studio/kilns', name: 'Kilns' }}
        lead="Its room decides what fits, its plate what a firing costs, its cones what can wait for it."
      />
      <InThisRoom room="studio" here="kilns" roles={actor.roles} />
      {cautionsFor('putting_in_a_kiln').map(({ key, words }) => (
        <Caution key={key}>{words}</Caution>
      ))}
      <KilnForm kiln={null} lengthUnit={lengthUnit} degrees={degrees} />
    </>
  );
}
