import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import {
  taxOfCommission,
  type CommissionTax,
  type CommissionTaxAs,
  type CommissionTaxAsked,
} from '@/lib/commissions/rules/agreement/tax';
import type { DatedTaxRule } from '@/lib/commissions/rules/agreement/tax-days';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import type { RoundBy } from '@/lib/tax/rules';
import { readTaxSetting } from '@/lib/tax/reads';
import type { TaxSetting } from '@/lib/tax/rules/treatment';

/** Where, when and as what a commission is taxed. */
export type TaxWhere = { taxPlaceId: string; on: Day; taxAs: CommissionTaxAs; roundBy: RoundBy };

const ruleSelect = {
  ...{ id: true, state: true, taxAs: true, treatment: true, owesOnMaterials: true },
  ...{ note: true, fromOn: true, untilOn: true },
} as const satisfies Prisma.CommissionTaxRuleSelect;

/** The rules that are kept and fit, the latest first within each way. */
export async function readTaxRules(
  from: Prisma.TransactionClient,
  where: Prisma.CommissionTaxRuleWhereInput,
): Promise<DatedTaxRule[]> {
  const rows = await from.commissionTaxRule.findMany({
    where,
    select: ruleSelect,
    orderBy: [{ taxAs: 'asc' }, { fromOn: 'desc' }],
    take: 500,
  });
  return rows.map(({ fromOn, untilOn, ...row }) => ({
    ...row,
    fromOn: dayFromDate(fromOn),
    untilOn: untilOn && dayFromDate(untilOn),
  }));
}

/** What a state says on a day about a commission as the tax looks at it; null for nothing kept. */
export async function readCommissionTaxRule(
  from: Prisma.TransactionClient,
  kept: { state: string; taxAs: CommissionTaxAs; on: Day },
): Promise<DatedTaxRule | null> {
  const day = dateFromDay(kept.on);
  const [rule] = await readTaxRules(from, {
    ...{ state: kept.state, taxAs: kept.taxAs, fromOn: { lte: day } },
    OR: [{ untilOn: null }, { untilOn: { gt: day } }],
  });
  return rule ?? null;
}

/** The tax of a commission's lines where and when it is handed over, with the place it was read from. */
export async function readCommissionTax(
  from: Prisma.TransactionClient,
  lines: CommissionTaxAsked['lines'],
  where: TaxWhere,
): Promise<CommissionTax & { setting: TaxSetting; rule: DatedTaxRule | null }> {
  const { taxPlaceId, on, taxAs, roundBy } = where;
  const setting = await readTaxSetting(from, { taxPlaceId, on });
  const rule = await readCommissionTaxRule(from, { state: setting.state, taxAs, on });
  return { ...taxOfCommission({ lines, setting, taxAs, rule, roundBy }), setting, rule };
}
