import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { DiscountKind, LineKind } from '@/lib/ledger/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import type { SaleTaxDue } from '../rules/pricing';
import type { Channel } from '../rules/refusals';
import { changeCents, type Tender } from '../rules/tenders';

/** One line as it was sold. */
export type ReceiptLine = {
  position: number;
  kind: LineKind;
  title: string;
  what: string;
  quantity: number;
  unitPriceCents: Cents;
  netCents: Cents;
  discounts: { kind: DiscountKind; reason: string; amountCents: Cents }[];
  /** The numbers of an edition that left. */
  numbers: number[];
  /** Sold for good, with a flaw that was told; null for a first. */
  flaw: string | null;
  /** The voucher that was sold, with what is on it now. */
  voucher: { code: string; balanceCents: Cents; expiresOn: Day | null } | null;
  /** Sold, and still hanging here until a day. */
  hangsUntilOn: Day | null;
  /** How many came back since. */
  backCount: number;
};

/** A tender with the number of the voucher or credit that paid. */
export type ReceiptTender = Tender & { code: string | null };

/** A return that answered the sale. */
export type ReceiptReturn = {
  number: number;
  kind: 'returned' | 'exchanged' | 'voided';
  on: Day;
  totalCents: Cents;
};

/** The carrier's slip of what was sent. */
export type ReceiptProof = {
  carrier: string;
  number: string;
  sentOn: Day;
  arrivedOn: Day | null;
  fileId: string | null;
};

/** A receipt: everything that was sold, charged and paid, as it was on that day. */
export type Receipt = {
  id: string;
  number: number;
  channel: Channel;
  soldAt: Date;
  soldOn: Day;
  soldBy: string;
  collector: { id: string; name: string } | null;
  taxPlace: string;
  delivery: 'taken' | 'sent' | 'installed';
  deliverTo: string;
  exemptWhy: string;
  giftTo: string;
  giftWords: string;
  /** The fair at which it was sold. */
  fair: string | null;
  lines: ReceiptLine[];
  taxes: SaleTaxDue[];
  tenders: ReceiptTender[];
  netCents: Cents;
  taxCents: Cents;
  totalCents: Cents;
  changeCents: Cents;
  returns: ReceiptReturn[];
  proof: ReceiptProof | null;
  /** The number of its entry in the journal. */
  entryNumber: number;
};

const lineColumns = {
  ...{ position: true, kind: true, title: true, what: true, quantity: true },
  ...{ unitPriceCents: true, netCents: true },
  discounts: {
    orderBy: { id: 'asc' },
    select: { kind: true, reason: true, amountCents: true },
  },
  movements: {
    where: { reason: 'sold', editionNumber: { not: null } },
    orderBy: { editionNumber: 'asc' },
    select: { editionNumber: true },
  },
  sku: { select: { grade: true, flaw: true } },
  credit: { select: { code: true, balanceCents: true, expiresOn: true } },
  toCollect: { select: { untilOn: true, collectedAt: true } },
  returned: { select: { quantity: true } },
} as const satisfies Prisma.SaleLineSelect;

const receiptColumns = {
  ...{ id: true, number: true, channel: true, soldAt: true, soldOn: true },
  ...{ netCents: true, taxCents: true, totalCents: true },
  ...{ delivery: true, deliverTo: true, exemptWhy: true, giftTo: true, giftWords: true },
  staff: { select: { name: true } },
  collector: { select: { id: true, name: true, erasedAt: true } },
  taxPlace: { select: { name: true } },
  fair: { select: { name: true } },
  entry: { select: { number: true } },
  lines: { orderBy: { position: 'asc' }, select: lineColumns },
  taxes: {
    orderBy: { authority: 'asc' },
    select: { authority: true, ratePercent: true, taxableCents: true, taxCents: true },
  },
  tenders: {
    orderBy: { position: 'asc' },
    select: {
      ...{ kind: true, amountCents: true, givenCents: true, reference: true },
      credit: { select: { code: true } },
    },
  },
  returns: {
    orderBy: { number: 'asc' },
    select: { number: true, kind: true, returnedOn: true, totalCents: true },
  },
  proof: {
    select: { carrier: true, number: true, sentOn: true, arrivedOn: true, fileId: true },
  },
} as const satisfies Prisma.SaleSelect;

/** The receipt of that number; null when no sale has it. */
export async function findReceipt(actor: Actor, number: number): Promise<Receipt | null> {
  assertAllowed(actor, 'receipts.see');
  const sale = await db().sale.findUnique({ where: { number }, select: receiptColumns });
  if (!sale) return null;
  const { staff, taxPlace, fair, entry, taxes, soldOn, proof, lines, returns, ...row } = sale;
  const kept = sale.collector?.erasedAt ? { ...row, ...struckOut } : row;
  const tenders = kept.tenders.map(({ credit, ...tender }) => ({
    ...tender,
    code: credit?.code ?? null,
  }));
  return {
    ...kept,
    soldOn: dayFromDate(soldOn),
    soldBy: staff.name,
    taxPlace: taxPlace.name,
    fair: fair?.name ?? null,
    entryNumber: entry.number,
    lines: lines.map(lineOf),
    taxes: taxes.map((tax) => ({ ...tax, ratePercent: tax.ratePercent.toString() })),
    tenders,
    changeCents: changeCents(tenders),
    returns: returns.map(({ returnedOn, ...back }) => ({ ...back, on: dayFromDate(returnedOn) })),
    proof: proof && {
      ...proof,
      sentOn: dayFromDate(proof.sentOn),
      arrivedOn: proof.arrivedOn && dayFromDate(proof.arrivedOn),
    },
  };
}

/** Not told any more of one who asked to be struck out; the sale itself is never changed. */
const struckOut = { deliverTo: '', giftTo: '', giftWords: '' };

type LineRow = Prisma.SaleLineGetPayload<{ select: typeof lineColumns }>;

function lineOf({ movements, sku, credit, toCollect, returned, ...line }: LineRow): ReceiptLine {
  const isWaiting = toCollect !== null && toCollect.collectedAt === null;
  return {
    ...line,
    numbers: movements.flatMap(({ editionNumber }) => editionNumber ?? []),
    flaw: sku && sku.grade !== 'first' ? sku.flaw : null,
    voucher: credit && {
      ...credit,
      expiresOn: credit.expiresOn && dayFromDate(credit.expiresOn),
    },
    hangsUntilOn: isWaiting ? dayFromDate(toCollect.untilOn) : null,
    backCount: returned.reduce((count, back) => count + back.quantity, 0),
  };
}
