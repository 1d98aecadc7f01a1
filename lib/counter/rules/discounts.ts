import { tradeDiscount } from '@/lib/collectors/rules/trade';
import { formatCents, shareCents, splitCents, sumCents, type Cents } from '@/lib/money/rules';
import type { LineDiscount } from '@/lib/sales/rules/pricing';
import { leftOf, mayBeDiscounted, taken, type Draft } from './drafts';
import type { CounterFacts } from './facts';
import type { SlipRefusal } from './refusals';
import type { SlipContent, SlipDiscount } from './slip';

/** A refusal, and the line that it is about; null when it is about the whole slip. */
export type Fault<Refusal> = { lineId: string | null; refusal: Refusal };

type Discounted = { drafts: Draft[]; faults: Fault<SlipRefusal>[] };

/**
 * Takes off what was agreed: first the trade price, then what is off single lines, then what is off
 * the slip, which is shared over its pieces so that nothing is lost. Each share of a hundred is of
 * what is left then, half a cent up.
 *
 * Staff may take off a share of a line, and all of theirs together the same share of the slip; what
 * the owner put on stands.
 *
 * @returns the drafts as they are then; a discount above the price takes nothing off and is a fault
 * @example 10 in 100 off 96.50 and 180.00, whole: 27.65, shared as 9.65 and 18.00
 */
export function takeOff(
  drafts: readonly Draft[],
  content: SlipContent,
  facts: CounterFacts,
): Discounted {
  const atTrade = tradePriced(drafts, content, facts);
  const byLine = offLines(atTrade, content);
  const whole = offSlip(byLine.drafts, content);
  const beyond = beyondLeave(atTrade, whole.drafts, facts);
  return { drafts: whole.drafts, faults: [...byLine.faults, ...whole.faults, ...beyond] };
}

function tradePriced(
  drafts: readonly Draft[],
  content: SlipContent,
  facts: CounterFacts,
): readonly Draft[] {
  const { collectorId, terms, on } = facts;
  if (!content.atTradePrice || collectorId === null) return drafts;
  const allowed = tradeDiscount(terms, { buyerId: collectorId, designerId: collectorId, on });
  if (!allowed.ok) return drafts;
  const how = { kind: 'trade', reason: `Trade price, ${allowed.value} in 100` } as const;
  return drafts.map((draft) => {
    if (draft.toPrice.kind !== 'piece' || draft.toPrice.orderId !== undefined) return draft;
    const amountCents = shareCents(leftOf(draft), allowed.value, 'half-up');
    return off(draft, { ...how, givenById: facts.askerId }, amountCents);
  });
}

function offLines(drafts: readonly Draft[], content: SlipContent): Discounted {
  return content.lines.reduce<Discounted>(
    (so, { id, discount }) => {
      if (!discount) return so;
      const isOn = (draft: Draft) => draft.lineId === id && mayBeDiscounted(draft);
      return shared(so, isOn, { kind: 'line', discount, lineId: id });
    },
    { drafts: [...drafts], faults: [] },
  );
}

function offSlip(drafts: readonly Draft[], content: SlipContent): Discounted {
  const so = { drafts: [...drafts], faults: [] };
  const { discount } = content;
  return discount ? shared(so, mayBeDiscounted, { kind: 'slip', discount, lineId: null }) : so;
}

type Off = { kind: 'line' | 'slip'; discount: SlipDiscount; lineId: string | null };

function shared(so: Discounted, isOn: (draft: Draft) => boolean, what: Off): Discounted {
  const touched = so.drafts.filter(isOn);
  const lefts = touched.map(leftOf);
  const leftCents = sumCents(lefts);
  const offCents = offOf(what.discount, leftCents);
  if (offCents > leftCents || leftCents <= 0n) {
    const title = touched.length === 1 ? (touched[0]?.toPrice.title ?? '') : 'the slip';
    const refusal = { code: 'discount_above_price', title, leftCents } as const;
    return { ...so, faults: [...so.faults, { lineId: what.lineId, refusal }] };
  }
  const parts = splitCents(offCents, lefts);
  const { reason, givenById } = what.discount;
  const drafts = so.drafts.map((draft) => {
    const amountCents = parts[touched.indexOf(draft)] ?? 0n;
    return off(draft, { kind: what.kind, reason, givenById }, amountCents);
  });
  return { ...so, drafts };
}

function offOf(discount: SlipDiscount, leftCents: Cents): Cents {
  return discount.way === 'amount'
    ? discount.cents
    : shareCents(leftCents, discount.percent, 'half-up');
}

function off(draft: Draft, how: Omit<LineDiscount, 'amountCents'>, amountCents: Cents): Draft {
  return { ...draft, discounts: [...draft.discounts, ...taken(how, amountCents)] };
}

function beyondLeave(
  before: readonly Draft[],
  after: readonly Draft[],
  facts: CounterFacts,
): Fault<SlipRefusal>[] {
  const mostPercent = facts.staffPercent;
  const most = (drafts: readonly Draft[]) =>
    shareCents(sumCents(drafts.map(leftOf)), mostPercent, 'half-up');
  const lineIds = [...new Set(after.map((draft) => draft.lineId))];
  const lines = lineIds.flatMap((lineId): Fault<SlipRefusal>[] => {
    const isOn = (draft: Draft) => draft.lineId === lineId;
    const mostCents = most(before.filter(isOn));
    const given = givenByStaff(after.filter(isOn), ['line'], facts);
    const refusal = { code: 'discount_beyond_leave', mostPercent, mostCents } as const;
    return given > mostCents ? [{ lineId, refusal }] : [];
  });
  const mostCents = most(before.filter(mayBeDiscounted));
  if (lines.length > 0 || givenByStaff(after, ['line', 'slip'], facts) <= mostCents) return lines;
  const refusal = { code: 'discount_beyond_leave', mostPercent, mostCents } as const;
  return [{ lineId: null, refusal }];
}

function givenByStaff(
  drafts: readonly Draft[],
  kinds: readonly string[],
  facts: CounterFacts,
): Cents {
  const discounts = drafts.flatMap((draft) => draft.discounts);
  const theirs = discounts.filter(
    ({ kind, givenById }) => kinds.includes(kind) && !facts.mayGoBeyond.has(givenById),
  );
  return sumCents(theirs.map((each) => each.amountCents));
}

/** A discount in words: `10 in 100 off: a scratch`. */
export function discountWords(discount: SlipDiscount): string {
  const much =
    discount.way === 'amount' ? formatCents(discount.cents) : `${discount.percent} in 100`;
  return `${much} off: ${discount.reason}`;
}
