import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Notice } from '@/app/ui/page/notice';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Slab } from '@/app/ui/page/section';
import { numberIn } from '@/app/(rooms)/stock/places/number-in';
import { requireActor } from '@/lib/access/reads';
import { findStatement, type StatementLine } from '@/lib/consignment/reads/statements';
import { bearerWords } from '@/lib/consignment/rules';
import { dayOf } from '@/lib/dates/rules';
import { formatCents, sumCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { Payments } from './payments';

export const metadata: Metadata = { title: 'A statement' };

type StatementPageProps = Readonly<{ params: Promise<{ number: string }> }>;

/** A statement of another gallery: what they sold, their share, what is due and was paid. */
export default async function StatementPage({ params }: StatementPageProps) {
  const actor = await requireActor('outside.keep');
  const number = numberIn((await params).number);
  const statement = number === null ? null : await findStatement(actor, number);
  if (!statement) notFound();
  const { timeZone } = await getGallery();
  const { gallery, fromOn, untilOn } = statement;
  return (
    <>
      <PageHead
        title={`Statement ${statement.number}`}
        back={{ href: `/galleries/${gallery.consigneeId}`, name: gallery.name }}
        lead={
          <>
            What they sold from <DayText day={fromOn} /> to <DayText day={untilOn} />, in the books
            as{' '}
            <Link href={`/receipts/${statement.saleNumber}`}>receipt {statement.saleNumber}</Link>.
          </>
        }
      >
        <ButtonLink href={`/galleries/statements/${statement.number}/pdf`} download size="counter">
          Print it
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      <Columns
        wide={<Lines lines={statement.lines} dueCents={statement.dueCents} />}
        beside={
          <Slab>
            {statement.owedCents <= 0n ? (
              <Notice kind="done">It is paid.</Notice>
            ) : (
              <p>
                {formatCents(statement.owedCents)} to come by <DayText day={statement.dueOn} />.
              </p>
            )}
            <Payments statement={statement} today={dayOf(now(), timeZone)} />
          </Slab>
        }
      />
    </>
  );
}

type LinesProps = Readonly<{ lines: readonly StatementLine[]; dueCents: bigint }>;

function Lines({ lines, dueCents }: LinesProps) {
  return (
    <Table
      caption="What they sold"
      captionHeardOnly
      columns={[
        { name: 'Piece' },
        { name: 'Sold on', wideOnly: true },
        { name: 'Retail', figure: true },
        { name: 'Discount borne by', wideOnly: true },
        { name: 'Their share', figure: true },
        { name: 'Due', figure: true },
      ]}
      rows={lines.map((line, place) => ({
        key: String(place),
        cells: [
          <Piece key="piece" line={line} />,
          <DayText key="on" day={line.soldOn} />,
          <Money key="retail" cents={line.retailCents * BigInt(line.quantity)} />,
          discountWords(line),
          <Money key="share" cents={line.shareCents} />,
          <Money key="due" cents={line.dueCents} />,
        ],
      }))}
      foot={[
        'Together',
        '',
        <Money
          key="retail"
          cents={sumCents(lines.map((line) => line.retailCents * BigInt(line.quantity)))}
        />,
        '',
        <Money key="share" cents={sumCents(lines.map((line) => line.shareCents))} />,
        <Money key="due" cents={dueCents} />,
      ]}
    />
  );
}

function Piece({ line }: Readonly<{ line: StatementLine }>) {
  return (
    <>
      <i>{line.title}</i>
      <br />
      <small>
        {line.quantity > 1 ? `${line.quantity} × ` : ''}
        {line.sku}
        {line.number === null ? '' : `, number ${line.number}`}
      </small>
    </>
  );
}

function discountWords({ discountCents, borneBy }: StatementLine): string {
  if (discountCents === 0n) return '';
  return `${formatCents(discountCents)}, ${bearerWords(borneBy)}`;
}
