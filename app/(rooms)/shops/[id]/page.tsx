import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findShopSheet, type OrderListed, type ShopSheet } from '@/lib/wholesale/reads';
import { orderStanding } from '@/lib/wholesale/rules';
import { Promises } from './promises';
import { Statement } from './statement';

export const metadata: Metadata = { title: 'A shop' };

type ShopPageProps = Readonly<{ params: Promise<{ id: string }> }>;

/** One shop: what it ordered, what it owes and for how long, which town is its own. */
export default async function ShopPage({ params }: ShopPageProps) {
  const actor = await requireActor('outside.keep');
  const sheet = await findShopSheet(actor, (await params).id);
  if (!sheet) notFound();
  const { shop, orders } = sheet;
  const today = dayOf(now(), (await getGallery()).timeZone);
  return (
    <>
      <PageHead
        title={shop.name}
        back={{ href: '/shops', name: 'Shops' }}
        lead={
          [shop.city, shop.state].filter(Boolean).join(', ') || 'Where it is, is not known yet.'
        }
      >
        <ButtonLink href={`/shops/new?shop=${shop.id}`} size="counter">
          Take an order
        </ButtonLink>
        <ButtonLink href={`/collectors/${shop.id}`} variant="quiet" size="counter">
          Address and certificates
        </ButtonLink>
      </PageHead>
      <Columns
        wide={
          <Section title="Orders">
            <Orders orders={orders} shopId={shop.id} today={today} />
          </Section>
        }
        beside={<Beside sheet={sheet} today={today} />}
      />
    </>
  );
}

function Beside({ sheet, today }: Readonly<{ sheet: ShopSheet; today: Day }>) {
  return (
    <>
      <Statement orders={sheet.orders} today={today} />
      <Promises sheet={sheet} today={today} />
    </>
  );
}

type OrdersProps = Readonly<{ orders: readonly OrderListed[]; shopId: string; today: Day }>;

function Orders({ orders, shopId, today }: OrdersProps) {
  if (orders.length === 0) {
    const act = <ButtonLink href={`/shops/new?shop=${shopId}`}>Take the first one</ButtonLink>;
    return (
      <Empty title="No order yet" act={act}>
        A first order is usually small, and paid before it leaves.
      </Empty>
    );
  }
  return (
    <Table
      caption="Orders, the latest first"
      captionHeardOnly
      columns={[
        { name: 'Order' },
        { name: 'Taken', wideOnly: true },
        { name: 'Where it is' },
        { name: 'Comes to', figure: true },
        { name: 'Owed', figure: true },
      ]}
      rows={orders.map((order) => ({
        key: order.id,
        cells: [
          <Link key="number" href={`/shops/orders/${order.number}`}>
            Order {order.number}
          </Link>,
          <DayText key="asked" day={order.askedOn} />,
          <WhereItIs key="where" order={order} today={today} />,
          <Money key="total" cents={order.totalCents} />,
          <Money key="owed" cents={order.owedCents} />,
        ],
      }))}
    />
  );
}

function WhereItIs({ order, today }: Readonly<{ order: OrderListed; today: Day }>) {
  const standing = orderStanding(order);
  if (standing === 'cancelled') return 'cancelled';
  if (standing === 'open') {
    if (order.shipOn === null) return 'to be sent';
    return (
      <>
        to be sent by <DayText day={order.shipOn} />
        {order.shipOn < today ? ', which is past' : ''}
      </>
    );
  }
  if (order.owedCents === 0n || order.dueOn === null) return 'sent and paid';
  return (
    <>
      sent, due <DayText day={order.dueOn} />
    </>
  );
}
