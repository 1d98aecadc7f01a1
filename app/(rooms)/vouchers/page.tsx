import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { FindForm } from '@/app/ui/form/find-form';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf, formatDay, monthOf, parseMonth } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import type { CreditNow } from '@/lib/vouchers/reads';
import {
  creditsListed,
  listCredits,
  rollOfMonth,
  type CreditList,
} from '@/lib/vouchers/reads/list';
import { creditWords } from '@/lib/vouchers/rules';
import { codeRefusalMessage, readCode } from '@/lib/vouchers/rules/code';
import { MonthRoll } from './month-roll';
import { StoreCredit } from './store-credit';
import css from './vouchers.module.css';

export const metadata: Metadata = { title: 'Vouchers' };

type Asked = Partial<Record<'find' | 'month' | 'who', string | string[]>>;
type VouchersProps = Readonly<{ searchParams: Promise<Asked> }>;

/** Gift vouchers and store credits: what is owed on them, one by one and over the month. */
export default async function VouchersPage({ searchParams }: VouchersProps) {
  const actor = await requireActor('receipts.see');
  const asked = await searchParams;
  const letters = wordOf(asked.find);
  const found = await listCredits(actor, letters);
  const exact = readCode(letters);
  if (exact.ok && found.credits[0]) redirect(`/vouchers/${found.credits[0].code}`);
  const gallery = await getGallery();
  const thisMonth = monthOf(dayOf(now(), gallery.timeZone));
  const month = parseMonth(wordOf(asked.month)) ?? thisMonth;
  const roll = await rollOfMonth(actor, month, gallery.timeZone);
  return (
    <>
      <PageHead title="Vouchers" lead={<Owed found={found} />} />
      <InThisRoom room="counter" here="vouchers" roles={actor.roles} />
      <div className={css['find']}>
        <FindForm
          action="/vouchers"
          label="Scan a voucher, or write its number, or a name"
          letters={letters}
        />
      </div>
      {!exact.ok && exact.refusal.code === 'misread' ? (
        <Notice kind="refused">{codeRefusalMessage(exact.refusal)}</Notice>
      ) : null}
      {found.credits.length > 0 ? (
        <CreditTable credits={found.credits} />
      ) : (
        <NothingFound letters={letters} />
      )}
      <MonthRoll roll={roll} month={month} thisMonth={thisMonth} />
      {isAllowed(actor.roles, 'counter.discount_beyond') ? (
        <StoreCredit actor={actor} who={wordOf(asked.who)} />
      ) : null}
    </>
  );
}

function wordOf(asked: string | string[] | undefined): string {
  return ([asked ?? ''].flat()[0] ?? '').trim().slice(0, 80);
}

function Owed({ found }: Readonly<{ found: CreditList }>) {
  if (found.openCount === 0) return 'Nothing is owed on vouchers or credits.';
  const many = found.openCount === 1 ? 'One has' : `${found.openCount} have`;
  return (
    <>
      {many} money on them: <Money cents={found.openCents} size="strong" /> that we owe in pieces.
    </>
  );
}

function NothingFound({ letters }: Readonly<{ letters: string }>) {
  if (letters !== '') {
    return (
      <Empty title={`No voucher was found for “${letters}”`}>
        Its number has twelve signs in three groups; the name is the one it was sold under.
      </Empty>
    );
  }
  const act = <ButtonLink href="/counter">To the counter</ButtonLink>;
  return (
    <Empty title="No voucher has money on it" act={act}>
      A voucher is sold at the counter like a piece, and gets its number there. A store credit comes
      from a piece that was brought back.
    </Empty>
  );
}

function CreditTable({ credits }: Readonly<{ credits: readonly CreditNow[] }>) {
  return (
    <>
      <Table
        caption="Vouchers and store credits"
        captionHeardOnly
        columns={[
          { name: 'Number' },
          { name: 'What', wideOnly: true },
          { name: 'For whom' },
          { name: 'Runs out', wideOnly: true },
          { name: 'On it now', figure: true },
        ]}
        rows={credits.map((credit) => ({
          key: credit.code,
          cells: [
            <Link key="code" href={`/vouchers/${credit.code}`} className={css['code']}>
              {credit.code}
            </Link>,
            creditWords[credit.kind],
            [credit.collector?.name ?? '', credit.note].filter((word) => word !== '').join(' · '),
            credit.expiresOn === null ? 'never' : formatDay(credit.expiresOn, 'short'),
            <Money key="balance" cents={credit.balanceCents} />,
          ],
        }))}
      />
      {credits.length === creditsListed ? <p>The newest {creditsListed} are listed.</p> : null}
    </>
  );
}
