import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import type { OrderLineTold, OrderSheet } from '@/lib/wholesale/reads/order';
import css from '../../shops.module.css';
import { Invoice } from './invoice';
import { readOrderOfAddress, type OrderAddress } from './read-order';
import { CancelForm, ShipForm } from './ship-form';

export const metadata: Metadata = { title: 'A shop’s order' };

/** One order of a shop: its lines and terms, sending it, and then its invoice and what came for it. */
export default async function OrderPage({ params }: OrderAddress) {
  const actor = await requireActor('outside.keep');
  const order = await readOrderOfAddress(actor, params);
  const { number, shop, invoice, standing } = order;
  return (
    <>
      <PageHead
        title={invoice ? `Invoice ${invoice.number}` : `Order ${number}`}
        back={{ href: `/shops/${shop.id}`, name: shop.name }}
        lead={invoice ? `${shop.name}, order ${number}` : shop.name}
      >
        {invoice ? (
          <ButtonLink href={`/shops/orders/${number}/invoice`} size="counter">
            Print the invoice
          </ButtonLink>
        ) : null}
        {standing === 'open' ? (
          <ButtonLink href={`/shops/orders/${number}/change`} variant="quiet" size="counter">
            Change it
          </ButtonLink>
        ) : null}
      </PageHead>
      {standing === 'cancelled' ? (
        <Notice kind="caution">It was cancelled: {order.endedWhy}</Notice>
      ) : null}
      <Columns
        wide={
          <Section title="What they ordered">
            <Lines order={order} />
          </Section>
        }
        beside={<Terms order={order} />}
      />
      {invoice ? <Invoice invoice={invoice} /> : null}
      {standing === 'open' ? (
        <>
          <ShipForm order={order} />
          <CancelForm orderId={order.id} />
        </>
      ) : null}
    </>
  );
}

function Lines({ order }: Readonly<{ order: OrderSheet }>) {
  const isOpen = order.standing === 'open';
  const free = isOpen ? [{ name: 'Free here', figure: true, wideOnly: true }] : [];
  const freight = order.invoice && order.freightCents > 0n;
  return (
    <Table
      caption="What they ordered"
      captionHeardOnly
      columns={[
        { name: 'Piece' },
        { name: 'How many', figure: true },
        ...free,
        { name: 'Each', figure: true },
        { name: 'Comes to', figure: true },
      ]}
      rows={[
        ...order.lines.map((line) => ({ key: line.sku, cells: cellsOf(line, isOpen) })),
        ...(freight ? [{ key: 'freight', cells: freightCells(order) }] : []),
      ]}
      foot={[
        'Together',
        order.lines.reduce((sum, line) => sum + line.quantity, 0),
        ...(isOpen ? [''] : []),
        '',
        <Money key="total" cents={order.invoice?.totalCents ?? order.piecesCents} size="strong" />,
      ]}
    />
  );
}

function cellsOf(line: OrderLineTold, isOpen: boolean) {
  const short = line.free < line.quantity;
  return [
    <div key="piece">
      <Link href={`/stock/${line.sku}`}>
        <cite>{line.title}</cite>
      </Link>
      <span className={css['quiet']}>
        {line.what} · {line.sku}
      </span>
    </div>,
    line.quantity,
    ...(isOpen ? [short ? `${line.free}, too few` : line.free] : []),
    <Money key="each" cents={line.unitPriceCents} />,
    <Money key="amount" cents={line.amountCents} />,
  ];
}

function freightCells({ freightCents }: OrderSheet) {
  return ['Freight', '', '', <Money key="freight" cents={freightCents} />];
}

function Terms({ order }: Readonly<{ order: OrderSheet }>) {
  const { askedOn, shipOn, pricePercent, netDays, theirNumber, terms } = order;
  return (
    <Section title="Terms">
      {order.isFirst && order.standing === 'open' ? (
        <Notice kind="caution">
          This is their first order. It is usual that a first order comes to 250 to 500 dollars, and
          is paid before it leaves.
        </Notice>
      ) : null}
      <Facts
        facts={[
          { name: 'Taken', value: <DayText day={askedOn} /> },
          { name: 'To leave by', value: shipOn && <DayText day={shipOn} />, notKnown: 'no day' },
          { name: 'Share of the price here', value: `${pricePercent}%` },
          {
            name: 'Paid',
            value: netDays === 0 ? 'before it leaves' : `within ${netDays} days of leaving`,
          },
          { name: 'Their number', value: theirNumber || null, notKnown: 'none' },
          ...(terms === '' ? [] : [{ name: 'Terms', value: terms }]),
        ]}
      />
    </Section>
  );
}
