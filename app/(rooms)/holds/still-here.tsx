import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Mark } from '@/app/ui/piece/mark';
import type { Day } from '@/lib/dates/rules';
import type { StillHere } from '@/lib/holds/reads/still-here';
import { daysLate } from '@/lib/holds/rules/still-here';
import { collected } from './actions';
import css from './holds.module.css';
import { Phone } from './phone';
import { Touch } from './touch';

/** A piece that was sold and still hangs here, until it is collected. */
export function StillHereRow({ piece, todayOn }: Readonly<{ piece: StillHere; todayOn: Day }>) {
  const { saleLineId, code, title, quantity, forWhom, phone, receipt, untilOn, note } = piece;
  const late = daysLate(untilOn, todayOn);
  return (
    <li className={css['row']}>
      <div className={css['words']}>
        <span className={css['title']}>
          {code === null ? title : <Link href={`/stock/${code}`}>{title}</Link>}
        </span>
        <Mark mark="sold" text={forWhom === null ? 'sold' : `sold to ${forWhom}`} />
        <span className={late > 0 ? css['late'] : ''}>
          {late > 0 ? 'was to be collected by ' : 'to be collected by '}
          <DayText day={untilOn} />
          {late > 0 ? `, ${late === 1 ? 'a day' : `${late} days`} ago` : null}
        </span>
        <span className={css['quiet']}>
          {[quantity > 1 ? `${quantity} of them` : '', piece.place, note]
            .filter(Boolean)
            .join(' · ')}
        </span>
        <span>
          <Link href={`/receipts/${receipt}`} className={css['phone']}>
            Receipt {receipt}
          </Link>{' '}
          <Phone number={phone} />
        </span>
      </div>
      <div className={css['touches']}>
        <Touch action={collected} fields={{ saleLineId }} label={`${title} was collected`}>
          Collected
        </Touch>
      </div>
    </li>
  );
}
