import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { listStockLists, type ListBefore } from '@/lib/stock/reads/stock-lists';
import { countsWords } from '@/lib/stock/rules/list-summary';
import { lookAtList } from '../actions';

export const metadata: Metadata = { title: 'Bring in a stock list' };

/** Brings in a stock list: the file is looked at first, line by line, and nothing is written yet. */
export default async function StockListPage() {
  const actor = await requireActor('stock.load');
  const [lists, { timeZone }] = await Promise.all([listStockLists(actor), getGallery()]);
  return (
    <>
      <PageHead
        title="Bring in a stock list"
        back={{ href: '/stock', name: 'Stock' }}
        lead="First you see what each line would do. Nothing changes yet."
      />
      <Columns
        wide={
          <Slab>
            <FormFrame action={lookAtList} label="Bring in a stock list">
              <RequestKey />
              <Field
                name="file"
                label="Your list"
                kind="file"
                accept=".csv,text/csv"
                hint="A CSV in UTF-8, at most 25 MB. Spreadsheets call it “CSV UTF-8”."
                required
              />
              <SubmitButton pendingText="Reading it…">Look at it</SubmitButton>
            </FormFrame>
          </Slab>
        }
        beside={<HowItIsWritten />}
      />
      <ListsBefore lists={lists} timeZone={timeZone} />
    </>
  );
}

function HowItIsWritten() {
  return (
    <Section title="How the list is written">
      <p>
        One line for each piece, one column for each fact, in any order. Only <b>code</b> must be
        there, the SKU on the tag. A piece we know already keeps what you leave empty; a new one
        needs title, kind, width, height, colourway and price.
      </p>
      <p>
        <b>here</b> is how many stand in the gallery now; the difference is written down as a count.
        Sizes may be in inches or millimetres: 10 1/2 in, 254 mm, or with a column <b>unit</b>.
      </p>
      <p>
        <ButtonLink href="/stock/list/template" variant="quiet" download>
          Take a list to start from
        </ButtonLink>
      </p>
    </Section>
  );
}

type ListsProps = Readonly<{ lists: readonly ListBefore[]; timeZone: string }>;

function ListsBefore({ lists, timeZone }: ListsProps) {
  if (lists.length === 0) return null;
  return (
    <Section title="Lists before this one">
      <Table
        caption="Lists before this one"
        captionHeardOnly
        columns={[{ name: 'File' }, { name: 'When' }, { name: 'Lines' }, { name: 'Brought in' }]}
        rows={lists.map((list) => ({
          key: list.id,
          cells: [
            <Link key="file" href={`/stock/list/${list.id}`}>
              {list.fileName}
            </Link>,
            <InstantText key="when" at={list.shownAt} zone={timeZone} />,
            countsWords(list),
            list.confirmedAt ? (
              <InstantText key="in" at={list.confirmedAt} zone={timeZone} />
            ) : (
              'only looked at'
            ),
          ],
        }))}
      />
    </Section>
  );
}
