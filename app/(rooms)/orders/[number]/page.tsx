import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { shortReach } from '@/lib/collectors/rules';
import { dayOf } from '@/lib/dates/rules';
import { findOrder } from '@/lib/orders/reads';
import type { OrderShown } from '@/lib/orders/reads/order';
import { mailOrderReminder } from '@/lib/orders/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import css from '../orders.module.css';
import { OrderActs } from './order-acts';

export const metadata: Metadata = { title: 'A special order' };

type OrderPageProps = Readonly<{ params: Promise<{ number: string }> }>;

/** One special order: where it stands, what was agreed and paid, and the next thing to do. */
export default async function OrderPage({ params }: OrderPageProps) {
  const actor = await requireActor('orders.see');
  const { number } = await params;
  const { timeZone: zone, lengthUnit } = await getGallery();
  const on = dayOf(now(), zone);
  const isNumber = /^[1-9]\d{0,8}$/.test(number);
  const order = isNumber ? await findOrder(actor, Number(number), { on, zone }) : null;
  if (!order) notFound();
  const reminder = mailOrderReminder(order, on);
  const { standing } = order;
  return (
    <>
      <PageHead
        title={`Order ${order.number}: ${order.title}`}
        back={{ href: '/orders', name: 'Special orders' }}
        lead={`${order.quantity} × ${order.what}, for ${order.collector.name}.`}
      />
      <InThisRoom room="counter" here="orders" roles={actor.roles} />
      {standing.isLate ? (
        <Notice kind="caution" title="Late">
          {reminder === '' ? 'The day that was named is over. Name a new one to them.' : reminder}
        </Notice>
      ) : null}
      <Columns
        wide={
          order.picture ? <Picture {...order.picture} first /> : <p>There is no picture yet.</p>
        }
        beside={
          <>
            <p className={css['standing']}>{standing.words}</p>
            {isAllowed(actor.roles, 'orders.take') ? <OrderActs order={order} /> : null}
            <OrderFactList order={order} system={lengthUnit} />
          </>
        }
      />
      <Section title="What was said before the money was taken">
        <p>{order.saidBefore === '' ? 'Nothing was written down.' : order.saidBefore}</p>
      </Section>
    </>
  );
}

type FactsProps = Readonly<{ order: OrderShown; system: LengthSystem }>;

function OrderFactList({ order, system }: FactsProps) {
  const { collector, job, sku } = order;
  return (
    <Facts
      facts={[
        {
          name: 'For',
          value: (
            <>
              <Link href={`/collectors/${collector.id}`}>{collector.name}</Link>{' '}
              {shortReach(collector) ?? ''}
            </>
          ),
        },
        { name: 'Piece', value: <Link href={`/stock/${sku.code}`}>{sku.code}</Link> },
        { name: 'Size', value: formatSize(sku, system) },
        {
          name: 'What is different',
          value: order.wish === '' ? null : order.wish,
          notKnown: 'nothing',
        },
        { name: 'Price', value: <Money cents={order.totalCents} /> },
        {
          name: 'Paid down',
          value: (
            <>
              <Money cents={order.paidCents} /> of <Money cents={order.depositCents} />
            </>
          ),
        },
        { name: 'Ordered', value: <DayText day={order.askedOn} /> },
        { name: 'About ready', value: <DayText day={order.readyAboutOn} /> },
        {
          name: 'In the studio',
          value: job && (
            <>
              <Link href={`/studio/${job.number}`}>job {job.number}</Link>, {job.pieces} begun:{' '}
              {job.at}
              {job.likelyOn === null ? null : (
                <>
                  ; about <DayText day={job.likelyOn} />
                </>
              )}
            </>
          ),
          notKnown: 'no job',
        },
        { name: 'Goes', value: order.isSent ? `sent to ${order.sendTo}` : 'collected here' },
        {
          name: 'Receipts',
          value:
            order.receipts.length === 0
              ? null
              : order.receipts.map(({ number }) => (
                  <span key={number}>
                    <Link href={`/receipts/${number}`}>{number}</Link>{' '}
                  </span>
                )),
          notKnown: 'none yet',
        },
        ...(order.hasEnded ? [{ name: 'Called off', value: order.endedWhy }] : []),
      ]}
    />
  );
}
