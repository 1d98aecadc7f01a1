import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readCommissionTax } from '@/lib/commissions/reads/agreement/tax';
import { linesWith, type MoreAsked } from '@/lib/commissions/rules/agreement/lines';
import type { CommissionTax } from '@/lib/commissions/rules/agreement/tax';
import type { CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import { lineWords } from '@/lib/commissions/rules/proposal/lines';
import type { Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { invariant } from '@/lib/platform/invariant';
import type { RoundBy } from '@/lib/tax/rules';
import type { TaxSetting } from '@/lib/tax/rules/treatment';

/** What a commission comes to: its lines with every signed change, their tax, and the whole. */
export type CommissionTotal = {
  lines: readonly CommissionLine[];
  priceCents: Cents;
  tax: CommissionTax & { setting: TaxSetting };
  totalCents: Cents;
};

/**
 * The lines that are agreed now: those of the agreement, and each kind with its signed changes. An
 * agreement without lines, as they were written before, is one line of work.
 *
 * @param signedUntil for what was agreed at an earlier instant: changes signed later are left out
 * @returns null while nothing is agreed
 */
export async function readAgreedLines(
  from: Prisma.TransactionClient,
  commissionId: string,
  signedUntil?: Date,
): Promise<{
  lines: CommissionLine[];
  taxPlaceId: string;
  taxAs: 'goods_hung' | 'fixture' | 'set_in_pieces';
} | null> {
  const agreement = await from.agreement.findFirst({
    where: { commissionId },
    select: {
      ...{ priceCents: true, taxPlaceId: true, taxAs: true },
      lines: {
        select: { kind: true, words: true, amountCents: true },
        orderBy: { position: 'asc' },
      },
    },
    orderBy: { version: 'desc' },
  });
  if (!agreement) return null;
  const { priceCents, taxPlaceId, taxAs } = agreement;
  const one = { kind: 'work', words: lineWords.work, amountCents: priceCents } as const;
  const original: CommissionLine[] = agreement.lines.length > 0 ? agreement.lines : [one];
  const changes = await from.changeOrder.findMany({
    where: { commissionId, signed: signedUntil ? { at: { lte: signedUntil } } : { isNot: null } },
    select: { kind: true, priceCents: true },
    orderBy: { number: 'asc' },
  });
  return { lines: linesWith(original, changes), taxPlaceId, taxAs };
}

/** At the rates of which day, with one more change or without, and as agreed at which instant. */
export type TotalAsked = { on: Day; roundBy: RoundBy; more?: MoreAsked; signedUntil?: Date };

/** The whole of a commission at the rates and treatments of a day; null while nothing is agreed. */
export async function readTotal(
  from: Prisma.TransactionClient,
  commissionId: string,
  { on, roundBy, more, signedUntil }: TotalAsked,
): Promise<CommissionTotal | null> {
  const agreed = await readAgreedLines(from, commissionId, signedUntil);
  if (!agreed) return null;
  const lines = more ? linesWith(agreed.lines, [more]) : agreed.lines;
  const { taxPlaceId, taxAs } = agreed;
  const asked = lines.map(({ kind, amountCents: cents }) => ({ kind, cents }));
  const tax = await readCommissionTax(from, asked, { taxPlaceId, on, taxAs, roundBy });
  const priceCents = sumCents(lines.map((line) => line.amountCents));
  return { lines, priceCents, tax, totalCents: priceCents + tax.taxCents };
}

/** What a commission would come to with one more change; in cents, tax included. */
export async function readCommissionTotal(
  from: Prisma.TransactionClient,
  found: { id: string; today: Day; gallery: { roundTaxBy: RoundBy } },
  more: MoreAsked,
): Promise<Cents> {
  const roundBy = found.gallery.roundTaxBy;
  const total = await readTotal(from, found.id, { on: found.today, roundBy, more });
  invariant(total, 'Only what is agreed is changed.');
  return total.totalCents;
}
