import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { accounts, type PostingLine } from '@/lib/ledger/rules';
import { addUp } from '@/lib/ledger/rules/sale-entry';
import { formatCents, sumCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Notes and coins of the United States, by what each is worth in cents, the largest first. */
export const notesAndCoins = [
  { cents: 10_000, name: '$100 notes' },
  { cents: 5_000, name: '$50 notes' },
  { cents: 2_000, name: '$20 notes' },
  { cents: 1_000, name: '$10 notes' },
  { cents: 500, name: '$5 notes' },
  { cents: 200, name: '$2 notes' },
  { cents: 100, name: '$1 notes and coins' },
  { cents: 50, name: '50¢ coins' },
  { cents: 25, name: '25¢ coins' },
  { cents: 10, name: '10¢ coins' },
  { cents: 5, name: '5¢ coins' },
  { cents: 1, name: '1¢ coins' },
] as const;

/** How many of each note and coin, by its worth in cents; what is left out is none. */
export type PiecesOfMoney = Readonly<Record<string, number>>;

/**
 * What notes and coins come to.
 *
 * @param pieces whole numbers of zero or more
 * @example countedCents({ '10000': 1, '25': 6 }) // 10_150n
 */
export function countedCents(pieces: PiecesOfMoney): Cents {
  return sumCents(
    notesAndCoins.map(({ cents }) => BigInt(cents) * BigInt(pieces[String(cents)] ?? 0)),
  );
}

/** A count as it is to be written down. */
export type CountAsked = {
  pieces: PiecesOfMoney;
  /** What the page said should be there, so that nobody counts against money they have not seen. */
  shownCents: Cents;
  floatCents: Cents;
  /** Why it differs; may be empty when it does not. */
  reason: string;
};

/** A count that was decided: what should have been there, what was, and where it goes. */
export type DecidedCount = {
  expectedCents: Cents;
  countedCents: Cents;
  differenceCents: Cents;
  floatCents: Cents;
  bankedCents: Cents;
  reason: string;
  postings: readonly PostingLine[];
};

/** Why a count or small cash was not written down. */
export type DrawerRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'card_number_typed' }
  | { code: 'drawer_moved'; shownCents: Cents; expectedCents: Cents }
  | { code: 'reason_missing'; differenceCents: Cents }
  | { code: 'float_above_count'; countedCents: Cents; floatCents: Cents }
  | { code: 'more_than_in_drawer'; inDrawerCents: Cents };

/**
 * Decides the count of the drawer: what is short or over, what stays, what goes to the bank.
 *
 * @param expectedCents what the books say is in the drawer
 * @returns the count with its postings (none when nothing moves); refuses, in this order: money
 *   came or went since the page was shown, a difference without a reason, more left than counted
 * @source common practice: over and short are written down, never put right
 * @example 569.90 should be there, 567.90 is: short 2.00; with 200.00 left, 367.90 goes to the bank
 */
export function decideCount(
  expectedCents: Cents,
  asked: CountAsked,
): Result<DecidedCount, DrawerRefusal> {
  const { shownCents, floatCents, reason } = asked;
  if (shownCents !== expectedCents) {
    return refuse({ code: 'drawer_moved', shownCents, expectedCents });
  }
  const counted = countedCents(asked.pieces);
  const differenceCents = counted - expectedCents;
  if (differenceCents !== 0n && reason === '') {
    return refuse({ code: 'reason_missing', differenceCents });
  }
  if (floatCents > counted) {
    return refuse({ code: 'float_above_count', countedCents: counted, floatCents });
  }
  const bankedCents = counted - floatCents;
  return ok({
    ...{ expectedCents, countedCents: counted, differenceCents, floatCents, bankedCents, reason },
    postings: countEntry(differenceCents, bankedCents),
  });
}

/**
 * The postings of a count: the difference, and what is carried to the bank.
 *
 * @example short 2.00 with 367.90 banked: drawer −369.90, differences +2.00, bank +367.90
 */
export function countEntry(differenceCents: Cents, bankedCents: Cents): PostingLine[] {
  return addUp([
    { account: accounts.cashDrawer, amountCents: differenceCents - bankedCents },
    { account: accounts.drawerDifferences, amountCents: -differenceCents },
    { account: accounts.bank, amountCents: bankedCents },
  ]);
}

/**
 * The postings of small cash: out of the drawer above zero, into it below.
 *
 * @example stamps for 18.50: small things +18.50, drawer −18.50
 */
export function pettyEntry(amountCents: Cents): PostingLine[] {
  return [
    { account: accounts.smallExpenses, amountCents },
    { account: accounts.cashDrawer, amountCents: -amountCents },
  ];
}

/** Says in a full sentence why a count or small cash was not written down. */
export function drawerRefusalMessage(refusal: DrawerRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'card_number_typed':
      return 'That looks like the number of a card, which is never kept. Write it without, please.';
    case 'drawer_moved':
      return (
        `Money came or went while you counted: ${formatCents(refusal.expectedCents)} should be ` +
        `there now, and it was ${formatCents(refusal.shownCents)} before. Nothing was written ` +
        'down. Load the page again and look once more at the count.'
      );
    case 'reason_missing':
      return `${differenceWords(refusal.differenceCents)}. Say what you think why, even if it is “not known”.`;
    case 'float_above_count':
      return `${formatCents(refusal.floatCents)} cannot stay: only ${formatCents(refusal.countedCents)} was counted.`;
    case 'more_than_in_drawer':
      return `By the books only ${formatCents(refusal.inDrawerCents)} is in the drawer.`;
  }
}

/** The sentence, and the field of its form at which it stands. */
export function drawerRefusalWords(refusal: DrawerRefusal): {
  message: string;
  fields: Record<string, string>;
} {
  const message = drawerRefusalMessage(refusal);
  const field = fields[refusal.code];
  return { message, fields: field === undefined ? {} : { [field]: message } };
}

const fields: Partial<Record<DrawerRefusal['code'], string>> = {
  reason_missing: 'reason',
  float_above_count: 'float',
  more_than_in_drawer: 'amount',
};

/**
 * How a count differs, in words: nothing is a count that agrees.
 *
 * @example differenceWords(-200n) // 'Short by $2.00'
 */
export function differenceWords(differenceCents: Cents): string {
  if (differenceCents === 0n) return 'It agrees to the cent';
  return differenceCents < 0n
    ? `Short by ${formatCents(-differenceCents)}`
    : `Over by ${formatCents(differenceCents)}`;
}
