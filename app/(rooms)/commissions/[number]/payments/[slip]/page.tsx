import { notFound } from 'next/navigation';
import { DayText, InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { addressLine } from '@/lib/collectors/rules';
import { findPayment, type PaymentTold } from '@/lib/commissions/reads/payments';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { paymentWords } from '@/lib/commissions/rules/words';
import { readSheet } from '../../read-sheet';
import css from '../../../commissions.module.css';

type SlipPageProps = Readonly<{
  params: Promise<{ number: string; slip: string }>;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

export const metadata = { title: 'Payment slip' };

/** The slip of one payment, with what came in so far and what remains. Not an invoice. */
export default async function SlipPage({ params, searchParams }: SlipPageProps) {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const { slip } = await params;
  const payment = /^[1-9]\d{0,8}$/.test(slip)
    ? await findPayment(actor, sheet.id, Number(slip))
    : null;
  if (!payment) notFound();
  const { done } = await searchParams;
  return (
    <>
      <PageHead
        title={`Payment slip ${payment.number}`}
        lead={`${sheet.title}, commission ${sheet.number}`}
        back={{ href: `/commissions/${sheet.number}`, name: 'The commission’s sheet' }}
      />
      {done === 'yes' ? (
        <div className="not-on-paper">
          <Notice kind="done">The payment is taken. This slip can be printed as it stands.</Notice>
        </div>
      ) : null}
      <Slip sheet={sheet} payment={payment} />
    </>
  );
}

function Slip({ sheet, payment }: Readonly<{ sheet: Sheet; payment: PaymentTold }>) {
  const { gallery, money, telling } = sheet;
  const totalCents = money?.totalCents ?? 0n;
  const leftCents = totalCents - payment.paidSoFarCents;
  return (
    <article className={css['slip']}>
      <header>
        <p className={css['slip-house']}>{gallery.name}</p>
        <p className={css['quiet']}>
          {[addressLine(gallery), gallery.phone, gallery.email].filter(Boolean).join(' · ')}
        </p>
      </header>
      <p className={css['slip-amount']}>
        <Money cents={payment.amountCents} currency={telling.currency} size="total" />
      </p>
      <Facts
        facts={[
          { name: 'Received from', value: payment.paidBy },
          {
            name: 'On',
            value: <InstantText at={payment.receivedAt} zone={gallery.timeZone} />,
          },
          {
            name: 'Paid with',
            value: [paymentWords[payment.kind], payment.reference].filter(Boolean).join(', '),
          },
          { name: 'For', value: `${payment.forWhat ?? 'Payment'}: ${sheet.title}` },
          { name: 'Taken by', value: payment.takenBy },
          {
            name: sheet.handOver
              ? 'It comes to, with tax'
              : 'It comes to, with tax at today’s rate',
            value: <Money cents={totalCents} currency={telling.currency} />,
          },
          {
            name: 'Came in so far',
            value: <Money cents={payment.paidSoFarCents} currency={telling.currency} />,
          },
          {
            name: 'Remaining',
            value: (
              <Money
                cents={leftCents > 0n ? leftCents : 0n}
                currency={telling.currency}
                size="strong"
              />
            ),
          },
        ]}
      />
      <p className={css['quiet']}>
        This slip is not an invoice. {slipWords(sheet)} Written on{' '}
        <DayText day={payment.receivedOn} />.
      </p>
    </article>
  );
}

function slipWords({ handOver }: Sheet): string {
  return handOver
    ? 'The piece was handed over; its receipt shows the tax.'
    : 'The money is held as a deposit until the piece is handed over; the tax is charged then.';
}
