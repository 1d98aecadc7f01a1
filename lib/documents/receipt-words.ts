import { formatDay } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import type {
  Receipt,
  ReceiptLine,
  ReceiptReturn,
  ReceiptTender,
} from '@/lib/sales/reads/receipts';
import { tenderWords } from './rules';

/** What was taken off and why, as the receipt says it. */
export function discountWords(discount: { reason: string; amountCents: Cents }): string {
  return `Less ${formatCents(discount.amountCents)}: ${discount.reason}`;
}

/** The numbers of an edition in words; empty when there are none. */
export function numbersOfLine(numbers: readonly number[]): string {
  if (numbers.length === 0) return '';
  return `${numbers.length === 1 ? 'Number' : 'Numbers'} ${numbers.join(', ')}`;
}

/** How many, and what each cost; empty for a single piece. */
export function quantityWords(
  line: Pick<ReceiptLine, 'quantity' | 'unitPriceCents'>,
  isGift: boolean,
): string {
  if (line.quantity === 1) return '';
  const each = isGift ? '' : ` at ${formatCents(line.unitPriceCents)} each`;
  return `${line.quantity} of them${each}`;
}

/** What a second's line says; empty for a first. */
export function finalWords(flaw: string | null): string {
  if (flaw === null) return '';
  return flaw === '' ? 'A second: this sale is final' : `This sale is final, with a flaw: ${flaw}`;
}

/** How a tender stands on the receipt: what it was, the voucher's number, the reference. */
export function tenderLine(tender: ReceiptTender): string {
  const kind = tender.givenCents === null ? tenderWords[tender.kind] : 'Cash given';
  return [kind, tender.code ?? '', tender.reference].filter((words) => words !== '').join(', ');
}

const returnNames: Readonly<Record<ReceiptReturn['kind'], string>> = {
  returned: 'Brought back',
  exchanged: 'Brought back for something else',
  voided: 'Struck out',
};

/** What a return is called, with its number and day. */
export function returnWords({ kind, number, on }: Omit<ReceiptReturn, 'totalCents'>): string {
  return `${returnNames[kind]} on ${formatDay(on, 'short')}, return\u00a0${number}`;
}

/** Where the pieces went, when they were not taken along; empty when they were. */
export function deliveryWords({ delivery, deliverTo }: Receipt): string {
  if (delivery === 'taken') return '';
  const how = delivery === 'sent' ? 'Sent to' : 'Delivered and hung at';
  return deliverTo === '' ? how.replace(/ (to|at)$/, '') : `${how} ${deliverTo}`;
}
