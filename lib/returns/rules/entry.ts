import {
  accountOfMoney,
  accounts,
  type PostingLine,
  type PostingPapers,
  type TenderKind,
} from '@/lib/ledger/rules';
import { addUp, earnedLines, isMoney, isMoneyForLater } from '@/lib/ledger/rules/sale-entry';
import type { Cents } from '@/lib/money/rules';
import type { DecidedRefund } from './refunds';
import type { SoldLine, SoldReferral, SoldSale } from './sold';

/** What the ledger has to know of a return. */
export type ReturnForLedger = {
  sale: SoldSale;
  lines: readonly { line: SoldLine; netCents: Cents }[];
  taxes: readonly { authority: string; taxCents: Cents }[];
  feeCents: Cents;
  refunds: readonly DecidedRefund[];
  /** What of the designer's fee is taken back. */
  referralCents: Cents;
};

/**
 * The postings of a return: what was earned and the tax held go back, a fee is earned, and the
 * money leaves as it came or becomes a store credit. `storeCreditId` names the credit.
 *
 * Pieces that come back have an account of their own, so that sales stand as they were made.
 *
 * @source common practice; the fee stands outside the tax, which goes back in full
 * @example 100.00 and 8.00 tax back less 15.00 fee: brought back +100.00, tax held +8.00, fees
 *   −15.00, cash −93.00
 */
export function returnEntry(
  answered: ReturnForLedger,
  storeCreditId: string | null,
): PostingLine[] {
  const { sale, lines, taxes, feeCents, refunds, referralCents } = answered;
  const isForLater = lines.every(({ line }) => isMoneyForLater(line.kind));
  return addUp([
    ...lines.flatMap(({ line, netCents }) => lineBack(line, netCents)),
    ...taxes.map(({ authority, taxCents }) => ({
      ...{ account: accounts.taxHeld, amountCents: taxCents, authority },
    })),
    {
      account: isForLater ? accounts.depositsKept : accounts.restockingFees,
      amountCents: -feeCents,
    },
    ...refunds.map((refund) => moneyBack(refund, sale, storeCreditId)),
    ...referralBack(sale.referral, referralCents),
  ]);
}

function lineBack(line: SoldLine, netCents: Cents): PostingLine[] {
  if (line.kind === 'piece') return [{ account: accounts.broughtBack, amountCents: netCents }];
  const sold = earnedLines({ kind: line.kind, netCents, ...papersOf(line) });
  return sold.map((posting) => ({ ...posting, amountCents: -posting.amountCents }));
}

function moneyBack(
  { tender, kind, amountCents }: DecidedRefund,
  sale: SoldSale,
  storeCreditId: string | null,
): PostingLine {
  if (isMoney(kind)) return { account: accountOfMoney[kind], amountCents: -amountCents };
  const back = { account: accountBack(kind, tender), amountCents: -amountCents };
  if (kind === 'on_account') return { ...back, ...owedBy(sale) };
  if (kind === 'deposit') return { ...back, ...depositOf(tender, sale) };
  if (kind === tender.kind) return { ...back, ...papersOf(tender) };
  return { ...back, ...(storeCreditId === null ? {} : { creditId: storeCreditId }) };
}

function accountBack(kind: Exclude<TenderKind, keyof typeof accountOfMoney>, of: Orderly) {
  if (kind === 'deposit') return of.orderId === null ? accounts.deposits : accounts.orderDeposits;
  return accountOfPromise[kind];
}

type Orderly = { orderId: string | null };

const accountOfPromise = {
  voucher: accounts.vouchers,
  store_credit: accounts.storeCredit,
  layaway: accounts.layawayHeld,
  on_account: accounts.owedByCollectors,
} as const;

function owedBy({ collectorId, commissionId }: SoldSale): PostingPapers {
  return papersOf({ commissionId, collectorId });
}

function depositOf({ orderId }: Orderly, { commissionId }: SoldSale): PostingPapers {
  return orderId === null ? papersOf({ commissionId }) : { orderId };
}

function referralBack(referral: SoldReferral | null, cents: Cents): PostingLine[] {
  if (!referral || cents === 0n) return [];
  const { collectorId } = referral;
  return [
    { account: accounts.referralFeesOwed, amountCents: cents, collectorId },
    { account: accounts.referralFees, amountCents: -cents },
  ];
}

function papersOf(from: { [Paper in keyof PostingPapers]?: string | null }): PostingPapers {
  const { commissionId, orderId, layawayId, creditId, collectorId } = from;
  return {
    ...(commissionId ? { commissionId } : {}),
    ...(orderId ? { orderId } : {}),
    ...(layawayId ? { layawayId } : {}),
    ...(creditId ? { creditId } : {}),
    ...(collectorId ? { collectorId } : {}),
  };
}
