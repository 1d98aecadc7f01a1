import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { getCollector } from '@/lib/collectors/reads';
import { CollectorForm } from '../../collector-form';

export const metadata: Metadata = { title: 'Change a collector' };

type ChangeCollectorPageProps = Readonly<{ params: Promise<{ id: string }> }>;

/** What is known of a collector, to be changed. */
export default async function ChangeCollectorPage({ params }: ChangeCollectorPageProps) {
  const actor = await requireActor('collectors.write');
  const { id } = await params;
  const known = await getCollector(actor, id);
  if (!known || known.erasedAt) notFound();
  return (
    <>
      <PageHead
        title={known.name}
        lead="Change what is known."
        back={{ href: `/collectors/${id}`, name: known.name }}
      />
      <CollectorForm known={known} />
    </>
  );
}
