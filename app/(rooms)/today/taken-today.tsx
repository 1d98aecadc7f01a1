import Link from 'next/link';
import { Money } from '@/app/ui/figures/money';
import type { DayOfReceipts } from '@/lib/sales/reads/receipts-of-day';
import css from './today.module.css';

/** What was sold today, as a sentence. */
export function TakenToday({ taken }: Readonly<{ taken: DayOfReceipts }>) {
  const sales = taken.receipts.length;
  if (sales === 0) {
    return <p className={css['taken']}>Nothing was sold yet today.</p>;
  }
  return (
    <p className={css['taken']}>
      <Money cents={taken.totalCents} size="strong" /> came in today, in{' '}
      <Link href="/receipts">{sales === 1 ? 'one sale' : `${sales} sales`}</Link>, tax included.
    </p>
  );
}
