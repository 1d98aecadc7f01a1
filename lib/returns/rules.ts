import { isAllowed, type Role } from '@/lib/access/rules';
import { addDays, type Day } from '@/lib/dates/rules';
import { isMoneyForLater } from '@/lib/ledger/rules/sale-entry';
import { shareCents, sumCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { checkLine, linesOfVoid, splitLine, type AskedLine, type DecidedLine } from './rules/lines';
import type { ReturnRefusal } from './rules/refusals';
import { shareOfTenders, type DecidedRefund, type RefundWay } from './rules/refunds';
import { goodsCents, shareOfAuthorities, shareOfReferral } from './rules/shares';
import type { ReturnKind, SoldSale } from './rules/sold';

/** What somebody brings back, and how they want the money. */
export type AskedReturn = {
  kind: ReturnKind;
  reason: string;
  /** Empty for a sale that is struck out: everything comes back then. */
  lines: readonly AskedLine[];
  /** Kept by the gallery: a share of the price, or an amount. */
  fee: { percent: string } | { cents: Cents };
  how: RefundWay;
  /** Amounts by tender id, where a person wrote them; empty shares them out. */
  refunds: ReadonlyMap<string, Cents>;
};

/** When it comes back, within how many days it may, and whether the doer may go beyond. */
export type ReturnSetting = {
  returnedOn: Day;
  returnDays: number;
  /** The owner takes back what is late or was sold for good. */
  mayGoBeyond: boolean;
  /** It answers the end of a layaway or an order: their money comes back by this alone. */
  endsPaper?: boolean;
};

/** A return that was decided: everything that is written, and nothing else. */
export type DecidedReturn = {
  sale: SoldSale;
  kind: ReturnKind;
  reason: string;
  returnedOn: Day;
  lines: readonly DecidedLine[];
  taxes: readonly { authority: string; taxCents: Cents }[];
  refunds: readonly DecidedRefund[];
  netCents: Cents;
  taxCents: Cents;
  feeCents: Cents;
  totalCents: Cents;
  referralCents: Cents;
};

/**
 * Decides what comes back of a sale and what is given back for it, from what is true now.
 *
 * Net and tax are the part of what is left of each line; the tax goes back in full, the fee comes
 * out of the price alone.
 *
 * @returns refuses, in this order: nothing chosen; to strike out a sale of another day, or one that
 *   was answered before; for each line in turn, one that is not of the sale, more pieces than are
 *   out, a number that is missing or not out, what becomes of it unsaid; then a return that is late;
 *   then for each line, what was sold for good, money of a paper that is not ended, a used voucher;
 *   a fee above the price; and what {@link shareOfTenders} refuses
 * @source the tax goes back in full, and a fee is none of it: CDTFA annotation 490.0223
 * @example 100.00 at 8 % with a fee of 15 in 100: 85.00 and 8.00 go back, together 93.00
 */
export function decideReturn(
  sale: SoldSale,
  asked: AskedReturn,
  setting: ReturnSetting,
): Result<DecidedReturn, ReturnRefusal> {
  const chosen = asked.kind === 'voided' ? linesOfVoid(sale) : asked.lines;
  const refusal =
    refusalOfWhole(sale, asked, { chosen, setting }) ?? refusalOfLines(sale, { chosen, setting });
  if (refusal) return refuse(refusal);

  const lines = chosen.flatMap((line) => splitLine(sale, line));
  const netCents = sumCents(lines.map((line) => line.netCents));
  const taxCents = sumCents(lines.map((line) => line.taxCents));
  const feeCents = asked.kind === 'voided' ? 0n : feeOf(asked.fee, netCents);
  if (feeCents > netCents) return refuse({ code: 'fee_above_price', feeCents, netCents });
  const totalCents = netCents + taxCents - feeCents;
  const how = asked.kind === 'voided' ? 'undone' : asked.how;
  const refunds = shareOfTenders(sale.tenders, { totalCents, how, asked: asked.refunds });
  if (!refunds.ok) return refunds;
  return ok({
    ...{ sale, kind: asked.kind, reason: asked.reason, returnedOn: setting.returnedOn, lines },
    taxes: shareOfAuthorities(sale.taxes, taxCents),
    refunds: refunds.value,
    ...{ netCents, taxCents, feeCents, totalCents },
    referralCents: referralOf(sale, lines),
  });
}

type Chosen = { chosen: readonly AskedLine[]; setting: ReturnSetting };

function refusalOfWhole(
  sale: SoldSale,
  asked: AskedReturn,
  { chosen, setting }: Chosen,
): ReturnRefusal | null {
  if (chosen.length === 0 && asked.kind !== 'voided') return { code: 'nothing_chosen' };
  if (asked.kind !== 'voided') return null;
  const { soldOn } = sale;
  if (soldOn !== setting.returnedOn) return { code: 'void_another_day', soldOn };
  return sale.answeredTimes > 0 ? { code: 'void_after_return' } : null;
}

function refusalOfLines(sale: SoldSale, { chosen, setting }: Chosen): ReturnRefusal | null {
  for (const line of chosen) {
    const refusal = checkLine(sale, line);
    if (refusal) return refusal;
  }
  const lines = sale.lines.filter((line) => chosen.some(({ lineId }) => lineId === line.id));
  const late = refusalOfDay(sale, setting);
  if (late && !lines.every((line) => isMoneyForLater(line.kind))) return late;
  for (const line of lines) {
    const { title, creditBalanceCents: balanceCents } = line;
    if (line.finalWhy !== '' && !setting.mayGoBeyond) {
      return { code: 'final_sale', title, why: line.finalWhy };
    }
    if (belongsToPaper.includes(line.kind) && setting.endsPaper !== true) {
      return { code: 'belongs_to_a_paper', title };
    }
    if (line.kind === 'voucher' && balanceCents < line.netCents - line.back.netCents) {
      return { code: 'voucher_was_used', title, balanceCents };
    }
  }
  return null;
}

const belongsToPaper: readonly string[] = ['instalment', 'order_deposit', 'layaway_payment'];

function refusalOfDay(sale: SoldSale, setting: ReturnSetting): ReturnRefusal | null {
  const { returnDays: days } = setting;
  const endedOn = lastDayOfReturn(sale.soldOn, days);
  if (setting.mayGoBeyond || setting.returnedOn <= endedOn) return null;
  return { code: 'too_late', days, endedOn };
}

/**
 * The last day on which a piece may be brought back.
 *
 * @example lastDayOfReturn('2026-11-25', 14) // '2026-12-09'
 */
export function lastDayOfReturn(soldOn: Day, returnDays: number): Day {
  return addDays(soldOn, returnDays);
}

function feeOf(fee: AskedReturn['fee'], netCents: Cents): Cents {
  return 'cents' in fee ? fee.cents : shareCents(netCents, fee.percent, 'half-up');
}

function referralOf(sale: SoldSale, lines: readonly DecidedLine[]): Cents {
  if (!sale.referral) return 0n;
  const backBefore = sale.lines.map((line) => ({ kind: line.kind, netCents: line.back.netCents }));
  const backNow = lines.map(({ line, netCents }) => ({ kind: line.kind, netCents }));
  return shareOfReferral(sale.referral.amountCents, {
    soldCents: goodsCents(sale.lines),
    beforeCents: goodsCents(backBefore),
    nowCents: goodsCents(backNow),
  });
}

/** Whether these roles may take back what is late or was sold for good: the owner may. */
export function mayGoBeyond(roles: readonly Role[]): boolean {
  return isAllowed(roles, 'counter.return_beyond');
}
