import type { EntryPaper, JournalEntryShown } from '@/lib/ledger/rules';
import { plainCents } from '@/lib/money/rules';
import { inColumns } from '@/lib/ledger/rules';
import { csvText } from '@/lib/files/rules/csv';

const heads = [
  'entry',
  'date',
  'memo',
  'paper',
  'account',
  'account name',
  'debit',
  'credit',
  'authority',
  'commission',
];

/** A month of the journal as a CSV file: one row for each posting, amounts in plain figures. */
export function journalCsv(entries: readonly JournalEntryShown[]): string {
  const rows = entries.flatMap((entry) =>
    entry.postings.map((posting) => {
      const { debitCents, creditCents } = inColumns(posting.amountCents);
      return [
        String(entry.number),
        entry.on,
        entry.memo,
        paperWords(entry.paper),
        posting.account,
        posting.accountName,
        debitCents === null ? '' : plainCents(debitCents),
        creditCents === null ? '' : plainCents(creditCents),
        posting.authority ?? '',
        posting.commissionNumber === null ? '' : String(posting.commissionNumber),
      ];
    }),
  );
  return csvText([heads, ...rows]);
}

/** The paper that an entry comes from, in words. */
export function paperWords(paper: EntryPaper): string {
  switch (paper.kind) {
    case 'receipt':
      return `receipt ${paper.number}`;
    case 'payment':
      return `payment ${paper.number}`;
    case 'return':
      return `return ${paper.number}`;
    case 'drawer_count':
      return `day’s end ${paper.number}`;
    case 'small_cash':
      return `small cash ${paper.number}`;
    case 'settlement':
      return `settles receipt ${paper.receiptNumber}`;
    case 'referral_fee':
      return `referral for receipt ${paper.receiptNumber}`;
    case 'other':
      return paper.name;
  }
}

/** Where the paper of an entry is shown; null when it has no page of its own. */
export function paperHref(paper: EntryPaper): string | null {
  switch (paper.kind) {
    case 'receipt':
      return `/receipts/${paper.number}`;
    case 'payment':
      return `/commissions/${paper.commissionNumber}`;
    case 'return':
      return `/receipts/returns/${paper.number}`;
    case 'drawer_count':
      return `/drawer/${paper.number}`;
    case 'small_cash':
      return '/drawer';
    case 'settlement':
    case 'referral_fee':
      return `/receipts/${paper.receiptNumber}`;
    case 'other':
      return null;
  }
}
