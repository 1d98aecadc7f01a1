import { Money } from '@/app/ui/figures/money';
import type { SlipShown } from '@/lib/counter/reads';
import { sumCents } from '@/lib/money/rules';
import { combinedRatePercent } from '@/lib/tax/rules';
import css from './counter.module.css';

/** The sums of the slip; the total is the largest thing in the room. */
export function SlipSums({ shown }: Readonly<{ shown: SlipShown | null }>) {
  const depositCents = sumCents((shown?.reckoned.deposits ?? []).map((each) => each.amountCents));
  const totalCents = shown?.reckoned.priced.totalCents ?? 0n;
  return (
    <dl className={css['sums']}>
      {shown && shown.slip.content.lines.length > 0 ? <BeforeTotal shown={shown} /> : null}
      <div className={css['total']}>
        <dt>Total</dt>
        <dd>
          <Money cents={totalCents} size="total" />
        </dd>
      </div>
      {shown && depositCents > 0n ? (
        <>
          <Sum name="Deposit, paid before" cents={-depositCents} />
          <Sum name="Left to pay" cents={shown.reckoned.dueCents} />
        </>
      ) : null}
    </dl>
  );
}

function BeforeTotal({ shown }: Readonly<{ shown: SlipShown }>) {
  const { priced, exemptWhy } = shown.reckoned;
  const offCents = sumCents(priced.lines.map((line) => line.discountCents));
  return (
    <>
      {offCents > 0n ? <Sum name="Taken off" cents={-offCents} /> : null}
      <Sum name="Before tax" cents={priced.netCents} />
      {exemptWhy === '' ? (
        <Sum name={taxName(shown)} cents={priced.taxCents} />
      ) : (
        <div>
          <dt>No tax</dt>
          <dd className={css['quiet']}>{exemptWhy}</dd>
        </div>
      )}
    </>
  );
}

/** All authorities together; the receipt has them one by one. */
function taxName({ facts }: SlipShown): string {
  const { parts, place } = facts.tax;
  return `Sales tax of ${place}, ${combinedRatePercent(parts)}%`;
}

function Sum({ name, cents }: Readonly<{ name: string; cents: bigint }>) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <Money cents={cents} />
      </dd>
    </div>
  );
}
