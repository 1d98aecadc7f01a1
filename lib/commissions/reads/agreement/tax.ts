import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import {
  taxOfCommission,
  type CommissionTax,
  type CommissionTaxAs,
  type CommissionTaxAsked,
  type CommissionTaxRule,
} from '@/lib/commissions/rules/agreement/tax';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { RoundBy } from '@/lib/tax/rules';
import { readTaxSetting } from '@/lib/tax/reads';
import type { TaxSetting } from '@/lib/tax/rules/treatment';

/** Where, when and as what a commission is taxed. */
export type TaxWhere = { taxPlaceId: string; on: Day; taxAs: CommissionTaxAs; roundBy: RoundBy };

/** What a state says on a day about a commission that becomes part of a building; null for nothing kept. */
export async function readCommissionTaxRule(
  from: Prisma.TransactionClient,
  kept: { state: string; taxAs: CommissionTaxAs; on: Day },
): Promise<CommissionTaxRule | null> {
  const day = dateFromDay(kept.on);
  return from.commissionTaxRule.findFirst({
    where: {
      ...{ state: kept.state, taxAs: kept.taxAs, fromOn: { lte: day } },
      OR: [{ untilOn: null }, { untilOn: { gt: day } }],
    },
    select: { treatment: true, owesOnMaterials: true, note: true },
  });
}

/** The tax of a commission's lines where and when it is handed over, with the place it was read from. */
export async function readCommissionTax(
  from: Prisma.TransactionClient,
  lines: CommissionTaxAsked['lines'],
  where: TaxWhere,
): Promise<CommissionTax & { setting: TaxSetting }> {
  const { taxPlaceId, on, taxAs, roundBy } = where;
  const setting = await readTaxSetting(from, { taxPlaceId, on });
  const rule = await readCommissionTaxRule(from, { state: setting.state, taxAs, on });
  return { ...taxOfCommission({ lines, setting, taxAs, rule, roundBy }), setting };
}
