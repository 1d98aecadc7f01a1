import { Money } from '@/app/ui/figures/money';
import { formatCents } from '@/lib/money/rules';
import { tenderWords } from '@/lib/documents/rules';
import type { Receipt } from '@/lib/sales/reads/receipts';
import css from '../receipts.module.css';

/** What was sold, set like wall labels; a gift receipt leaves the prices out. */
export function ReceiptLines({ receipt, isGift }: Readonly<{ receipt: Receipt; isGift: boolean }>) {
  return (
    <ul className={css['lines']} aria-label="What was sold">
      {receipt.lines.map((line) => (
        <li key={line.position} className={css['line']}>
          <div>
            <p className={css['title']}>{line.title}</p>
            <p className={css['small']}>{line.what}</p>
            {line.quantity > 1 ? (
              <p className={css['small']}>
                {line.quantity} of them
                {isGift ? '' : ` at ${formatCents(line.unitPriceCents)} each`}
              </p>
            ) : null}
          </div>
          {isGift ? null : <Money cents={line.netCents} />}
        </li>
      ))}
    </ul>
  );
}

/** Tax by authority, the total, how it was paid and what went back. */
export function ReceiptSums({ receipt }: Readonly<{ receipt: Receipt }>) {
  const byCash = receipt.tenders.some((tender) => tender.givenCents !== null);
  return (
    <dl className={css['sums']}>
      <Sum name="Before tax" cents={receipt.netCents} />
      {receipt.taxes.map((tax) => (
        <Sum
          key={tax.authority}
          name={`Sales tax, ${tax.authority} ${tax.ratePercent}%`}
          cents={tax.taxCents}
        />
      ))}
      <Sum name="Total" cents={receipt.totalCents} isTotal />
      {receipt.tenders.map((tender) => (
        <Sum
          key={tender.kind}
          name={[
            tender.givenCents === null ? tenderWords[tender.kind] : 'Cash given',
            tender.reference,
          ]
            .filter(Boolean)
            .join(', ')}
          cents={tender.givenCents ?? tender.amountCents}
        />
      ))}
      {byCash ? <Sum name="Given back" cents={receipt.changeCents} /> : null}
    </dl>
  );
}

type SumProps = Readonly<{ name: string; cents: bigint; isTotal?: boolean }>;

function Sum({ name, cents, isTotal = false }: SumProps) {
  return (
    <div className={isTotal ? css['total'] : undefined}>
      <dt>{name}</dt>
      <dd>
        <Money cents={cents} />
      </dd>
    </div>
  );
}
