import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listBodies } from '@/lib/commissions/reads/enquiry/bodies';
import { bodySentence } from '@/lib/commissions/rules/enquiry/body-words';
import { BodyForm } from '../body-form';

export const metadata: Metadata = { title: 'A clay body' };

/** One clay body: what is known of it, to be changed. */
export default async function ClayBodyPage({
  params,
}: Readonly<{ params: Promise<{ id: string }> }>) {
  const actor = await requireActor('catalogue.keep');
  const { id } = await params;
  const body = (await listBodies(actor)).find((each) => each.id === id);
  if (!body) notFound();
  return (
    <>
      <PageHead
        title={body.name}
        lead={bodySentence(body)}
        back={{ href: '/settings/clay', name: 'Clay bodies' }}
      />
      <BodyForm body={body} />
    </>
  );
}
