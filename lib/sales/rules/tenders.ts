import type { PostingPapers, TenderKind } from '@/lib/ledger/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import type { SaleRefusal } from './refusals';

/** How the visitor pays: cash as it was laid on the counter, anything else to the cent. */
export type TenderOffered =
  | { kind: 'cash'; givenCents: Cents }
  | { kind: 'card' | 'cheque' | 'bank_transfer'; amountCents: Cents; reference: string };

/** A tender as it is kept. What is given back is `givenCents` less `amountCents`. */
export type Tender = {
  kind: TenderKind;
  amountCents: Cents;
  givenCents: Cents | null;
  /** The terminal's or the bank's own number; never a card's. */
  reference: string;
} & Pick<PostingPapers, 'creditId' | 'orderId' | 'layawayId'>;

/** The most that goes back over the counter: more is a slip of the finger or a scan gone astray. */
export const mostChangeCents: Cents = 100_000n;

/**
 * Sets what was offered against the total. Cash, which is counted last, fills up the rest.
 *
 * @returns the tenders, together the total; refuses, in this order: a card's number typed, other
 *   tenders above the total or below it without cash, too little cash, far too much cash
 * @example 5.00 by card and 20.00 in cash for 18.50: 13.50 of the cash is taken, 6.50 goes back
 */
export function settle(
  totalCents: Cents,
  offered: readonly TenderOffered[],
): Result<Tender[], SaleRefusal> {
  if (offered.some((each) => each.kind !== 'cash' && looksLikeCardNumber(each.reference))) {
    return refuse({ code: 'card_number_typed' });
  }
  const exact = offered.filter((each) => each.kind !== 'cash');
  const exactCents = sumCents(exact.map((each) => each.amountCents));
  const cash = offered.filter((each) => each.kind === 'cash');
  const givenCents = sumCents(cash.map((each) => each.givenCents));
  const dueCents = totalCents - exactCents;

  if (dueCents < 0n || (cash.length === 0) !== (dueCents === 0n)) {
    const paidCents = exactCents + givenCents;
    return refuse({ code: 'tenders_do_not_add_up', totalCents, paidCents });
  }
  if (givenCents < dueCents) return refuse({ code: 'not_enough_cash', dueCents, givenCents });

  if (givenCents > dueCents + mostChangeCents) {
    return refuse({ code: 'far_too_much_cash', dueCents, givenCents });
  }

  const kept: Tender[] = exact.map((each) => ({ ...each, givenCents: null }));
  if (cash.length > 0)
    kept.push({ kind: 'cash', amountCents: dueCents, givenCents, reference: '' });
  return ok(kept);
}

/** What goes back over the counter, in cents. */
export function changeCents(tenders: readonly Pick<Tender, 'amountCents' | 'givenCents'>[]): Cents {
  return sumCents(
    tenders.map((tender) =>
      tender.givenCents === null ? 0n : tender.givenCents - tender.amountCents,
    ),
  );
}
