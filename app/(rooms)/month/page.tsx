import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Bars } from '@/app/ui/figures/bars';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { requireActor } from '@/lib/access/reads';
import {
  dayOf,
  formatMonth,
  monthOf,
  nextMonth,
  previousMonth,
  type Month,
} from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { monthAddress } from '@/lib/reports/input';
import { monthByDesign, type MonthByDesign } from '@/lib/reports/reads';
import { DesignTable } from './design-table';
import css from './month.module.css';

export const metadata: Metadata = { title: 'Month' };

type MonthPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** How many designs stand as bars; all of them are in the table. */
const barsMost = 10;

/** The owner's month: which designs earned it, as bars with the piece at the foot and as a table. */
export default async function MonthPage({ searchParams }: MonthPageProps) {
  const actor = await requireActor('month.see');
  const { timeZone } = await getGallery();
  const thisMonth = monthOf(dayOf(now(), timeZone));
  const month = monthAddress.parse(await searchParams).month ?? thisMonth;
  const report = await monthByDesign(actor, month);
  return (
    <>
      <PageHead title={formatMonth(month)} lead={leadOf(report)}>
        <Neighbours month={month} thisMonth={thisMonth} />
      </PageHead>
      {report.sales === 0 ? <QuietMonth month={month} /> : <MonthSold report={report} />}
    </>
  );
}

function leadOf({ sales, netCents, units }: MonthByDesign): string {
  if (sales === 0) return 'No sale lies in this month.';
  const slips = sales === 1 ? 'one sale' : `${sales.toLocaleString('en-US')} sales`;
  const pieces = units === 1 ? 'One piece' : `${units.toLocaleString('en-US')} pieces`;
  return `${pieces} in ${slips}: ${formatCents(netCents)} before tax.`;
}

function Neighbours({ month, thisMonth }: Readonly<{ month: Month; thisMonth: Month }>) {
  const before = previousMonth(month);
  const after = nextMonth(month);
  return (
    <nav aria-label="Months" className={css['neighbours']}>
      <ButtonLink href={`/month?month=${before}`} variant="quiet">
        {formatMonth(before)}
      </ButtonLink>
      {after <= thisMonth ? (
        <ButtonLink href={`/month?month=${after}`} variant="quiet">
          {formatMonth(after)}
        </ButtonLink>
      ) : null}
    </nav>
  );
}

function QuietMonth({ month }: Readonly<{ month: Month }>) {
  return (
    <Empty
      title="Nothing was sold in this month"
      act={<ButtonLink href={`/month?month=${previousMonth(month)}`}>The month before</ButtonLink>}
    >
      Each sale at the counter and each commission handed over counts in the month of its day. Then
      the designs stand here in the order of what they earned.
    </Empty>
  );
}

function MonthSold({ report }: Readonly<{ report: MonthByDesign }>) {
  const { month, netCents, salesNetCents } = report;
  const isWhole = netCents === salesNetCents;
  return (
    <>
      <Bars
        title={barsTitle(report)}
        bars={barsOf(report)}
        table={<a href="#by-design">It hangs below, with each design’s share.</a>}
      />
      <BesideTheDesigns report={report} />
      <Section
        title="By design"
        id="by-design"
        act={
          <ButtonLink href={`/month/csv?month=${month}`} variant="quiet" download>
            Take it as CSV
          </ButtonLink>
        }
      >
        <DesignTable report={report} />
        <p className={css['sum']} role={isWhole ? undefined : 'alert'}>
          These lines add up to <strong>{formatCents(netCents)}</strong>
          {isWhole
            ? ', to the cent what the sales of the month come to.'
            : `, but the sales of the month come to ${formatCents(salesNetCents)}. Tell the bookkeeper.`}{' '}
          <Link href={`/books?month=${month}`}>See the books</Link>
        </p>
        <Working
          steps={[
            `All sale lines whose day lies in ${formatMonth(month)}, less what was brought back in it: ${formatCents(netCents)}.`,
            `The same by the sales and the returns themselves: ${formatCents(salesNetCents)}.`,
          ]}
          formula="The net of each sale line, before tax, added up by design; the share is that sum over the sum of all lines, rounded so that the shares are 100.0 % together."
          source="common practice; the sale lines themselves"
          caution="A sale counts on its day in the gallery's own time zone. A commission counts on the day it was handed over, not when it was paid; a deposit, an instalment or a voucher sold is money for later and counts when it is used. What is brought back counts against the month in which it came."
        />
      </Section>
    </>
  );
}

function barsTitle({ month, designs }: MonthByDesign): string {
  const which = designs.length > barsMost ? 'The ten designs that earned most' : 'Earned by design';
  return `${which}, before tax, ${formatMonth(month)}`;
}

function barsOf({ month, designs }: MonthByDesign) {
  return designs.slice(0, barsMost).map((design) => ({
    key: design.code,
    name: design.title,
    value: Number(design.netCents),
    text: formatCents(design.netCents),
    picture: design.picture ? { ...design.picture, alt: '' } : null,
    href: `/month/${design.code}?month=${month}`,
  }));
}

/** Commissions are too large to stand among tiles: they would press every other bar flat. */
function BesideTheDesigns({ report }: Readonly<{ report: MonthByDesign }>) {
  const { commissions, month } = report;
  if (!commissions) return null;
  const { units, netCents } = commissions;
  return (
    <p>
      Beside these, {units === 1 ? 'one commission was' : `${units} commissions were`} handed over:{' '}
      <Link href={`/month/commissions?month=${month}`}>{formatCents(netCents)}</Link>.
    </p>
  );
}
