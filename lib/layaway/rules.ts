import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { splitCents, sumCents, type Cents } from '@/lib/money/rules';
import { invariant } from '@/lib/platform/invariant';
import { priceSlip, type LineToPrice, type PricedSlip } from '@/lib/sales/rules/pricing';
import type { RoundBy } from '@/lib/tax/rules';
import { taxableOf, type TaxSetting } from '@/lib/tax/rules/treatment';

/** One line of a layaway as it was agreed; the price stays, the tax is that of the day. */
export type AgreedLine = {
  skuId: string;
  designId: string;
  title: string;
  what: string;
  quantity: number;
  editionNumber: number | null;
  unitPriceCents: Cents;
  /** Taken off the whole line, why, and who allowed it. */
  discountCents: Cents;
  discountReason: string;
  givenById: string;
  unitCostCents: Cents | null;
  /** What one weighs, in grams; null when nobody weighed it. */
  weightG: number | null;
  /** The holds that keep it back, and end when it is handed over. */
  holdIds: readonly string[];
};

/**
 * Adds a layaway up at the tax of a place on a day.
 *
 * @source common practice: the agreed price stays, the tax is that of the day of the hand-over
 * @example a panel of 480.00 at 8 %: 480.00 and 38.40, 518.40 together
 */
export function priceLayaway(
  lines: readonly AgreedLine[],
  setting: TaxSetting,
  roundBy: RoundBy,
): PricedSlip & { exemptWhy: string } {
  const bare = lines.map(lineToPrice);
  const { perLine, exemptWhy } = taxableOf(
    lines.map((line) => ({
      cents: line.unitPriceCents * BigInt(line.quantity) - line.discountCents,
      kind: 'goods' as const,
      weightG: line.weightG === null ? null : line.weightG * line.quantity,
      isSeparate: true,
    })),
    setting,
    null,
  );
  const taxed = bare.map((line, at) => {
    const taxableCents = perLine[at]?.taxableCents ?? 0n;
    return { ...line, taxableCents, taxable: taxableCents > 0n };
  });
  return { ...priceSlip(taxed, setting.parts, roundBy), exemptWhy };
}

function lineToPrice(line: AgreedLine): LineToPrice {
  const { skuId, designId, title, what, quantity, unitPriceCents, unitCostCents } = line;
  const { discountCents, discountReason, givenById, editionNumber, holdIds } = line;
  const discount = {
    kind: 'slip' as const,
    ...{ reason: discountReason, amountCents: discountCents, givenById },
  };
  return {
    kind: 'piece',
    ...{ skuId, designId, title, what, quantity, unitPriceCents, unitCostCents },
    ...{ taxable: true, taxKind: 'goods', endsHoldIds: holdIds },
    discounts: discountCents > 0n ? [discount] : [],
    numbers: editionNumber === null ? [] : [editionNumber],
  };
}

/** How much is to be paid by when, in cents. */
export type Due = { dueOn: Day; amountCents: Cents };

/**
 * When how much of a layaway is to be paid: the down payment on the day itself, and the rest in
 * equal parts up to the last day.
 *
 * @param plan at least one payment after the down payment, and no more of them than days; the down
 *   payment is below the total
 * @returns dues of at least one cent each, together the total
 * @source common practice: three to six equal payments over 60 to 90 days
 * @example 100.00 with 25.00 down in two payments over 60 days: 25.00, then 37.50 twice
 */
export function scheduleOf(plan: {
  totalCents: Cents;
  downCents: Cents;
  payments: number;
  agreedOn: Day;
  finalOn: Day;
}): Due[] {
  const { totalCents, downCents, payments, agreedOn, finalOn } = plan;
  const days = daysBetween(agreedOn, finalOn);
  const restCents = totalCents - downCents;
  invariant(
    payments >= 1 && payments <= days && restCents >= BigInt(payments),
    'Every payment of a layaway has its day and its cent.',
  );
  const parts = splitCents(restCents, Array<bigint>(payments).fill(1n));
  const later = parts.map((amountCents, at) => ({
    dueOn: addDays(agreedOn, Math.floor((days * (at + 1)) / payments)),
    amountCents,
  }));
  return downCents > 0n ? [{ dueOn: agreedOn, amountCents: downCents }, ...later] : later;
}

/** What is known of the money of a layaway. */
export type MoneyFacts = {
  /** What it comes to today, with today's tax. */
  totalCents: Cents;
  /** What came in at the counter, less what went back. */
  paidCents: Cents;
  dues: readonly Due[];
  todayOn: Day;
};

/** Where the money of a layaway stands, in cents. */
export type LayawayMoney = {
  totalCents: Cents;
  paidCents: Cents;
  /** Still to be paid; never below nought. */
  remainingCents: Cents;
  /** Paid beyond what it comes to, because the tax went down. */
  tooMuchCents: Cents;
  /** What should have been paid by yesterday and was not. */
  lateCents: Cents;
  lateSinceOn: Day | null;
  /** What is asked for next, and by when. */
  next: Due | null;
};

/**
 * Where the money of a layaway stands: payments fill the dues in their order, however they come.
 * What the tax has added since belongs to the last due.
 *
 * @example 25.00, 37.50, 37.50 with 30.00 paid: 32.50 of the second is asked for next
 */
export function layawayMoney(facts: MoneyFacts): LayawayMoney {
  const { totalCents, paidCents, todayOn } = facts;
  const remainingCents = totalCents > paidCents ? totalCents - paidCents : 0n;
  const open = openDues(facts);
  const late = open.filter((due) => due.dueOn < todayOn);
  const lateCents = sumCents(late.map((due) => due.amountCents));
  const lateSinceOn = late[0]?.dueOn ?? null;
  return {
    ...{ totalCents, paidCents, remainingCents, lateCents, lateSinceOn },
    tooMuchCents: paidCents > totalCents ? paidCents - totalCents : 0n,
    next: lateSinceOn ? { dueOn: lateSinceOn, amountCents: lateCents } : (open[0] ?? null),
  };
}

/** What is left of each due after what was paid, those that are paid left out. */
function openDues({ totalCents, paidCents, dues }: MoneyFacts): Due[] {
  let leftCents = paidCents;
  let roomCents = totalCents;
  return dues.flatMap((due, at) => {
    const isLast = at === dues.length - 1;
    const asked = isLast ? roomCents : least(due.amountCents, roomCents);
    const covered = least(leftCents, asked);
    roomCents -= asked;
    leftCents -= covered;
    return asked > covered ? [{ dueOn: due.dueOn, amountCents: asked - covered }] : [];
  });
}

function least(one: Cents, other: Cents): Cents {
  return one < other ? one : other;
}

/** Where a layaway is. */
export type LayawayStanding = 'late' | 'running' | 'paid_off' | 'handed_over' | 'cancelled';

/**
 * Where a layaway is: late ones first need a call, paid-off ones are to be handed over.
 *
 * @example a day after its last day with a cent still open: `late`
 */
export function layawayStanding(
  layaway: { isEnded: boolean; isHandedOver: boolean },
  money: LayawayMoney,
): LayawayStanding {
  if (layaway.isHandedOver) return 'handed_over';
  if (layaway.isEnded) return 'cancelled';
  if (money.remainingCents === 0n) return 'paid_off';
  return money.lateCents > 0n ? 'late' : 'running';
}
