import type { Exposure, WallKind } from '@/lib/commissions/rules/words';

/** What is known of a request, as far as it matters before a price is named. */
export type AskedFacts = {
  readonly decides: string | null;
  readonly pays: string | null;
  readonly wallOwner: string | null;
  readonly exposure: Exposure | null;
  readonly freezes: boolean | null;
  readonly sun: string | null;
  readonly body: unknown;
  readonly wall: WallKind | null;
  readonly widthUm: number | null;
  readonly heightUm: number | null;
  readonly access: string | null;
  readonly wishedOn: string | null;
  readonly isDeadline: boolean | null;
  readonly budgetFromCents: bigint | null;
  readonly budgetToCents: bigint | null;
  readonly broughtPercent: string | null;
};

type Question = { readonly words: string; readonly isOpen: (facts: AskedFacts) => boolean };

const isOutside = ({ exposure }: AskedFacts) =>
  exposure === 'outdoors' || exposure === 'under_cover';

const questions: readonly Question[] = [
  { words: 'who decides', isOpen: (facts) => facts.decides === null },
  { words: 'who pays', isOpen: (facts) => facts.pays === null },
  { words: 'whose wall it is', isOpen: (facts) => facts.wallOwner === null },
  { words: 'indoors or outside', isOpen: (facts) => facts.exposure === null },
  { words: 'whether it freezes', isOpen: (facts) => isOutside(facts) && facts.freezes === null },
  { words: 'how much sun', isOpen: (facts) => isOutside(facts) && facts.sun === null },
  { words: 'which clay body', isOpen: (facts) => isOutside(facts) && !facts.body },
  { words: 'how large', isOpen: (facts) => facts.widthUm === null || facts.heightUm === null },
  { words: 'what the wall is made of', isOpen: (facts) => facts.wall === null },
  { words: 'how one gets in', isOpen: (facts) => facts.access === null },
  { words: 'by when', isOpen: (facts) => facts.wishedOn === null },
  {
    words: 'whether that day is a true deadline',
    isOpen: (facts) => facts.wishedOn !== null && facts.isDeadline === null,
  },
  {
    words: 'what they think of spending',
    isOpen: (facts) => facts.budgetFromCents === null && facts.budgetToCents === null,
  },
  { words: 'who brought them, and the fee', isOpen: (facts) => facts.broughtPercent === null },
];

/**
 * What matters before a price is named and is still to be asked, in the order in which one asks.
 *
 * Frost, sun and the clay body are asked only for a piece that lives outside.
 *
 * @source common practice: what an unasked question of these costs later
 * @example a request of nothing but a title has ten things open; a full one has none
 */
export function stillToAsk(facts: AskedFacts): string[] {
  return questions.filter(({ isOpen }) => isOpen(facts)).map(({ words }) => words);
}

/**
 * How many things are still to be asked, and which.
 *
 * @returns null when nothing is open
 * @example '2 things that matter are not known yet: who decides; by when. Ask when you next speak.'
 */
export function toAskSentence(open: readonly string[]): string | null {
  if (open.length === 0) return null;
  const many =
    open.length === 1 ? '1 thing that matters is' : `${open.length} things that matter are`;
  return `${many} not known yet: ${open.join('; ')}. Ask when you next speak.`;
}
