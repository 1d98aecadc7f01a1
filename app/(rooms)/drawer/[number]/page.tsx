import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { formatDay } from '@/lib/dates/rules';
import { cardWords, foundLines, piecesCounted } from '@/lib/documents/counter/day-sheet-words';
import { readDaySheet, type DaySheet } from '@/lib/drawer/reads/day-sheet';
import { getGallery } from '@/lib/platform/settings';
import { readNumber } from '@/app/(rooms)/receipts/receipt-address';
import { Cheques, MoneySplit, Sheet } from '../sheet';
import css from '../drawer.module.css';

type SheetProps = Readonly<{ params: Promise<{ number: string }> }>;

export async function generateMetadata({ params }: SheetProps): Promise<Metadata> {
  return { title: `Day’s end ${(await params).number}` };
}

/** The sheet of a day that was counted: how it added up, what was found, where it went. */
export default async function DaySheetPage({ params }: SheetProps) {
  const actor = await requireActor('receipts.see');
  const number = readNumber((await params).number);
  const sheet = number === null ? null : await readDaySheet(actor, number);
  if (!sheet) notFound();
  const gallery = await getGallery();
  const { count, money } = sheet;
  return (
    <>
      <PageHead
        title={`Day’s end ${count.number}`}
        lead={
          <>
            {formatDay(count.on, 'long')}, counted by {count.by} (
            <InstantText at={count.at} zone={gallery.timeZone} />
            ).
          </>
        }
        back={{ href: '/drawer', name: 'Day’s end' }}
      >
        <ButtonLink href={`/drawer/${count.number}/pdf`} download size="counter">
          Print or keep as PDF
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="drawer" roles={actor.roles} />
      <Columns
        wide={
          <>
            <Section title="The drawer">
              <Sheet lines={money.sheet} expectedCents={count.expectedCents} />
              <Found sheet={sheet} />
            </Section>
            <Section title="Notes and coins">
              <Pieces sheet={sheet} />
            </Section>
          </>
        }
        beside={
          <div className={css['beside']}>
            <MoneySplit money={money} />
            <p>{cardWords(sheet)}</p>
            <Cheques cheques={money.cheques} />
          </div>
        }
      />
    </>
  );
}

function Found({ sheet }: Readonly<{ sheet: DaySheet }>) {
  return (
    <>
      <Table
        caption="What was found, and where it went"
        columns={[{ name: 'What' }, { name: 'Cash', figure: true }]}
        rows={foundLines(sheet.count).map(({ words, cents }) => ({
          key: words,
          cells: [words, <Money key="cents" cents={cents} />],
        }))}
      />
      {sheet.count.reason === '' ? null : <p>Why it differs: {sheet.count.reason}</p>}
    </>
  );
}

function Pieces({ sheet }: Readonly<{ sheet: DaySheet }>) {
  return (
    <Table
      caption="Notes and coins that were counted"
      captionHeardOnly
      columns={[
        { name: 'Of each' },
        { name: 'How many', figure: true },
        { name: 'Comes to', figure: true },
      ]}
      rows={piecesCounted(sheet.count.pieces).map(({ name, many, cents }) => ({
        key: name,
        cells: [name, String(many), <Money key="cents" cents={cents} />],
      }))}
      foot={['Counted', '', <Money key="sum" cents={sheet.count.countedCents} />]}
    />
  );
}
