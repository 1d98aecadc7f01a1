import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { addressLine } from '@/lib/collectors/rules';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect, letOff } from '@/lib/commissions/reads/facts-select';
import { soldSums } from '@/lib/commissions/reads/money/sold-sums';
import { paidCents, type CommissionFacts } from '@/lib/commissions/rules/facts';
import { planDue, type PlanStepDue } from '@/lib/commissions/rules/money/plan';
import type { CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery, type Gallery } from '@/lib/platform/settings';

/** The tax of a whole commission: by authority, and why there is none or less where it is so. */
export type TaxTold = {
  place: string;
  parts: readonly { authority: string; ratePercent: string; taxCents: Cents }[];
  taxCents: Cents;
  exemptWhy: string;
  /** Whether a hand-over has fixed it; before that it is reckoned at the rates of the day. */
  isFixed: boolean;
};

/** What a commission comes to as its papers tell it: the original, its signed changes, the tax. */
export type PriceTold = {
  agreedOn: Day;
  lines: readonly CommissionLine[];
  changes: readonly { number: number; words: string; priceCents: Cents; signedOn: Day }[];
  /** What was let off on the receipt of the hand-over since, before tax; nothing where nothing was. */
  letOffCents: Cents;
  priceCents: Cents;
  tax: TaxTold;
  totalCents: Cents;
};

/** What every paper about the money of a commission begins with. */
export type MoneyPaper = {
  commissionNumber: number;
  work: string;
  collector: string;
  /** Null where none is kept. */
  address: string | null;
  price: PriceTold;
  plan: readonly PlanStepDue[];
  paidCents: Cents;
  owedCents: Cents;
  facts: CommissionFacts;
  gallery: Gallery;
};

const paperSelect = {
  ...factsSelect,
  ...{ number: true, title: true, collector: true },
  agreements: {
    select: {
      ...factsSelect.agreements.select,
      taxPlace: { select: { name: true } },
      lines: {
        select: { kind: true, words: true, amountCents: true },
        orderBy: { position: 'asc' },
      },
    },
    orderBy: { version: 'desc' },
    take: 1,
  },
  changeOrders: {
    ...factsSelect.changeOrders,
    select: { ...factsSelect.changeOrders.select, words: true },
  },
  handOver: {
    select: {
      ...factsSelect.handOver.select,
      sale: {
        select: {
          ...{ totalCents: true, netCents: true, taxCents: true, exemptWhy: true },
          returns: {
            ...letOff.returns,
            select: {
              ...letOff.returns.select,
              taxes: { select: { authority: true, taxCents: true } },
            },
          },
          taxes: {
            select: { authority: true, ratePercent: true, taxCents: true },
            orderBy: { authority: 'asc' },
          },
        },
      },
    },
  },
} as const satisfies Prisma.CommissionSelect;

type PaperRow = Prisma.CommissionGetPayload<{ select: typeof paperSelect }>;

/**
 * The price, the tax, the plan and what came in, as the papers of a commission tell them on a day.
 *
 * The caller has asked whether the person may see money.
 *
 * @returns null for no such commission, or before anything is agreed
 */
export async function readMoneyPaper(commissionId: string, today: Day): Promise<MoneyPaper | null> {
  const gallery = await getGallery();
  const row = await db().commission.findUnique({
    where: { id: commissionId },
    select: paperSelect,
  });
  if (!row) return null;
  const facts = factsOf(row, gallery.timeZone);
  const price = await priceOf(row, { commissionId, today, gallery });
  if (!price) return null;
  const paid = paidCents(facts);
  const { number: commissionNumber, title: work, collector } = row;
  return {
    ...{ commissionNumber, work, collector: collector.name, address: addressLine(collector) },
    ...{ price, facts, gallery, paidCents: paid },
    plan: planDue(facts, price.totalCents),
    owedCents: price.totalCents > paid ? price.totalCents - paid : 0n,
  };
}

type On = { commissionId: string; today: Day; gallery: Gallery };

async function priceOf(row: PaperRow, on: On): Promise<PriceTold | null> {
  const agreement = row.agreements[0];
  if (!agreement) return null;
  const { lines, agreedOn, priceCents: originalCents } = agreement;
  const signed = row.changeOrders.flatMap(({ number, words, priceCents, signed: by }) =>
    by ? [{ number, words, priceCents, signedOn: dayFromDate(by.signedOn) }] : [],
  );
  const tax = await taxOf(row, on);
  const agreedCents = originalCents + sumCents(signed.map((each) => each.priceCents));
  const sold = row.handOver && soldSums(row.handOver.sale);
  const letOffCents = row.handOver && sold ? row.handOver.sale.netCents - sold.priceCents : 0n;
  const priceCents = agreedCents - letOffCents;
  return {
    ...{ agreedOn: dayFromDate(agreedOn), lines, changes: signed, letOffCents, priceCents, tax },
    totalCents: priceCents + tax.taxCents,
  };
}

async function taxOf(row: PaperRow, { commissionId, today, gallery }: On): Promise<TaxTold> {
  const place = row.agreements[0]?.taxPlace.name ?? '';
  if (row.handOver) {
    const { sale } = row.handOver;
    const back = sale.returns.flatMap(({ taxes }) => taxes);
    const parts = sale.taxes.map(({ authority, ratePercent, taxCents }) => ({
      ...{ authority, ratePercent: ratePercent.toString() },
      taxCents: taxCents - sumOfAuthority(back, authority),
    }));
    const { taxCents } = soldSums(sale);
    return { place, parts, taxCents, exemptWhy: sale.exemptWhy, isFixed: true };
  }
  const total = await readTotal(db(), commissionId, { on: today, roundBy: gallery.roundTaxBy });
  const { parts = [], taxCents = 0n, exemptWhy = '' } = total?.tax ?? {};
  return {
    ...{ place, taxCents, exemptWhy, isFixed: false },
    parts: parts.map(({ name: authority, ratePercent, taxCents: cents }) => ({
      ...{ authority, ratePercent, taxCents: cents },
    })),
  };
}

function sumOfAuthority(
  taxes: readonly { authority: string; taxCents: Cents }[],
  authority: string,
): Cents {
  const own = taxes.filter((tax) => tax.authority === authority);
  return sumCents(own.map(({ taxCents }) => taxCents));
}
