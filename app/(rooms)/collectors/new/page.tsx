import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { lettersOf } from '@/lib/collectors/rules';
import { CollectorForm } from '../collector-form';

export const metadata: Metadata = { title: 'Add a collector' };

type NewCollectorPageProps = Readonly<{ searchParams: Promise<{ name?: string | string[] }> }>;

/** Somebody new for the address book. */
export default async function NewCollectorPage({ searchParams }: NewCollectorPageProps) {
  await requireActor('collectors.write');
  const { name } = await searchParams;
  return (
    <>
      <PageHead
        title="Add a collector"
        lead="A name is enough; the rest can come later."
        back={{ href: '/collectors', name: 'Collectors' }}
      />
      <CollectorForm known={null} name={lettersOf(typeof name === 'string' ? name : '')} />
    </>
  );
}
