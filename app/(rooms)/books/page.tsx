import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import {
  dayOf,
  formatMonth,
  monthOf,
  nextMonth,
  previousMonth,
  type Month,
} from '@/lib/dates/rules';
import { getTrialBalance, listJournal } from '@/lib/ledger/reads';
import { listCommissionMoney, listTaxHeld } from '@/lib/ledger/reads/held';
import { formatCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { BalanceTable } from './balance-table';
import { readBooksPlace, type BooksQuery } from './book-address';
import css from './books.module.css';
import { CommissionMoneyTable, TaxTable } from './held-tables';
import { JournalPages, JournalTable } from './journal-table';

export const metadata: Metadata = { title: 'Books' };

type BooksProps = Readonly<{ searchParams: Promise<BooksQuery> }>;

/** The books of a month: what every account holds, what is held for others, and every entry. */
export default async function BooksPage({ searchParams }: BooksProps) {
  const actor = await requireActor('books.see');
  const gallery = await getGallery();
  const today = dayOf(now(), gallery.timeZone);
  const { month, on, page } = readBooksPlace(await searchParams, today);
  const [journal, balance, money, taxes] = await Promise.all([
    listJournal(actor, month, page),
    getTrialBalance(actor, on),
    listCommissionMoney(actor, on),
    listTaxHeld(actor, month),
  ]);
  return (
    <>
      <PageHead
        title="Books"
        lead={
          journal.entryCount === 0
            ? `Nothing was entered in ${formatMonth(month)}.`
            : `${formatMonth(month)}: ${journal.entryCount} entries. Debits and credits are both ${formatCents(journal.debitCents)}.`
        }
      >
        <ButtonLink href={`/books/journal?month=${month}`} download>
          The month’s journal as a file
        </ButtonLink>
      </PageHead>
      <Views label="Months" views={monthsAround(month, monthOf(today))} />
      <Section
        title="What every account holds"
        lead={
          <p>
            At the end of <DayText day={on} style="long" />. A trial balance: the two sums agree.
          </p>
        }
      >
        <BalanceTable balance={balance} />
      </Section>
      <div className={css['pair']}>
        <Section
          title="Held for collectors, and owed by them"
          lead="A deposit is a debt until the piece is handed over."
        >
          <CommissionMoneyTable rows={money} />
        </Section>
        <Section title="Sales tax held" lead="By whose it is. A tax adviser says when it is due.">
          <TaxTable rows={taxes} month={month} />
        </Section>
      </div>
      <Section title="The journal" id="journal">
        <JournalTable entries={journal.entries} month={month} />
        <JournalPages journal={journal} />
      </Section>
    </>
  );
}

function monthsAround(month: Month, thisMonth: Month) {
  const shown = [previousMonth(month), month, nextMonth(month)];
  return shown
    .filter((each) => each <= thisMonth)
    .map((each) => ({
      href: `/books?month=${each}`,
      name: formatMonth(each),
      current: each === month,
    }));
}
