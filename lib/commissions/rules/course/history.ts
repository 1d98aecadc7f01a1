import { formatCents, type Currency } from '@/lib/money/rules';
import { stopped } from '@/lib/commissions/rules/agreement/words';
import { approvalWayWords, approvalWays } from '@/lib/commissions/rules/words';

/** One thing that happened, as it was written down. */
export type HistoryFact = {
  readonly who: string;
  /** Reads on after the name: "took a payment". */
  readonly did: string;
  readonly facts: Readonly<Record<string, unknown>>;
};

/**
 * One line of a commission's history, as one would tell it.
 *
 * @param seesMoney whether amounts may be named to whoever reads it
 * @example 'Ines Vale wrote down the yes to sketch A: Marit Oland, on a signed card.'
 */
export function historySentence(
  line: HistoryFact,
  { seesMoney, currency }: { seesMoney: boolean; currency: Currency },
): string {
  const { facts } = line;
  const details = [
    text(facts['name']),
    seesMoney ? money(facts['amountCents'] ?? facts['priceCents'], currency) : null,
    text(facts['approvedBy'] ?? facts['agreedBy'] ?? facts['paidBy'] ?? facts['signedBy']),
    way(facts['how']),
    text(facts['why']),
  ].filter((detail) => detail !== null);
  const told = details.length === 0 ? '' : `: ${details.join(', ')}`;
  return stopped(`${line.who} ${line.did}${told}`);
}

/** What was done that ends in a name, and how it is said without one. */
const namesSomebody = [
  ['wrote to ', 'wrote to them'],
  ['opened their page to ', 'opened their page'],
  ['withdrew the address of ', 'withdrew an address of their page'],
] as const;

/**
 * What happened, without anybody's name: for the commissions of one who asked to be struck out. What
 * was done and for how much stays, as the books must tell it.
 *
 * @example { did: 'wrote to Marit Oland' } // 'wrote to them'
 */
export function withoutNames({ who, did, facts }: HistoryFact): HistoryFact {
  const kept = ['amountCents', 'priceCents', 'how'].filter((name) => name in facts);
  return {
    who,
    did: namesSomebody.find(([begins]) => did.startsWith(begins))?.[1] ?? did,
    facts: Object.fromEntries(kept.map((name) => [name, facts[name]])),
  };
}

/** What somebody typed, without the stop at its end: more may follow. */
function text(fact: unknown): string | null {
  return typeof fact === 'string' && fact !== '' ? fact.trim().replace(/\.$/, '') : null;
}

function money(fact: unknown, currency: Currency): string | null {
  if (typeof fact !== 'string' || !/^-?\d{1,15}$/.test(fact)) return null;
  return formatCents(BigInt(fact), { currency });
}

function way(fact: unknown): string | null {
  const known = approvalWays.find((each) => each === fact);
  return known ? approvalWayWords[known] : null;
}
