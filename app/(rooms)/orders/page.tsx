import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Wall } from '@/app/ui/piece/piece-hanging';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { listOrders } from '@/lib/orders/reads';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { OrderHung } from './order-hung';

export const metadata: Metadata = { title: 'Special orders' };

/** The special orders that run, and those that are over since a short while. */
export default async function OrdersPage() {
  const actor = await requireActor('orders.see');
  const { timeZone, lengthUnit } = await getGallery();
  const { open, over } = await listOrders(actor, dayOf(now(), timeZone), timeZone);
  const mayTake = isAllowed(actor.roles, 'orders.take');
  const late = open.filter((order) => order.standing.isLate).length;
  const take = mayTake ? <ButtonLink href="/orders/new">Take an order</ButtonLink> : null;
  return (
    <>
      <PageHead title="Special orders" lead={leadOf(open.length, late)}>
        {open.length + over.length === 0 ? null : take}
        <ButtonLink href="/promises" variant="quiet">
          Everything promised
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="orders" roles={actor.roles} />
      {open.length + over.length === 0 ? (
        <Empty title="Nothing is ordered" act={take}>
          “Like that one, but six of them in the green”: choose the piece, say how many and in which
          glaze, and before any money is taken see what mould, glaze and kiln make of it.
        </Empty>
      ) : null}
      <Wall label="Orders that run">
        {open.map((order) => (
          <OrderHung key={order.id} order={order} system={lengthUnit} />
        ))}
      </Wall>
      {over.length === 0 ? null : (
        <Section title="Over since a short while">
          <Wall label="Orders that are over" spacing="close">
            {over.map((order) => (
              <OrderHung key={order.id} order={order} system={lengthUnit} />
            ))}
          </Wall>
        </Section>
      )}
    </>
  );
}

function leadOf(open: number, late: number): string {
  if (open === 0) return 'An existing design in another colour, size or number.';
  const run = open === 1 ? 'One order runs' : `${open} orders run`;
  if (late === 0) return `${run}; none is late.`;
  return late === 1 ? `${run}; one is late.` : `${run}; ${late} are late.`;
}
