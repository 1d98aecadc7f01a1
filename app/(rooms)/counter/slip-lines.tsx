import Link from 'next/link';
import { Money } from '@/app/ui/figures/money';
import { Mark } from '@/app/ui/piece/mark';
import { Picture } from '@/app/ui/piece/picture';
import type { SlipLine } from '@/lib/sales/reads/slip';
import type { PricedSlip } from '@/lib/sales/rules/pricing';
import { setQuantity } from '@/lib/sales/rules/slip';
import { counterHref, type CounterPlace } from './address';
import css from './counter.module.css';

type SlipLinesProps = Readonly<{ lines: readonly SlipLine[]; place: CounterPlace }>;

/** What is on the slip: each piece with how many, and the way to change that. */
export function SlipLines({ lines, place }: SlipLinesProps) {
  return (
    <ul className={css['lines']} aria-label="On the slip">
      {lines.map((line) => (
        <li key={line.piece.skuId} className={css['line']}>
          {line.picture ? <Picture {...line.picture} alt="" size="thumb" /> : null}
          <div className={css['line-words']}>
            <p className={css['result-title']}>{line.piece.title}</p>
            <p className={css['quiet']}>
              {line.piece.what.split(' · ').map((part, at) => (
                <span key={part}>
                  {at === 0 ? '' : ' · '}
                  <span className={css['whole']}>{part}</span>
                </span>
              ))}
            </p>
            <Shortage line={line} />
          </div>
          <Quantity line={line} place={place} />
          <p className={css['line-sum']}>
            <Money cents={line.piece.priceCents * BigInt(line.quantity)} />
          </p>
        </li>
      ))}
    </ul>
  );
}

function Shortage({ line }: Readonly<{ line: SlipLine }>) {
  const { onHand } = line.piece;
  if (onHand >= line.quantity) return null;
  return <Mark mark="sold" text={onHand === 0 ? 'none is here any more' : `only ${onHand} here`} />;
}

function Quantity({ line, place }: Readonly<{ line: SlipLine; place: CounterPlace }>) {
  const { piece, quantity } = line;
  const with_ = (count: number) =>
    counterHref({ ...place, slip: setQuantity(place.slip, piece.sku, count) });
  const fewer = quantity === 1 ? `Take ${piece.title} off the slip` : `One ${piece.title} less`;
  return (
    <div className={css['quantity']}>
      <Link href={with_(quantity - 1)} prefetch={false} scroll={false} aria-label={fewer}>
        {quantity === 1 ? '×' : '−'}
      </Link>
      <span>{quantity}</span>
      {quantity < piece.onHand ? (
        <Link
          href={with_(quantity + 1)}
          prefetch={false}
          scroll={false}
          aria-label={`One ${piece.title} more`}
        >
          +
        </Link>
      ) : (
        <span className={css['no-more']} title="There are no more here">
          +
        </span>
      )}
    </div>
  );
}

/** The sums of the slip; the total is the largest thing in the room. */
export function SlipSums({ priced }: Readonly<{ priced: PricedSlip }>) {
  return (
    <dl className={css['sums']}>
      {priced.lines.length > 0 ? <BeforeTotal priced={priced} /> : null}
      <div className={css['total']}>
        <dt>Total</dt>
        <dd>
          <Money cents={priced.totalCents} size="total" />
        </dd>
      </div>
    </dl>
  );
}

function BeforeTotal({ priced }: Readonly<{ priced: PricedSlip }>) {
  return (
    <>
      <div>
        <dt>Before tax</dt>
        <dd>
          <Money cents={priced.netCents} />
        </dd>
      </div>
      {priced.taxes.map((tax) => (
        <div key={tax.authority}>
          <dt>
            {tax.authority} {tax.ratePercent}%
          </dt>
          <dd>
            <Money cents={tax.taxCents} />
          </dd>
        </div>
      ))}
    </>
  );
}
