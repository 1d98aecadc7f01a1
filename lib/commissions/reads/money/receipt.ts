import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Actor } from '@/lib/access/rules';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { findPayment, type PaymentTold } from '@/lib/commissions/reads/payments';
import { coveredBy, type Covered } from '@/lib/commissions/rules/money/covered';
import { planDue } from '@/lib/commissions/rules/money/plan';
import type { TenderKind } from '@/lib/ledger/rules';
import { dayFromDate } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery, type Gallery } from '@/lib/platform/settings';

/** What a payment came in against: the price, the sum of a hand-over, or what stays of an early end. */
export type ReceiptOf = 'agreed' | 'handed_over' | 'ended';

/** A payment as its slip tells it: everything as it stood when it came in, in cents. */
export type ReceiptTold = {
  commissionNumber: number;
  work: string;
  collector: string;
  payment: PaymentTold;
  /** The receipt of the counter that took it, with all its tenders; null when it came in by itself. */
  slip: { number: number; tenders: readonly { kind: TenderKind; amountCents: Cents }[] } | null;
  of: ReceiptOf;
  totalCents: Cents;
  leftCents: Cents;
  covered: Covered;
  gallery: Gallery;
};

const receiptSelect = {
  ...factsSelect,
  ...{ number: true, title: true, collector: { select: { name: true } } },
  handOver: { select: { ...factsSelect.handOver.select, at: true } },
  ending: { select: { ...factsSelect.ending.select, at: true } },
} as const satisfies Prisma.CommissionSelect;

type ReceiptRow = Prisma.CommissionGetPayload<{ select: typeof receiptSelect }>;

/**
 * One payment by its slip's number, with what it came to then and what it went to; for those who see
 * money. Signed changes, rates and a hand-over that came later are left out, so that it always reads
 * the same.
 *
 * @returns null when that number is not a payment of this commission
 */
export async function findReceipt(
  actor: Actor,
  commissionId: string,
  number: number,
): Promise<ReceiptTold | null> {
  const payment = await findPayment(actor, commissionId, number);
  if (!payment) return null;
  const gallery = await getGallery();
  const row = await db().commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: receiptSelect,
  });
  const { of, totalCents } = await totalThen(row, { commissionId, payment, gallery });
  const leftCents = totalCents - payment.paidSoFarCents;
  return {
    ...{ commissionNumber: row.number, work: row.title, collector: row.collector.name },
    ...{ payment, of, totalCents, gallery },
    slip: await slipOf(payment.id),
    leftCents: leftCents > 0n ? leftCents : 0n,
    covered: coveredThen(row, { payment, gallery, totalCents, of }),
  };
}

type Then = { payment: PaymentTold; gallery: Gallery };

async function totalThen(
  { handOver, ending }: ReceiptRow,
  { commissionId, payment, gallery }: Then & { commissionId: string },
): Promise<{ of: ReceiptOf; totalCents: Cents }> {
  const { receivedAt, receivedOn } = payment;
  if (handOver && handOver.at <= receivedAt) {
    const { totalCents, returns } = handOver.sale;
    const before = returns.filter((each) => dayFromDate(each.returnedOn) <= receivedOn);
    const backCents = sumCents(before.map((each) => each.totalCents));
    return { of: 'handed_over', totalCents: totalCents - backCents };
  }
  if (ending && ending.at <= receivedAt) return { of: 'ended', totalCents: ending.feeCents };
  const total = await readTotal(db(), commissionId, {
    ...{ on: receivedOn, roundBy: gallery.roundTaxBy, signedUntil: receivedAt },
  });
  return { of: 'agreed', totalCents: total?.totalCents ?? 0n };
}

function coveredThen(
  row: ReceiptRow,
  { payment, gallery, totalCents, of }: Then & { totalCents: Cents; of: ReceiptOf },
): Covered {
  if (of === 'ended') return { steps: [], beyondCents: 0n };
  const facts = factsOf(row, gallery.timeZone);
  const changeOrders = facts.changeOrders.filter(
    ({ signedOn }) => signedOn !== null && signedOn <= payment.receivedOn,
  );
  const plan = planDue({ ...facts, changeOrders }, totalCents);
  return coveredBy(plan, payment.paidSoFarCents - payment.amountCents, payment.amountCents);
}

async function slipOf(paymentId: string): Promise<ReceiptTold['slip']> {
  const row = await db().commissionPayment.findUnique({
    where: { id: paymentId },
    select: {
      entry: {
        select: {
          sale: {
            select: {
              number: true,
              tenders: {
                select: { kind: true, amountCents: true },
                orderBy: { position: 'asc' },
              },
            },
          },
        },
      },
    },
  });
  return row?.entry.sale ?? null;
}
