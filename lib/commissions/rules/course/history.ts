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
