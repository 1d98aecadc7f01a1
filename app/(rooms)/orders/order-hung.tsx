import { DayText } from '@/app/ui/figures/day-text';
import { Hung, PieceHanging } from '@/app/ui/piece/piece-hanging';
import type { OrderShown } from '@/lib/orders/reads/order';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import css from './orders.module.css';

type OrderHungProps = Readonly<{ order: OrderShown; system: LengthSystem }>;

/** An order on the wall: what, for whom, where it stands, when it is about ready. */
export function OrderHung({ order, system }: OrderHungProps) {
  const { standing, quantity } = order;
  return (
    <Hung>
      <PieceHanging
        picture={order.picture}
        title={order.title}
        href={`/orders/${order.number}`}
        what={`${quantity} × ${order.what}`}
        size={formatSize(order.sku, system)}
        code={order.sku.code}
        priceCents={order.totalCents}
      >
        <p className={css['for-whom']}>for {order.collector.name}</p>
        <p className={css['stands']} data-late={standing.isLate || undefined}>
          {standing.words}
        </p>
        {standing.clock === 'nobody' ? null : (
          <p className={css['quiet']}>
            {standing.isLate ? 'Late: it was said ' : 'About '}
            <DayText day={order.readyAboutOn} />
          </p>
        )}
      </PieceHanging>
    </Hung>
  );
}
