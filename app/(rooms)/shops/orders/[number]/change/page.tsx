import type { Metadata } from 'next';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { OrderForm } from '../../../order-form';
import { readOrderOfAddress, type OrderAddress } from '../read-order';

export const metadata: Metadata = { title: 'Change an order' };

/** An order that has not left yet, to be changed. */
export default async function ChangeOrderPage({ params }: OrderAddress) {
  const actor = await requireActor('outside.keep');
  const order = await readOrderOfAddress(actor, params);
  const { number, shop, standing } = order;
  return (
    <>
      <PageHead
        title={`Change order ${number}`}
        back={{ href: `/shops/orders/${number}`, name: `Order ${number}` }}
        lead="Pieces that were on it keep their price while the share stays the same."
      />
      {standing === 'open' ? (
        <Slab>
          <OrderForm order={order} shops={[shop]} shopId={shop.id} />
        </Slab>
      ) : (
        <Notice kind="caution">
          {standing === 'shipped' ? 'It has left already.' : 'It was cancelled.'}
        </Notice>
      )}
    </>
  );
}
