import Link from 'next/link';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Facts } from '@/app/ui/page/facts';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { getCollector, type CollectorPage, type Purchase } from '@/lib/collectors/reads';
import { listOpenPapers } from '@/lib/collectors/reads/papers';
import { getTradePage } from '@/lib/collectors/reads/trade-page';
import { addressLine, collectorKindWords } from '@/lib/collectors/rules';
import { listCommissionsOf } from '@/lib/commissions/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { CommissionLines } from './commission-lines';
import { OfTheTrade } from './of-the-trade';
import { OpenInTheirName } from './open-papers';
import css from '../collectors.module.css';

/** The title and the page ask for the same collector; they are read once. */
const findOnce = cache(getCollector);

type CollectorPageProps = Readonly<{ params: Promise<{ id: string }> }>;

export async function generateMetadata({ params }: CollectorPageProps) {
  const actor = await requireActor('collectors.see');
  const { id } = await params;
  return { title: (await findOnce(actor, id))?.name ?? 'Collector' };
}

/** A collector: how to reach them, what they bought, what they asked for. */
export default async function CollectorPage({ params }: CollectorPageProps) {
  const actor = await requireActor('collectors.see');
  const { id } = await params;
  const collector = await findOnce(actor, id);
  if (!collector) notFound();
  const [commissions, papers, trade, { timeZone }] = await Promise.all([
    listCommissionsOf(actor, id),
    listOpenPapers(actor, id),
    isAllowed(actor.roles, 'tax.see') ? getTradePage(actor, id) : null,
    getGallery(),
  ]);
  const mayWrite = isAllowed(actor.roles, 'collectors.write');
  const mayAsk = isAllowed(actor.roles, 'commissions.write');
  return (
    <>
      <PageHead
        title={collector.name}
        lead={capital(collectorKindWords[collector.kind])}
        back={{ href: '/collectors', name: 'Collectors' }}
      >
        {mayAsk ? (
          <ButtonLink href={`/commissions/new?collector=${id}`}>Open a commission</ButtonLink>
        ) : null}
        {mayWrite ? (
          <ButtonLink href={`/collectors/${id}/change`} variant="quiet">
            Change what is known
          </ButtonLink>
        ) : null}
      </PageHead>
      <Columns
        wide={
          <>
            <OpenInTheirName papers={papers} zone={timeZone} />
            <Section title="Commissions">
              <CommissionLines commissions={commissions} />
            </Section>
            <Section title="What they bought">
              <Purchases purchases={collector.purchases} />
            </Section>
          </>
        }
        beside={
          <>
            <Section title="How to reach them">
              <Reaching collector={collector} />
            </Section>
            {trade ? (
              <OfTheTrade
                trade={trade}
                today={dayOf(now(), timeZone)}
                href={`/collectors/${id}/trade`}
                isTrade={['designer', 'business'].includes(collector.kind)}
              />
            ) : null}
          </>
        }
      />
    </>
  );
}

function Reaching({ collector }: Readonly<{ collector: CollectorPage }>) {
  const { phone, email, note } = collector;
  return (
    <>
      <Facts
        facts={[
          { name: 'Telephone', value: phone && <a href={`tel:${phone}`}>{phone}</a> },
          {
            name: 'Mail',
            value: email && (
              <a href={`mailto:${email}`} className={css['mail']}>
                {email}
              </a>
            ),
          },
          { name: 'Address', value: addressLine(collector) },
        ]}
      />
      {note ? <p className={css['note']}>{note}</p> : null}
    </>
  );
}

function Purchases({ purchases }: Readonly<{ purchases: readonly Purchase[] }>) {
  if (purchases.length === 0) {
    return <p className={css['quiet']}>Nothing at the counter under this name yet.</p>;
  }
  const seesMoney = purchases.every((purchase) => purchase.totalCents !== null);
  const columns = [{ name: 'Receipt' }, { name: 'Day' }, { name: 'Pieces' }];
  return (
    <Table
      caption="Receipts, the newest first"
      captionHeardOnly
      columns={seesMoney ? [...columns, { name: 'With tax', figure: true }] : columns}
      rows={purchases.map(({ receiptNumber, soldOn, titles, totalCents }) => ({
        key: String(receiptNumber),
        cells: [
          seesMoney ? (
            <Link key="receipt" href={`/receipts/${receiptNumber}`}>
              {receiptNumber}
            </Link>
          ) : (
            receiptNumber
          ),
          <DayText key="day" day={soldOn} />,
          titles.join(', '),
          ...(totalCents === null ? [] : [<Money key="total" cents={totalCents} />]),
        ],
      }))}
    />
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
