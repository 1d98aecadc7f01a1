import type { CountKept } from '@/lib/drawer/reads';
import type { DaySheet } from '@/lib/drawer/reads/day-sheet';
import { notesAndCoins, type PiecesOfMoney } from '@/lib/drawer/rules';
import { formatCents, type Cents } from '@/lib/money/rules';

type CountedSums = Pick<CountKept, 'expectedCents' | 'countedCents' | 'floatCents' | 'bankedCents'>;

/** The second half of the sheet: what was counted, what is short or over, where it went. */
export function foundLines(count: CountedSums): { words: string; cents: Cents }[] {
  const differenceCents = count.countedCents - count.expectedCents;
  const short = { words: 'Short', cents: -differenceCents };
  const over = { words: 'Over', cents: differenceCents };
  return [
    { words: 'Counted', cents: count.countedCents },
    ...(differenceCents === 0n ? [] : [differenceCents < 0n ? short : over]),
    { words: 'Left as float', cents: count.floatCents },
    { words: 'To the bank', cents: count.bankedCents },
  ];
}

/** The notes and coins that were there, the largest first. */
export function piecesCounted(
  pieces: PiecesOfMoney,
): { name: string; many: number; cents: Cents }[] {
  return notesAndCoins.flatMap(({ cents, name }) => {
    const many = pieces[String(cents)] ?? 0;
    return many === 0 ? [] : [{ name, many, cents: BigInt(cents) * BigInt(many) }];
  });
}

/** What the card terminal said beside what was taken by card, less what went back. */
export function cardWords({ count, money }: DaySheet): string {
  const ours = money.paid.card - money.refunded.card;
  if (count.cardTotalCents === null) {
    return `By card ${formatCents(ours)} was taken; the terminal’s total was not written down.`;
  }
  const terminal = formatCents(count.cardTotalCents);
  if (count.cardTotalCents === ours) return `The card terminal says ${terminal}, and so do we.`;
  return `The card terminal says ${terminal}, and we took ${formatCents(ours)} by card. Look through the slips.`;
}
