import type { Day } from '@/lib/dates/rules';
import type { PostingPapers, TenderKind } from '@/lib/ledger/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import type { SaleRefusal } from './refusals';

/**
 * How the visitor pays: cash as it was laid on the counter, anything else to the cent. An amount
 * that is left open takes what is left; a voucher no more than is on it.
 */
export type TenderOffered =
  | { kind: 'cash'; givenCents: Cents | null }
  | { kind: 'card' | 'cheque' | 'bank_transfer'; amountCents: Cents | null; reference: string }
  | { kind: 'credit'; code: string; amountCents: Cents | null };

/** A voucher or store credit that somebody pays with, as it is at this moment. */
export type CreditOffered = {
  creditId: string;
  code: string;
  kind: 'voucher' | 'store_credit';
  balanceCents: Cents;
  /** The last day on which it holds; null when it does not run out. */
  expiresOn: Day | null;
};

/** The vouchers that were offered, by what was typed, and the day on which they are to hold. */
export type CreditsKnown = { on: Day; byTyped: ReadonlyMap<string, CreditOffered> };

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
 * @returns the tenders, together the total; refuses, in this order: a card's number typed, a voucher
 *   nobody knows, one that has run out or has less on it, other tenders above the total or below it
 *   without cash, too little cash, far too much cash
 * @example 5.00 by card and 20.00 in cash for 18.50: 13.50 of the cash is taken, 6.50 goes back
 */
export function settle(
  totalCents: Cents,
  offered: readonly TenderOffered[],
  credits: CreditsKnown | null = null,
): Result<Tender[], SaleRefusal> {
  if (offered.some((each) => 'reference' in each && looksLikeCardNumber(each.reference))) {
    return refuse({ code: 'card_number_typed' });
  }
  const cash = offered.filter((each) => each.kind === 'cash');
  const givenCents = sumCents(cash.map((each) => each.givenCents ?? 0n));
  const exact = exactTenders(totalCents - givenCents, totalCents, offered, credits);
  if (!exact.ok) return exact;
  const exactCents = sumCents(exact.value.map((each) => each.amountCents));
  const dueCents = totalCents - exactCents;
  const fillsUp = cash.some((each) => each.givenCents === null) && dueCents > givenCents;
  return withCash(exact.value, {
    ...{ totalCents, dueCents, exactCents },
    givenCents: fillsUp ? dueCents : givenCents,
    hasCash: fillsUp || cash.some((each) => each.givenCents !== null),
  });
}

type Counted = {
  totalCents: Cents;
  exactCents: Cents;
  dueCents: Cents;
  givenCents: Cents;
  hasCash: boolean;
};

function withCash(exact: readonly Tender[], counted: Counted): Result<Tender[], SaleRefusal> {
  const { totalCents, exactCents, dueCents, givenCents, hasCash } = counted;
  if (dueCents < 0n || hasCash !== dueCents > 0n) {
    const paidCents = exactCents + givenCents;
    return refuse({ code: 'tenders_do_not_add_up', totalCents, paidCents });
  }
  if (givenCents < dueCents) return refuse({ code: 'not_enough_cash', dueCents, givenCents });
  if (givenCents > dueCents + mostChangeCents) {
    return refuse({ code: 'far_too_much_cash', dueCents, givenCents });
  }
  const paid: Tender = { kind: 'cash', amountCents: dueCents, givenCents, reference: '' };
  return ok(hasCash ? [...exact, paid] : [...exact]);
}

/** Everything but cash, with open amounts filled in: vouchers first, then the first of the others. */
function exactTenders(
  besideCashCents: Cents,
  totalCents: Cents,
  offered: readonly TenderOffered[],
  credits: CreditsKnown | null,
): Result<Tender[], SaleRefusal> {
  const others = offered.filter((each) => each.kind !== 'cash');
  const said = sumCents(others.map((each) => each.amountCents ?? 0n));
  const vouchers = creditTenders(totalCents - said, others, credits);
  if (!vouchers.ok) return vouchers;
  const used = sumCents(vouchers.value.map((each) => each.amountCents));
  const saidOnThem = sumCents(
    others.map((each) => (each.kind === 'credit' ? (each.amountCents ?? 0n) : 0n)),
  );
  let leftCents = besideCashCents - said + saidOnThem - used;
  const exact = others.flatMap((each): Tender[] => {
    if (each.kind === 'credit') return [];
    const { kind, reference } = each;
    const amountCents = each.amountCents ?? leftCents;
    if (each.amountCents === null) leftCents = 0n;
    return amountCents > 0n ? [{ kind, amountCents, givenCents: null, reference }] : [];
  });
  return ok([...vouchers.value, ...exact]);
}

function creditTenders(
  openCents: Cents,
  others: readonly Exclude<TenderOffered, { kind: 'cash' }>[],
  credits: CreditsKnown | null,
): Result<Tender[], SaleRefusal> {
  const tenders: Tender[] = [];
  let leftCents = openCents;
  for (const each of others) {
    if (each.kind !== 'credit') continue;
    const credit = credits?.byTyped.get(each.code);
    if (!credit) return refuse({ code: 'unknown_voucher', typed: each.code });
    const { creditId, code, kind, expiresOn } = credit;
    if (credits && expiresOn !== null && expiresOn < credits.on) {
      return refuse({ code: 'voucher_ran_out', voucher: code, expiresOn });
    }
    const before = tenders.filter((tender) => tender.creditId === creditId);
    const onItCents = credit.balanceCents - sumCents(before.map((tender) => tender.amountCents));
    const amountCents = each.amountCents ?? lesser(onItCents, leftCents);
    if (amountCents > onItCents) {
      return refuse({ code: 'voucher_has_less', voucher: code, onItCents });
    }
    if (each.amountCents === null) leftCents -= amountCents;
    if (amountCents <= 0n) continue;
    tenders.push({ kind, amountCents, givenCents: null, reference: '', creditId });
  }
  return ok(tenders);
}

function lesser(one: Cents, other: Cents): Cents {
  return one < other ? one : other;
}

/** What goes back over the counter, in cents. */
export function changeCents(tenders: readonly Pick<Tender, 'amountCents' | 'givenCents'>[]): Cents {
  return sumCents(
    tenders.map((tender) =>
      tender.givenCents === null ? 0n : tender.givenCents - tender.amountCents,
    ),
  );
}
