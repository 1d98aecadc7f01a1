import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { routeIdInput } from '@/lib/studio/input';
import { findRoute, listBenches } from '@/lib/studio/reads/route-list';
import { putAway } from '../actions';
import { RouteForm } from '../route-form';

export const metadata: Metadata = { title: 'Change a route' };

/** One route, to be changed for the jobs that are begun later, or put away. */
export default async function RoutePage({ params }: Readonly<{ params: Promise<{ id: string }> }>) {
  const actor = await requireActor('studio.keep');
  const id = routeIdInput.safeParse((await params).id);
  const route = id.success ? await findRoute(actor, id.data) : null;
  if (!route || route.hasEnded) notFound();
  const benches = await listBenches(actor);
  return (
    <>
      <PageHead
        title={route.name}
        back={{ href: '/studio/routes', name: 'Routes' }}
        lead="Jobs that are under way keep the route they began with."
      />
      <RouteForm route={route} benches={benches} />
      {route.isUsual ? null : (
        <Section title="No longer used">
          <FormFrame action={putAway} label="Put this route away">
            <RequestKey />
            <input type="hidden" name="routeId" value={route.id} />
            <SubmitButton variant="danger">Put this route away</SubmitButton>
          </FormFrame>
        </Section>
      )}
    </>
  );
}
