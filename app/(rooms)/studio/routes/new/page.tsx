import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listBenches } from '@/lib/studio/reads/route-list';
import { RouteForm } from '../route-form';

export const metadata: Metadata = { title: 'Write a route' };

/** A route of the studio's own, besides the usual ones. */
export default async function NewRoutePage() {
  const actor = await requireActor('studio.keep');
  const benches = await listBenches(actor);
  return (
    <>
      <PageHead
        title="Write a route"
        back={{ href: '/studio/routes', name: 'Routes' }}
        lead="Step by step from clay to finished. Days are those of the step itself: waiting for a bench or a full kiln is reckoned apart."
      />
      <RouteForm route={null} benches={benches} />
    </>
  );
}
