import { formatDay, type Day } from '@/lib/dates/rules';
import { accountOfMoney, accounts, type MoneyKind, type PostingLine } from '@/lib/ledger/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What was left open when a sale was made, and what became of it since. */
export type SaleAccount = {
  /** Written down as owed at the sale. */
  onAccountCents: Cents;
  /** Taken off the debt because pieces came back. */
  takenOffCents: Cents;
  /** Received so far. */
  settledCents: Cents;
  soldOn: Day;
  collectorId: string | null;
};

/** Money that came for it. */
export type Settlement = {
  amountCents: Cents;
  kind: MoneyKind;
  reference: string;
  receivedOn: Day;
};

/** Why money for a sale on account was not taken. */
export type SettlementRefusal =
  | { code: 'unknown_sale' }
  | { code: 'nothing_owed' }
  | { code: 'more_than_owed'; owedCents: Cents; amountCents: Cents }
  | { code: 'before_the_sale'; soldOn: Day }
  | { code: 'not_yet'; today: Day }
  | { code: 'card_number_typed' };

/** What is still owed for a sale, in cents; never below nought. */
export function owedForSale(
  account: Pick<SaleAccount, 'onAccountCents' | 'takenOffCents' | 'settledCents'>,
): Cents {
  const owed = account.onAccountCents - account.takenOffCents - account.settledCents;
  return owed > 0n ? owed : 0n;
}

/**
 * Whether money may be taken for a sale that was left open.
 *
 * @returns what is owed after it; refuses, in this order: nothing is owed, more than is owed, a
 *   day before the sale, a day that has not come yet, a card's number typed as the reference
 * @example 100.00 owed and 100.01 received: refused, the cent belongs to somebody else
 */
export function decideSettlement(
  account: SaleAccount,
  settlement: Settlement,
  today: Day,
): Result<{ stillOwedCents: Cents }, SettlementRefusal> {
  const owedCents = owedForSale(account);
  const { amountCents, reference, receivedOn } = settlement;
  if (owedCents === 0n) return refuse({ code: 'nothing_owed' });
  if (amountCents > owedCents) return refuse({ code: 'more_than_owed', owedCents, amountCents });
  if (receivedOn < account.soldOn) {
    return refuse({ code: 'before_the_sale', soldOn: account.soldOn });
  }
  if (receivedOn > today) return refuse({ code: 'not_yet', today });
  if (looksLikeCardNumber(reference)) return refuse({ code: 'card_number_typed' });
  return ok({ stillOwedCents: owedCents - amountCents });
}

/**
 * The postings of money for a sale on account: the money is here, and so much less is owed.
 *
 * @source OpenStax, Principles of Accounting, volume 1, section 3.5 (a customer pays an account)
 * @example 240.00 by cheque: cheques +240.00, owed by collectors −240.00
 */
export function accountSettledEntry(
  settlement: Pick<Settlement, 'amountCents' | 'kind'>,
  collectorId: string | null,
): PostingLine[] {
  const { amountCents, kind } = settlement;
  const whose = collectorId === null ? {} : { collectorId };
  return [
    { account: accountOfMoney[kind], amountCents },
    { account: accounts.owedByCollectors, amountCents: -amountCents, ...whose },
  ];
}

/** Says in full sentences why money for a sale on account was not taken. */
export function settlementRefusalMessage(refusal: SettlementRefusal): string {
  switch (refusal.code) {
    case 'unknown_sale':
      return 'That sale is not in the books. Look for it once more among the receipts.';
    case 'nothing_owed':
      return 'Nothing is owed for it any more: it is paid in full.';
    case 'more_than_owed':
      return (
        `${formatCents(refusal.amountCents)} is more than the ${formatCents(refusal.owedCents)} ` +
        'that is owed for it. Write down what belongs to it here, and the rest where it belongs.'
      );
    case 'before_the_sale':
      return `It was sold on ${formatDay(refusal.soldOn, 'short')}; the money came on that day or later.`;
    case 'not_yet':
      return `That day has not come yet. Today is ${formatDay(refusal.today, 'short')}.`;
    case 'card_number_typed':
      return 'That looks like the number of a card, which is never kept. Write the slip number of the card terminal instead, or nothing.';
  }
}
