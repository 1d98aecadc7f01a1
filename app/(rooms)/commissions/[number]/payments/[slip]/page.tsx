import { notFound } from 'next/navigation';
import { DayText, InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { addressLine } from '@/lib/collectors/rules';
import { findReceipt, type ReceiptTold } from '@/lib/commissions/reads/money/receipt';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { paymentWords } from '@/lib/commissions/rules/words';
import { tenderWords } from '@/lib/documents/rules';
import { formatCents } from '@/lib/money/rules';
import { readSheet } from '../../read-sheet';
import css from '../../../commissions.module.css';

type SlipPageProps = Readonly<{
  params: Promise<{ number: string; slip: string }>;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

export const metadata = { title: 'Payment slip' };

/** The slip of one payment, with what came in so far and what remained after it. Not an invoice. */
export default async function SlipPage({ params, searchParams }: SlipPageProps) {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const { slip } = await params;
  const isNumber = /^[1-9]\d{0,8}$/.test(slip);
  const told = isNumber ? await findReceipt(actor, sheet.id, Number(slip)) : null;
  if (!told) notFound();
  const { done } = await searchParams;
  const { number } = told.payment;
  return (
    <>
      <PageHead
        title={`Payment slip ${number}`}
        lead={`${sheet.title}, commission ${sheet.number}`}
        back={{ href: `/commissions/${sheet.number}`, name: 'The commission’s sheet' }}
      />
      {done === 'yes' ? (
        <div className="not-on-paper">
          <Notice kind="done">The payment is taken. This slip can be printed as it stands.</Notice>
        </div>
      ) : null}
      <Slip sheet={sheet} told={told} />
      <p className="not-on-paper">
        <a href={`/commissions/${sheet.number}/payments/${number}/pdf`}>The slip as a PDF</a>
      </p>
    </>
  );
}

function Slip({ sheet, told }: Readonly<{ sheet: Sheet; told: ReceiptTold }>) {
  const { gallery, telling } = sheet;
  const { payment, totalCents, leftCents } = told;
  const { currency } = telling;
  return (
    <article className={css['slip']}>
      <header>
        <p className={css['slip-house']}>{gallery.name}</p>
        <p className={css['quiet']}>
          {[addressLine(gallery), gallery.phone, gallery.email].filter(Boolean).join(' · ')}
        </p>
      </header>
      <p className={css['slip-amount']}>
        <Money cents={payment.amountCents} currency={currency} size="total" />
      </p>
      <Facts
        facts={[
          { name: 'Received from', value: payment.paidBy },
          {
            name: 'On',
            value: <InstantText at={payment.receivedAt} zone={gallery.timeZone} />,
          },
          { name: 'Paid with', value: paidWith(told, currency) },
          { name: 'For', value: `${payment.forWhat ?? 'Payment'}: ${sheet.title}` },
          { name: 'It went to', value: wentTo(told, currency) },
          { name: 'Taken by', value: payment.takenBy },
          { name: totalNames[told.of], value: <Money cents={totalCents} currency={currency} /> },
          {
            name: 'Came in so far',
            value: <Money cents={payment.paidSoFarCents} currency={currency} />,
          },
          {
            name: 'Remaining',
            value: <Money cents={leftCents} currency={currency} size="strong" />,
          },
        ]}
      />
      <p className={css['quiet']}>
        This slip is not an invoice. {slipWords[told.of]} Written on{' '}
        <DayText day={payment.receivedOn} />.
      </p>
    </article>
  );
}

const totalNames: Record<ReceiptTold['of'], string> = {
  agreed: 'It comes to, with tax at that day’s rate',
  handed_over: 'It comes to, with tax',
  ended: 'What stays of the early end',
};

const slipWords: Record<ReceiptTold['of'], string> = {
  agreed: 'The money is held as a deposit until the piece is handed over; the tax is charged then.',
  handed_over: 'The piece was handed over; its receipt shows the tax.',
  ended: 'The commission ended early; its settlement says what stays.',
};

type Telling = Sheet['telling'];

function paidWith({ payment, slip }: ReceiptTold, currency: Telling['currency']): string {
  const tenders = slip?.tenders ?? [];
  if (!slip || tenders.length < 2) {
    const receipt = slip ? `receipt ${slip.number}` : '';
    return [paymentWords[payment.kind], payment.reference, receipt].filter(Boolean).join(', ');
  }
  const parts = tenders.map(
    ({ kind, amountCents }) => `${tenderWords[kind]} ${formatCents(amountCents, { currency })}`,
  );
  return `receipt ${slip.number}: ${parts.join(', ')}`;
}

function wentTo({ covered, of }: ReceiptTold, currency: Telling['currency']): string {
  if (of === 'ended') return 'what stays of the early end';
  const money = (cents: bigint) => formatCents(cents, { currency });
  const steps = covered.steps.map(({ name, cents }) => `${name} ${money(cents)}`);
  const beyond = covered.beyondCents;
  const more = beyond > 0n ? [`${money(beyond)} more than it comes to, kept for them`] : [];
  return [...steps, ...more].join(', ');
}
