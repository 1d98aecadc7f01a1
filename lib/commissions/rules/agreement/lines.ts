import { lineWords, type CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import { sumCents, type Cents } from '@/lib/money/rules';

/** So much more, or less, of one kind of line; cents before tax. */
export type MoreAsked = { readonly kind: CommissionLine['kind']; readonly priceCents: Cents };

/**
 * The lines of an agreement with its signed changes: each change goes to the line of its kind, and
 * what takes off beyond it comes off the others, so that no line stands below nothing. A line of
 * nothing is left out.
 *
 * @returns lines that come to the original and its changes, as long as that is not below nothing;
 *   then to nothing
 * @example a hanging of 600.00 less by 700.00: no line of it, and 100.00 off the work
 */
export function linesWith(
  original: readonly CommissionLine[],
  changes: readonly MoreAsked[],
): CommissionLine[] {
  return withoutDebts(changes.reduce(withChange, [...original]));
}

function withChange(lines: CommissionLine[], { kind, priceCents }: MoreAsked): CommissionLine[] {
  if (priceCents === 0n) return lines;
  const at = lines.findIndex((line) => line.kind === kind);
  if (at < 0) return [...lines, { kind, words: lineWords[kind], amountCents: priceCents }];
  return lines.map((line, place) =>
    place === at ? { ...line, amountCents: line.amountCents + priceCents } : line,
  );
}

function withoutDebts(lines: readonly CommissionLine[]): CommissionLine[] {
  let debt = sumCents(lines.map(({ amountCents }) => (amountCents < 0n ? amountCents : 0n)));
  const standing = lines.map((line) => {
    if (line.amountCents < 0n) return { ...line, amountCents: 0n };
    const taken = -debt < line.amountCents ? -debt : line.amountCents;
    debt += taken;
    return { ...line, amountCents: line.amountCents - taken };
  });
  const some = standing.filter(({ amountCents }) => amountCents > 0n);
  return some.length > 0 ? some : standing.slice(0, 1);
}
