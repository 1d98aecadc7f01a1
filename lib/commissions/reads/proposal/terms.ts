import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { basisShape, planShape } from '@/lib/commissions/input/proposal/terms';
import {
  startingBasis,
  startingNotIncluded,
  startingPlan,
  startingTerms,
  type CommissionTerms,
} from '@/lib/commissions/rules/proposal/terms';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';

const nothingYet = z.union([z.strictObject({}), z.tuple([])]);

/**
 * How the gallery prices and agrees; what it has not written yet is the usual.
 *
 * @throws Error when the one row is missing, which the first migration writes
 */
export async function readCommissionTerms(
  from: Prisma.TransactionClient = db(),
): Promise<CommissionTerms> {
  const row = await from.commissionTerms.findUnique({ where: { id: 1 } });
  invariant(row, 'The terms of commissions are one row that is always there.');
  const isNew = nothingYet.safeParse(row.basis).success;
  return {
    basis: isNew ? startingBasis : basisShape.parse(row.basis),
    plan: nothingYet.safeParse(row.plan).success ? startingPlan : planShape.parse(row.plan),
    designFeePercent: row.designFeePercent.toString(),
    designFeeCredited: row.designFeeCredited,
    roundsIncluded: row.roundsIncluded,
    extraRoundCents: row.extraRoundCents,
    validDays: row.validDays,
    terms: isNew && row.terms === '' ? startingTerms : row.terms,
    notIncluded: isNew && row.notIncluded === '' ? startingNotIncluded : row.notIncluded,
    cancelMakingPercent: row.cancelMakingPercent.toString(),
    cancelFinishedPercent: row.cancelFinishedPercent.toString(),
    colourLimit: row.colourLimit.toString(),
    answerDays: row.answerDays,
  };
}
