import { notFound, redirect } from 'next/navigation';
import { cache } from 'react';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed, type Permission } from '@/lib/access/rules';
import { getCollector } from '@/lib/collectors/reads';
import { getCard } from '@/lib/collectors/reads/card';
import { listMerged } from '@/lib/collectors/reads/merges';
import { listOwned } from '@/lib/collectors/reads/owned';
import { listOpenPapers } from '@/lib/collectors/reads/papers';
import { getTradePage } from '@/lib/collectors/reads/trade-page';
import { listCommissionsOf } from '@/lib/commissions/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { Beside } from './card/beside';
import { Notes } from './card/notes';
import { Owned } from './card/owned';
import { CommissionLines } from './commission-lines';
import { Erased } from './erased';
import { Head } from './head';
import { Merged } from './merged';
import { OfTheTrade } from './of-the-trade';
import { OpenInTheirName } from './open-papers';
import { Purchases } from './purchases';
import { Reaching } from './reaching';

/** The title and the page ask for the same collector; they are read once. */
const findOnce = cache(getCollector);

type CollectorPageProps = Readonly<{ params: Promise<{ id: string }> }>;

export async function generateMetadata({ params }: CollectorPageProps) {
  const actor = await requireActor('collectors.see');
  const { id } = await params;
  return { title: (await findOnce(actor, id))?.name ?? 'Collector' };
}

/** A collector: how to reach them, what they own, what they bought, what they asked for. */
export default async function CollectorPage({ params }: CollectorPageProps) {
  const actor = await requireActor('collectors.see');
  const { id } = await params;
  const collector = await findOnce(actor, id);
  if (!collector) notFound();
  if (collector.id !== id) redirect(`/collectors/${collector.id}`);
  const [commissions, papers, trade, card, owned, merged, { timeZone }] = await Promise.all([
    listCommissionsOf(actor, id),
    listOpenPapers(actor, id),
    isAllowed(actor.roles, 'tax.see') ? getTradePage(actor, id) : null,
    getCard(actor, id),
    listOwned(actor, id),
    listMerged(actor, id),
    getGallery(),
  ]);
  if (collector.erasedAt) return <Erased {...{ collector, commissions }} zone={timeZone} />;
  const may = (permission: Permission) => isAllowed(actor.roles, permission);
  const mayWrite = may('collectors.write');
  const today = dayOf(now(), timeZone);
  return (
    <>
      <Head
        {...{ collector, mayWrite }}
        mayAsk={may('commissions.write')}
        mayErase={may('collectors.erase')}
      />
      <Columns
        wide={
          <>
            <Reaching collector={collector} />
            <OpenInTheirName papers={papers} zone={timeZone} />
            <Section title="Commissions">
              <CommissionLines commissions={commissions} />
            </Section>
            <Section title="Notes">
              <Notes notes={card.notes} zone={timeZone} {...{ mayWrite, collectorId: id }} />
            </Section>
            <Section title="What they own">
              <Owned
                {...{ owned, mayWrite, addresses: card.addresses, collectorId: id }}
                seesReceipts={may('receipts.see')}
              />
            </Section>
            <Section title="What they bought">
              <Purchases purchases={collector.purchases} />
            </Section>
          </>
        }
        beside={
          <>
            <Beside {...{ card, today, mayWrite, collectorId: id }} />
            {trade ? (
              <OfTheTrade
                {...{ trade, today, href: `/collectors/${id}/trade` }}
                isTrade={['designer', 'business'].includes(collector.kind)}
              />
            ) : null}
            <Merged
              {...{ merged, collectorId: id, zone: timeZone }}
              mayMerge={may('collectors.merge')}
            />
          </>
        }
      />
    </>
  );
}
