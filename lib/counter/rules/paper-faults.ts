import { sumCents } from '@/lib/money/rules';
import type { SaleRefusal } from '@/lib/sales/rules/refusals';
import { tradeDiscount } from '@/lib/collectors/rules/trade';
import type { Fault } from './discounts';
import type { CounterFacts } from './facts';
import type { SlipRefusal } from './refusals';
import type { SlipContent, SlipLine } from './slip';

/**
 * What stands in the way of the names and papers of a slip.
 *
 * @returns in this order: money for a paper that has ended or that owes less, two payments for
 *   commissions, a trade price or referral fee that nobody gets or both at once, a certificate that
 *   does not hold, a day of collecting that has passed
 */
export function paperFaults(
  content: SlipContent,
  facts: CounterFacts,
): Fault<SlipRefusal | SaleRefusal>[] {
  const whole = [
    ...onePayment(content),
    ...designerFaults(content, facts),
    ...certificateFault(content, facts),
    ...collectFault(content, facts),
  ];
  return [
    ...content.lines.flatMap((line) => paperFault(line, content, facts)),
    ...whole.map((refusal) => ({ lineId: null, refusal })),
  ];
}

type LayawayPayment = Extract<SlipLine, { kind: 'layaway_payment' }>;

function paperFault(
  line: SlipLine,
  content: SlipContent,
  facts: CounterFacts,
): Fault<SlipRefusal>[] {
  if (line.kind === 'layaway_payment') return layawayFault(line, content, facts);
  if (line.kind === 'instalment') {
    const known = facts.papers.commissions.has(line.commissionId);
    return known ? [] : [ended(line.id, 'That commission')];
  }
  const orderId = 'orderId' in line ? line.orderId : null;
  if (orderId === null) return [];
  const order = facts.papers.orders.get(orderId);
  return !order || order.hasEnded ? [ended(line.id, `Special order ${order?.number ?? ''}`)] : [];
}

function layawayFault(
  line: LayawayPayment,
  content: SlipContent,
  facts: CounterFacts,
): Fault<SlipRefusal>[] {
  const layaway = facts.papers.layaways.get(line.layawayId);
  if (!layaway || layaway.hasEnded) return [ended(line.id, `Layaway ${layaway?.number ?? ''}`)];
  const payments = content.lines.filter(
    (each): each is LayawayPayment =>
      each.kind === 'layaway_payment' && each.layawayId === line.layawayId,
  );
  const { leftCents, number } = layaway;
  const isAsked = sumCents(payments.map((each) => each.cents)) <= leftCents;
  if (isAsked || payments[0] !== line) return [];
  const refusal = { code: 'more_than_is_left', what: `layaway ${number}`, leftCents } as const;
  return [{ lineId: line.id, refusal }];
}

function ended(lineId: string, what: string): Fault<SlipRefusal> {
  return { lineId, refusal: { code: 'paper_has_ended', what: what.trim() } };
}

function onePayment(content: SlipContent): SlipRefusal[] {
  const payments = content.lines.filter((line) => line.kind === 'instalment');
  return payments.length > 1 ? [{ code: 'one_payment_a_slip' }] : [];
}

function designerFaults(content: SlipContent, facts: CounterFacts): SlipRefusal[] {
  const { atTradePrice, referredById } = content;
  const { collectorId, referrer, on } = facts;
  if (atTradePrice && referredById !== null) return [{ code: 'discount_or_fee_never_both' }];
  if (atTradePrice) {
    const buyer = { buyerId: collectorId, designerId: collectorId ?? '', on };
    return tradeDiscount(facts.terms, buyer).ok ? [] : [{ code: 'no_trade_price' }];
  }
  if (referredById === null) return [];
  if (!referrer) return [{ code: 'unknown_designer' }];
  const { id, name, terms } = referrer;
  if (id === collectorId) return [{ code: 'designer_is_the_buyer', name }];
  const holds = terms?.way === 'referral_fee' && terms.sinceOn <= on;
  return holds ? [] : [{ code: 'no_referral_terms', name }];
}

function certificateFault(content: SlipContent, facts: CounterFacts): SlipRefusal[] {
  const { certificate: standing } = facts;
  if (!content.forResale || standing.kind === 'good') return [];
  return [{ code: 'certificate_does_not_hold', standing }];
}

function collectFault({ collect }: SlipContent, { on }: CounterFacts): SlipRefusal[] {
  if (!collect || collect.untilOn >= on) return [];
  return [{ code: 'collect_day_has_passed', untilOn: collect.untilOn }];
}
