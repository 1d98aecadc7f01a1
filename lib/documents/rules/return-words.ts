import type { TenderKind } from '@/lib/ledger/rules';
import type { ReturnedTo } from '@/lib/returns/rules/sold';
import { tenderWords } from '../rules';

const becameOf: Readonly<Record<ReturnedTo, string>> = {
  shelf: 'back on the shelf',
  second: 'a second now',
  broken: 'broken',
  nothing: '',
};

/** How many came back, which number, and what became of it. */
export function becameWords(line: {
  quantity: number;
  editionNumber: number | null;
  to: ReturnedTo;
}): string {
  const many = line.quantity === 1 ? 'One' : `${line.quantity} of them`;
  const which = line.editionNumber === null ? many : `Number ${line.editionNumber}`;
  const became = becameOf[line.to];
  return became === '' ? which : `${which}, ${became}`;
}

/** How money was given back: the way it was paid, or as store credit. */
export function refundWords({ kind, paidBy }: { kind: TenderKind; paidBy: TenderKind }): string {
  if (kind === paidBy) return `Back the way it was paid: ${tenderWords[kind].toLowerCase()}`;
  return `${tenderWords[kind]}, for what was paid by ${tenderWords[paidBy].toLowerCase()}`;
}
