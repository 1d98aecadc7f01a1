import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { FindForm } from '@/app/ui/form/find-form';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dayOf, formatDay, parseDay, type Day } from '@/lib/dates/rules';
import { tenderWords } from '@/lib/documents/rules';
import { formatCents, sumCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listReturnsOn, type ReturnInList } from '@/lib/returns/reads';
import {
  findLastDaySold,
  findReceipts,
  listProofMissing,
  listReceiptsOn,
  type DayOfReceipts,
} from '@/lib/sales/reads/receipts-of-day';
import { DayTable, FoundTable, ReturnTable } from './receipt-tables';
import css from './receipts.module.css';

export const metadata: Metadata = { title: 'Receipts' };

type Asked = { day?: string | string[]; find?: string | string[] };
type ReceiptsProps = Readonly<{ searchParams: Promise<Asked> }>;

/** What was sold on a day and what came back, what it comes to, and how a receipt is found. */
export default async function ReceiptsPage({ searchParams }: ReceiptsProps) {
  const actor = await requireActor('receipts.see');
  const gallery = await getGallery();
  const today = dayOf(now(), gallery.timeZone);
  const asked = await searchParams;
  const read = parseDay([asked.day ?? ''].flat()[0] ?? '');
  const day = read.ok ? read.value : today;
  const letters = ([asked.find ?? ''].flat()[0] ?? '').trim().slice(0, 80);
  const [shown, returns, before, unproven] = await Promise.all([
    listReceiptsOn(actor, day),
    listReturnsOn(actor, day),
    findLastDaySold(actor, day),
    listProofMissing(actor),
  ]);
  return (
    <>
      <PageHead
        title="Receipts"
        lead={<DaySentence shown={shown} returns={returns} today={today} />}
      />
      <InThisRoom room="counter" here="receipts" roles={actor.roles} />
      <div className={css['list']}>
        <FindForm
          action="/receipts"
          label="Find a receipt: its number, a name, a piece, or the terminal’s slip"
          letters={letters}
        />
        {letters === '' ? null : <Found actor={actor} letters={letters} />}
        <Views label="Days" views={daysAround(day, today)} />
        {shown.receipts.length === 0 && returns.length === 0 ? (
          <NothingSold before={before} />
        ) : (
          <>
            <DayTable shown={shown} zone={gallery.timeZone} />
            <ReturnTable returns={returns} zone={gallery.timeZone} />
          </>
        )}
        {unproven.length === 0 ? null : (
          <Section
            title="Proof missing"
            lead="Sent to another state, without the carrier’s slip: until it is kept, such a sale counts as sold here."
          >
            <FoundTable caption="Sent without a carrier’s slip" receipts={unproven} />
          </Section>
        )}
      </div>
    </>
  );
}

async function Found({ actor, letters }: Readonly<{ actor: Actor; letters: string }>) {
  const found = await findReceipts(actor, letters);
  if (found.length > 0) return <FoundTable caption={`Found for “${letters}”`} receipts={found} />;
  return (
    <Empty title={`No receipt was found for “${letters}”`}>
      Try fewer letters: the name of who bought it, the title of the piece, or the number.
    </Empty>
  );
}

function NothingSold({ before }: Readonly<{ before: Day | null }>) {
  const back = before ? (
    <ButtonLink href={`/receipts?day=${before}`} variant="quiet">
      {`Back to ${formatDay(before, 'short')}`}
    </ButtonLink>
  ) : null;
  return (
    <Empty title="Nothing was sold on this day" act={back}>
      Each sale at the counter leaves a receipt here, and the day’s sum above.{' '}
      <Link href="/counter">To the counter</Link>
    </Empty>
  );
}

type SentenceProps = Readonly<{
  shown: DayOfReceipts;
  returns: readonly ReturnInList[];
  today: Day;
}>;

function DaySentence({ shown, returns, today }: SentenceProps) {
  const when = shown.day === today ? 'Today' : formatDay(shown.day, 'long');
  const backCents = sumCents(returns.map((each) => each.totalCents));
  const back = returns.length === 0 ? '' : ` ${formatCents(backCents)} was given back.`;
  if (shown.receipts.length === 0) return `${when}: nothing was sold.${back}`;
  const paid = shown.paid.map(
    ({ kind, amountCents }) => `${formatCents(amountCents)} ${tenderWords[kind].toLowerCase()}`,
  );
  return (
    <>
      {when}: <Money cents={shown.totalCents} size="strong" />, of which{' '}
      {formatCents(shown.taxCents)} is sales tax. By how it was paid: {paid.join(', ')}.{back}
    </>
  );
}

function daysAround(day: Day, today: Day) {
  const before = addDays(day, -1);
  const after = addDays(day, 1);
  const views = [
    { href: `/receipts?day=${before}`, name: formatDay(before, 'short'), current: false },
    { href: `/receipts?day=${day}`, name: formatDay(day, 'short'), current: true },
  ];
  if (after > today) return views;
  return [
    ...views,
    { href: `/receipts?day=${after}`, name: formatDay(after, 'short'), current: false },
  ];
}
