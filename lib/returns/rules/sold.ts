import type { Day } from '@/lib/dates/rules';
import type { LineKind, TenderKind } from '@/lib/ledger/rules';
import type { Cents } from '@/lib/money/rules';

/** What becomes of a piece that came back; `nothing` for a line that brings no piece. */
export type ReturnedTo = 'shelf' | 'second' | 'broken' | 'nothing';

/** What kind of answer to a sale it is. */
export type ReturnKind = 'returned' | 'exchanged' | 'voided';

/** A line of a sale as a return needs to know it, with what came back of it before. */
export type SoldLine = {
  id: string;
  kind: LineKind;
  skuId: string | null;
  title: string;
  what: string;
  quantity: number;
  netCents: Cents;
  taxCents: Cents;
  unitCostCents: Cents | null;
  /** Final, so that only the owner takes it back: why, in words; empty for anything else. */
  finalWhy: string;
  /** The numbers of an edition that left; empty for anything else. */
  numbers: readonly number[];
  /** Whether the piece is a second already; false for what is no piece. */
  isSecond: boolean;
  commissionId: string | null;
  orderId: string | null;
  layawayId: string | null;
  creditId: string | null;
  /** What is on the voucher that this line sold. */
  creditBalanceCents: Cents;
  /** What came back before. */
  back: { quantity: number; netCents: Cents; taxCents: Cents; numbers: readonly number[] };
};

/** One way in which the sale was paid, with what went back that way before. */
export type SoldTender = {
  id: string;
  kind: TenderKind;
  amountCents: Cents;
  reference: string;
  creditId: string | null;
  orderId: string | null;
  layawayId: string | null;
  /** What was given back against it before, and how much of that as store credit. */
  backCents: Cents;
  /** Of what was written down as owed: what has been paid since. */
  settledCents: Cents;
};

/** What one authority was charged, and what of it went back before. */
export type SoldTax = { authority: string; taxCents: Cents; backCents: Cents };

/** What a designer gets for bringing the buyer; what was taken back of it before. */
export type SoldReferral = { collectorId: string; amountCents: Cents };

/** A completed sale with everything that answered it. */
export type SoldSale = {
  id: string;
  number: number;
  soldOn: Day;
  collectorId: string | null;
  commissionId: string | null;
  lines: readonly SoldLine[];
  taxes: readonly SoldTax[];
  tenders: readonly SoldTender[];
  referral: SoldReferral | null;
  /** How many returns answered it before. */
  answeredTimes: number;
};

/** How many pieces of a line are still with the visitor. */
export function leftOf(line: SoldLine): number {
  return line.quantity - line.back.quantity;
}

/** The numbers of an edition that are still with the visitor, from the lowest. */
export function numbersLeft(line: SoldLine): number[] {
  return line.numbers
    .filter((number) => !line.back.numbers.includes(number))
    .toSorted((a, b) => a - b);
}

/** What may still go back against a tender, in cents. */
export function tenderLeft(tender: SoldTender): Cents {
  return tender.amountCents - tender.backCents;
}
