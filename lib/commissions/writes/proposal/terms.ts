import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { KeepCommissionTermsInput } from '@/lib/commissions/input/proposal/keep-terms';
import { carryOut, type AnyRefusal } from '@/lib/commissions/writes/carry-out';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, type Result } from '@/lib/platform/result';

/**
 * Keeps how the gallery prices and agrees, and its paper: the next proposal begins with it, what
 * was written before stays as it was.
 *
 * @returns refuses, in this order: not allowed, a key used for something else
 */
export async function keepCommissionTerms(
  doer: Doer,
  input: KeepCommissionTermsInput,
): Promise<Result<true, AnyRefusal>> {
  const { requestKey, ...kept } = input;
  const command = {
    name: 'keepCommissionTerms',
    permission: 'settings.keep',
    key: requestKey,
    input: kept,
  } as const;
  return carryOut(doer, command, (tx) => addCommissionTerms(tx, doer, kept));
}

/** The step of {@link keepCommissionTerms}: joins the caller's transaction, asks nobody for leave. */
export async function addCommissionTerms(
  tx: Tx,
  doer: Doer,
  { paperSize, terms }: Omit<KeepCommissionTermsInput, 'requestKey'>,
): Promise<Result<true, never>> {
  const { basis, plan, ...rest } = terms;
  const data = { ...rest, basis: asText(basis), plan: plan.map((step) => asText(step)) };
  await tx.commissionTerms.update({ where: { id: 1 }, data, select: { id: true } });
  await tx.gallery.update({ where: { id: 1 }, data: { paperSize }, select: { id: true } });
  await recordAudit(tx, doer, {
    did: 'changed how commissions are priced and agreed',
    subject: 'Gallery',
    subjectId: '1',
    facts: { hourCents: basis.hourCents, validDays: rest.validDays, paperSize },
  });
  return ok(true as const);
}

/** Cents are kept as text: JSON has no whole numbers of their size. */
function asText(value: object): Prisma.InputJsonObject {
  const text = JSON.stringify(value, (_key, each: unknown) =>
    typeof each === 'bigint' ? each.toString() : each,
  );
  return JSON.parse(text) as Prisma.InputJsonObject;
}
