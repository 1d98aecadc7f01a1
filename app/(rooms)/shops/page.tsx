import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listShops, type ShopListed } from '@/lib/wholesale/reads';

export const metadata: Metadata = { title: 'Shops' };

/** The shops that buy for their own shelves: what they wait for, what they owe. */
export default async function ShopsPage() {
  const actor = await requireActor('outside.keep');
  const businesses = await listShops(actor);
  const shops = businesses.filter((business) => business.isShop);
  return (
    <>
      <PageHead title="Shops" lead="They buy for their own shelves, at a share of the price here.">
        {businesses.length > 0 ? (
          <ButtonLink href="/shops/new" size="counter">
            Take an order
          </ButtonLink>
        ) : null}
        <ButtonLink href="/collectors/new" variant="quiet" size="counter">
          Add a shop
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="shops" roles={actor.roles} />
      {shops.length === 0 ? (
        <Empty title="No shop yet" act={<ButtonLink href="/collectors/new">Add a shop</ButtonLink>}>
          A shop is written down among the people, as a business. Then its orders are taken here.
        </Empty>
      ) : (
        <ShopTable shops={shops} />
      )}
    </>
  );
}

function ShopTable({ shops }: Readonly<{ shops: readonly ShopListed[] }>) {
  return (
    <Table
      caption="Shops, those who owe the most first"
      captionHeardOnly
      columns={[
        { name: 'Shop' },
        { name: 'Town' },
        { name: 'Promised', wideOnly: true },
        { name: 'Orders to send', figure: true },
        { name: 'Owed', figure: true },
      ]}
      rows={shops.map((shop) => ({
        key: shop.id,
        cells: [
          <Link key="name" href={`/shops/${shop.id}`}>
            {shop.name}
          </Link>,
          [shop.city, shop.state].filter(Boolean).join(', ') || 'not known yet',
          shop.promisedTown ? `${shop.promisedTown} is theirs` : '',
          shop.openOrders,
          <Money key="owed" cents={shop.owedCents} />,
        ],
      }))}
    />
  );
}
