import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import {
  discountWords,
  finalWords,
  numbersOfLine,
  quantityWords,
  returnWords,
  tenderLine,
} from '@/lib/documents/receipt-words';
import type { Receipt, ReceiptLine } from '@/lib/sales/reads/receipts';
import css from '../receipts.module.css';

type LinesProps = Readonly<{ receipt: Receipt; isGift: boolean }>;

/** What was sold, set like wall labels; a gift receipt leaves the prices out. */
export function ReceiptLines({ receipt, isGift }: LinesProps) {
  return (
    <ul className={css['lines']} aria-label="What was sold">
      {receipt.lines.map((line) => (
        <li key={line.position} className={css['line']}>
          <LineWords line={line} isGift={isGift} />
          {isGift ? null : <Money cents={line.netCents} />}
        </li>
      ))}
    </ul>
  );
}

function LineWords({ line, isGift }: Readonly<{ line: ReceiptLine; isGift: boolean }>) {
  const small = [
    line.what,
    numbersOfLine(line.numbers),
    quantityWords(line, isGift),
    finalWords(line.flaw),
    ...(isGift ? [] : line.discounts.map(discountWords)),
    line.backCount > 0 ? `${line.backCount} brought back since` : '',
  ].filter((words) => words !== '');
  return (
    <div>
      <p className={css['title']}>{line.title}</p>
      {small.map((words) => (
        <p key={words} className={css['small']}>
          {words}
        </p>
      ))}
      {line.hangsUntilOn ? (
        <p className={css['small']}>
          Sold, hangs here until <DayText day={line.hangsUntilOn} />
        </p>
      ) : null}
      {line.voucher && !isGift ? (
        <p className={css['small']}>
          Number <Link href={`/vouchers/${line.voucher.code}`}>{line.voucher.code}</Link>, with{' '}
          <Money cents={line.voucher.balanceCents} /> on it now
        </p>
      ) : null}
    </div>
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
      {receipt.exemptWhy === '' ? null : (
        <div className={css['small']}>
          <dt>No tax, or less of it</dt>
          <dd>{receipt.exemptWhy}</dd>
        </div>
      )}
      <Sum name="Total" cents={receipt.totalCents} isTotal />
      {receipt.tenders.map((tender, at) => (
        <Sum key={at} name={tenderLine(tender)} cents={tender.givenCents ?? tender.amountCents} />
      ))}
      {byCash ? <Sum name="Given back" cents={receipt.changeCents} /> : null}
    </dl>
  );
}

/** The returns that answered the sale, each leading to its paper. */
export function ReceiptReturns({ receipt }: Readonly<{ receipt: Receipt }>) {
  if (receipt.returns.length === 0) return null;
  return (
    <dl className={css['sums']}>
      {receipt.returns.map((back) => (
        <div key={back.number}>
          <dt>
            <Link href={`/receipts/returns/${back.number}`}>{returnWords(back)}</Link>
          </dt>
          <dd>
            <Money cents={-back.totalCents} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

type SumProps = Readonly<{ name: string; cents: bigint; isTotal?: boolean }>;

/** One sum of a paper: its name, and the amount at the right. */
export function Sum({ name, cents, isTotal = false }: SumProps) {
  return (
    <div className={isTotal ? css['total'] : undefined}>
      <dt>{name}</dt>
      <dd>
        <Money cents={cents} />
      </dd>
    </div>
  );
}
