import { InstantText } from '@/app/ui/figures/day-text';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import type { CollectorPage } from '@/lib/collectors/reads';
import type { CommissionInList } from '@/lib/commissions/reads';
import { CommissionLines } from './commission-lines';
import { WhatStays } from './privacy/what-stays';
import { Purchases } from './purchases';

type ErasedProps = Readonly<{
  collector: CollectorPage;
  commissions: readonly CommissionInList[];
  zone: string;
}>;

/** What is left of somebody who asked to be struck out: what the books must keep. */
export function Erased({ collector, commissions, zone }: ErasedProps) {
  const { name, erasedAt, purchases } = collector;
  return (
    <>
      <PageHead title={name} back={{ href: '/collectors', name: 'Collectors' }} />
      <Notice kind="caution" title="Struck out at their request">
        {erasedAt ? <InstantText at={erasedAt} zone={zone} /> : null}
      </Notice>
      <Section title="What the books keep">
        <WhatStays />
        <Purchases purchases={purchases} />
        {commissions.length > 0 ? <CommissionLines commissions={commissions} /> : null}
      </Section>
    </>
  );
}
