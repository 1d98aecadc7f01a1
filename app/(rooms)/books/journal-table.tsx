import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Empty } from '@/app/ui/page/empty';
import { formatMonth, type Month } from '@/lib/dates/rules';
import { paperHref, paperWords } from '@/lib/documents/rules/journal';
import { journalPageSize, type Journal } from '@/lib/ledger/reads';
import { inColumns, type EntryPaper, type JournalEntryShown } from '@/lib/ledger/rules';
import css from './books.module.css';

type JournalTableProps = Readonly<{ entries: readonly JournalEntryShown[]; month: Month }>;

/** Every entry with its postings, each leading to the paper that it comes from. */
export function JournalTable({ entries, month }: JournalTableProps) {
  if (entries.length === 0) {
    return (
      <Empty title={`Nothing was entered in ${formatMonth(month)}`}>
        Each sale and each payment writes its own entry here; nobody types one.
      </Empty>
    );
  }
  return (
    <ol className={css['journal']}>
      {entries.map((entry) => (
        <li key={entry.number} className={css['entry']}>
          <div className={css['entry-head']}>
            <span className={css['entry-number']}>{entry.number}</span>
            <DayText day={entry.on} />
            <span className={css['memo']}>{entry.memo}</span>
            <PaperLink paper={entry.paper} />
          </div>
          <Postings entry={entry} />
        </li>
      ))}
    </ol>
  );
}

function Postings({ entry }: Readonly<{ entry: JournalEntryShown }>) {
  return (
    <table className={css['postings']}>
      <caption className="heard-only">Postings of entry {entry.number}</caption>
      <thead className="heard-only">
        <tr>
          <th scope="col">Account</th>
          <th scope="col">Debit</th>
          <th scope="col">Credit</th>
        </tr>
      </thead>
      <tbody>
        {entry.postings.map((posting, at) => {
          const { debitCents, creditCents } = inColumns(posting.amountCents);
          return (
            <tr key={at}>
              <th scope="row" data-credit={creditCents === null ? undefined : true}>
                {posting.account} {posting.accountName}
                {posting.authority === null ? null : `, ${posting.authority}`}
              </th>
              <td>{debitCents === null ? null : <Money cents={debitCents} />}</td>
              <td>{creditCents === null ? null : <Money cents={creditCents} />}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function PaperLink({ paper }: Readonly<{ paper: EntryPaper }>) {
  const href = paperHref(paper);
  return href === null ? (
    <span>{paperWords(paper)}</span>
  ) : (
    <Link href={href}>{paperWords(paper)}</Link>
  );
}

/** The way to the earlier and later pages of a long month. */
export function JournalPages({ journal }: Readonly<{ journal: Journal }>) {
  const { month, page, pageCount, entryCount } = journal;
  if (pageCount === 1) return null;
  const first = (page - 1) * journalPageSize + 1;
  const last = Math.min(page * journalPageSize, entryCount);
  const href = (to: number) => `/books?month=${month}&page=${to}#journal`;
  return (
    <nav aria-label="Pages of the journal" className={css['pages']}>
      {page > 1 ? <Link href={href(page - 1)}>Earlier entries</Link> : null}
      <span>
        Entries {first} to {last} of {entryCount}
      </span>
      {page < pageCount ? <Link href={href(page + 1)}>Later entries</Link> : null}
    </nav>
  );
}
