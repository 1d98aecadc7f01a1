import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { dayOf, formatDay, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findSoldSale } from '@/lib/returns/reads';
import { lastDayOfReturn, mayGoBeyond } from '@/lib/returns/rules';
import { leftOf, type SoldSale } from '@/lib/returns/rules/sold';
import { readNumber } from '../../receipt-address';
import { ReturnForm } from './return-form';
import { StrikeOut } from './strike-out';

type ReturnProps = Readonly<{ params: Promise<{ number: string }> }>;

export async function generateMetadata({ params }: ReturnProps): Promise<Metadata> {
  return { title: `Take back from receipt ${(await params).number}` };
}

/** Takes pieces of one receipt back: which, what becomes of them, and how the money goes back. */
export default async function ReturnPage({ params }: ReturnProps) {
  const actor = await requireActor('counter.give_back');
  const number = readNumber((await params).number);
  const sale = number === null ? null : await findSoldSale(actor, number);
  if (!sale) notFound();
  const gallery = await getGallery();
  const today = dayOf(now(), gallery.timeZone);
  const isOwner = mayGoBeyond(actor.roles);
  const isOut = sale.lines.some((line) => leftOf(line) > 0);
  return (
    <>
      <PageHead
        title="Take something back"
        lead={`From receipt ${sale.number}, sold on ${formatDay(sale.soldOn, 'long')}.`}
        back={{ href: `/receipts/${sale.number}`, name: `Receipt ${sale.number}` }}
      />
      <InThisRoom room="counter" here="receipts" roles={actor.roles} />
      {isOut ? (
        <>
          <Beyond sale={sale} returnDays={gallery.returnDays} today={today} isOwner={isOwner} />
          <ReturnForm sale={sale} feePercent={gallery.restockingFeePercent} />
          {sale.soldOn === today && sale.answeredTimes === 0 ? (
            <StrikeOut saleNumber={sale.number} />
          ) : null}
        </>
      ) : (
        <Empty
          title="Everything came back already"
          act={<ButtonLink href={`/receipts/${sale.number}`}>To the receipt</ButtonLink>}
        >
          Nothing of this receipt is still with the visitor.
        </Empty>
      )}
    </>
  );
}

type BeyondProps = Readonly<{ sale: SoldSale; returnDays: number; today: Day; isOwner: boolean }>;

/** Says before anything is filled in that the days are over, or that a piece was sold for good. */
function Beyond({ sale, returnDays, today, isOwner }: BeyondProps) {
  const endedOn = lastDayOfReturn(sale.soldOn, returnDays);
  const late =
    today > endedOn
      ? [`The ${returnDays} days for bringing it back ended on ${formatDay(endedOn, 'long')}.`]
      : [];
  const final = sale.lines
    .filter((line) => line.finalWhy !== '' && leftOf(line) > 0)
    .map((line) => `${line.title} was sold for good: ${line.finalWhy}.`);
  const said = [...late, ...final];
  if (said.length === 0) return null;
  const who = isOwner
    ? 'As the owner you may take it back all the same.'
    : 'Only the owner may take it back all the same.';
  return <Notice kind="caution">{[...said, who].join(' ')}</Notice>;
}
