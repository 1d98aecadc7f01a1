import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listShops } from '@/lib/wholesale/reads';
import { OrderForm } from '../order-form';

export const metadata: Metadata = { title: 'Take an order' };

type NewOrderProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** A new order of a shop; `?shop=` chooses it. */
export default async function NewOrderPage({ searchParams }: NewOrderProps) {
  const actor = await requireActor('outside.keep');
  const shops = (await listShops(actor)).toSorted((one, other) =>
    one.name.localeCompare(other.name, 'en'),
  );
  const { shop } = await searchParams;
  const chosen = shops.find((each) => each.id === shop) ?? shops[0];
  return (
    <>
      <PageHead
        title="Take an order"
        back={{ href: '/shops', name: 'Shops' }}
        lead="Each piece is written down at its share of today’s price."
      />
      {chosen ? (
        <Slab>
          <OrderForm order={null} shops={shops} shopId={chosen.id} />
        </Slab>
      ) : (
        <Empty title="No shop yet" act={<ButtonLink href="/collectors/new">Add a shop</ButtonLink>}>
          A shop is written down among the people first, as a business.
        </Empty>
      )}
    </>
  );
}
