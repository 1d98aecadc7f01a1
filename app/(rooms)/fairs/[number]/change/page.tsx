import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listTaxPlaces } from '@/lib/tax/reads';
import { FairForm } from '../../fair-form';
import { readFairOfAddress, type FairAddress } from '../read-fair';

export const metadata: Metadata = { title: 'Change a fair' };

/** What is known of a fair, to be changed; after it is closed only what it cost. */
export default async function ChangeFairPage({ params }: FairAddress) {
  const actor = await requireActor('outside.keep');
  const { fair } = await readFairOfAddress(actor, params);
  const lead = fair.closedAt
    ? 'It is counted back in: its name, days and tax stay as they were. Costs, hours and the note may change.'
    : undefined;
  return (
    <>
      <PageHead
        title={fair.name}
        back={{ href: `/fairs/${fair.number}`, name: fair.name }}
        lead={lead}
      />
      <Slab>
        <FairForm fair={fair} taxPlaces={await listTaxPlaces()} homeTaxPlaceId={fair.taxPlaceId} />
      </Slab>
    </>
  );
}
