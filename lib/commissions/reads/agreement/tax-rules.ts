import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { usedRuleWords, type DatedTaxRule } from '@/lib/commissions/rules/agreement/tax-days';
import { taxWayWords, type CommissionTaxAs } from '@/lib/commissions/rules/agreement/tax';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { readCommissionTax, readTaxRules } from './tax';
import { readAgreedLines } from './total';

/** Every state with a place, and what is kept of it about commissions, the latest first. */
export async function listTaxRules(
  actor: Actor,
): Promise<{ state: string; rules: DatedTaxRule[] }[]> {
  assertAllowed(actor, 'tax.see');
  const places = await db().taxPlace.findMany({
    where: { state: { not: '' } },
    select: { state: true },
    distinct: ['state'],
    orderBy: { state: 'asc' },
    take: 60,
  });
  const rules = await readTaxRules(db(), {});
  return places.map(({ state }) => ({
    state,
    rules: rules.filter((each) => each.state === state),
  }));
}

/** How the tax looks at a commission: the choice, the rule that was used, and what to mind. */
export type TaxLooked = {
  taxAs: CommissionTaxAs;
  choice: string;
  used: string;
  cautions: readonly string[];
};

/**
 * How the tax looks at a commission today, by its agreement, or else by its newest proposal.
 *
 * @returns null before either
 */
export async function findTaxLooked(actor: Actor, commissionId: string): Promise<TaxLooked | null> {
  assertAllowed(actor, 'commissions.see_money');
  const from = db();
  const agreed =
    (await readAgreedLines(from, commissionId)) ?? (await proposed(from, commissionId));
  if (!agreed) return null;
  const gallery = await getGallery();
  const on = dayOf(now(), gallery.timeZone);
  const { taxPlaceId, taxAs } = agreed;
  const lines = agreed.lines.map(({ kind, amountCents: cents }) => ({ kind, cents }));
  const roundBy = gallery.roundTaxBy;
  const tax = await readCommissionTax(from, lines, { taxPlaceId, on, taxAs, roundBy });
  const { state, place } = tax.setting;
  return {
    taxAs,
    choice: `For the tax it is ${taxWayWords[taxAs]}, in ${place}.`,
    used: usedRuleWords(tax.rule, { taxAs, where: state === '' ? place : state }),
    cautions: tax.cautions,
  };
}

async function proposed(from: Prisma.TransactionClient, commissionId: string) {
  return from.proposal.findFirst({
    where: { commissionId },
    select: {
      ...{ taxPlaceId: true, taxAs: true },
      lines: { select: { kind: true, words: true, amountCents: true } },
    },
    orderBy: { version: 'desc' },
  });
}
