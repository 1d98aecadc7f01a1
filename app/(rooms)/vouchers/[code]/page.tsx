import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findCredit, type CreditMove, type CreditPaper } from '@/lib/vouchers/reads/list';
import { creditWords, isStillGood } from '@/lib/vouchers/rules';

type VoucherProps = Readonly<{ params: Promise<{ code: string }> }>;

export const metadata: Metadata = { title: 'Voucher' };

/** One voucher or store credit: what is on it, and everything that happened to it. */
export default async function VoucherPage({ params }: VoucherProps) {
  const actor = await requireActor('receipts.see');
  const credit = await findCredit(actor, decodeURIComponent((await params).code));
  if (!credit) notFound();
  const gallery = await getGallery();
  const isGood = isStillGood(credit.expiresOn, dayOf(now(), gallery.timeZone));
  return (
    <>
      <PageHead
        title={credit.code}
        lead={
          <>
            {creditWords[credit.kind]} with <Money cents={credit.balanceCents} size="strong" /> on
            it.
          </>
        }
        back={{ href: '/vouchers', name: 'Vouchers' }}
      >
        <ButtonLink href={`/vouchers/${credit.code}/pdf`} download size="counter">
          Print it
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="vouchers" roles={actor.roles} />
      {isGood ? null : (
        <Notice kind="caution">It has run out. The owner decides whether it is honoured.</Notice>
      )}
      <CreditFacts credit={credit} zone={gallery.timeZone} />
      <Section title="What happened to it">
        <Moves moves={credit.moves} zone={gallery.timeZone} />
      </Section>
    </>
  );
}

function CreditFacts({ credit, zone }: Readonly<{ credit: CreditPaper; zone: string }>) {
  const { collector, expiresOn, note, createdAt } = credit;
  return (
    <Facts
      facts={[
        {
          name: 'For whom',
          value: collector && <Link href={`/collectors/${collector.id}`}>{collector.name}</Link>,
          notKnown: 'whoever brings it',
        },
        {
          name: 'Runs out',
          value: expiresOn === null ? 'It does not run out' : formatDay(expiresOn, 'long'),
        },
        { name: 'Opened', value: <InstantText at={createdAt} zone={zone} /> },
        { name: 'A note', value: note === '' ? null : note, notKnown: 'none' },
      ]}
    />
  );
}

function Moves({ moves, zone }: Readonly<{ moves: readonly CreditMove[]; zone: string }>) {
  if (moves.length === 0) return <p>Nothing was put on it yet.</p>;
  return (
    <Table
      caption="Money put on and taken off"
      captionHeardOnly
      columns={[
        { name: 'When' },
        { name: 'Paper' },
        { name: 'By', wideOnly: true },
        { name: 'Amount', figure: true },
      ]}
      rows={moves.map((move) => ({
        key: move.id,
        cells: [
          <InstantText key="at" at={move.at} zone={zone} />,
          <MovePaper key="paper" move={move} />,
          move.by,
          <Money key="amount" cents={move.amountCents} />,
        ],
      }))}
    />
  );
}

function MovePaper({ move }: Readonly<{ move: CreditMove }>) {
  if (!move.paper) return 'given by the owner';
  const { kind, number } = move.paper;
  return kind === 'receipt' ? (
    <Link href={`/receipts/${number}`}>receipt {number}</Link>
  ) : (
    <Link href={`/receipts/returns/${number}`}>return {number}</Link>
  );
}
