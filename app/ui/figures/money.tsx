import { formatCents, type Currency } from '@/lib/money/rules';
import { classes } from '@/app/ui/classes';
import css from './figures.module.css';

type MoneyProps = Readonly<{
  cents: bigint;
  currency?: Currency | undefined;
  /** `total` is the largest thing in the room. */
  size?: 'plain' | 'strong' | 'total' | undefined;
}>;

/** An amount: whole cents in, `$1,299.00` out, in figures of one width so that decimals line up. */
export function Money({ cents, currency = 'USD', size = 'plain' }: MoneyProps) {
  return (
    <data value={cents.toString()} className={classes(css['money'], css[size])}>
      {formatCents(cents, { currency })}
    </data>
  );
}
