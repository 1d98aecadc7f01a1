import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { CommissionTaxAs } from '@/lib/commissions/rules/agreement/tax';
import type { SignedWhere } from '@/lib/commissions/rules/agreement/paper';
import type { CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import type { PlanStep } from '@/lib/commissions/rules/proposal/plan';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';

/** A signature as papers and pages show it. */
export type SignatureShown = {
  name: string;
  capacity: string;
  kind: 'typed' | 'drawn' | 'on_paper';
  fileId: string | null;
  at: Date;
  isOnTheirPage: boolean;
};

/** The agreement of a commission, word for word as it was signed. */
export type AgreementShown = {
  id: string;
  priceCents: Cents;
  depositCents: Cents;
  agreedOn: Day;
  agreedBy: string;
  promisedOn: Day | null;
  body: string;
  contentSha256: string;
  signedWhere: SignedWhere | null;
  cancelNotice: boolean;
  clayFromOn: Day | null;
  taxAs: CommissionTaxAs;
  taxPlace: string;
  designFeeCents: Cents;
  lines: readonly CommissionLine[];
  steps: readonly PlanStep[];
  signature: SignatureShown | null;
};

/** The columns of {@link SignatureShown}. */
export const signatureSelect = {
  name: true,
  capacity: true,
  kind: true,
  fileId: true,
  at: true,
  linkId: true,
} as const satisfies Prisma.SignatureSelect;

type SignatureRow = Prisma.SignatureGetPayload<{ select: typeof signatureSelect }>;

/** A row as it is shown. */
export function signatureOf(row: SignatureRow): SignatureShown {
  const { name, capacity, kind, fileId, at, linkId } = row;
  return { name, capacity, kind, fileId, at, isOnTheirPage: linkId !== null };
}

/**
 * The agreement of a commission for whoever may see it: the pages ask for leave before, the
 * collector's own page by its link.
 *
 * @returns null before it is agreed
 */
export async function agreementForCollector(
  commissionId: string,
  from: Prisma.TransactionClient = db(),
): Promise<AgreementShown | null> {
  const row = await from.agreement.findFirst({
    where: { commissionId },
    select: {
      ...{ id: true, priceCents: true, depositCents: true, agreedOn: true, agreedBy: true },
      ...{ promisedOn: true, body: true, contentSha256: true, signedWhere: true, taxAs: true },
      ...{ cancelNotice: true, clayFromOn: true, designFeeCents: true },
      taxPlace: { select: { name: true } },
      lines: {
        select: { kind: true, words: true, amountCents: true },
        orderBy: { position: 'asc' },
      },
      steps: {
        select: { position: true, name: true, event: true, percent: true, amountCents: true },
        orderBy: { position: 'asc' },
      },
      signature: { select: signatureSelect },
    },
    orderBy: { version: 'desc' },
  });
  if (!row) return null;
  return {
    ...row,
    agreedOn: dayFromDate(row.agreedOn),
    promisedOn: row.promisedOn && dayFromDate(row.promisedOn),
    clayFromOn: row.clayFromOn && dayFromDate(row.clayFromOn),
    taxPlace: row.taxPlace.name,
    steps: row.steps.map((step) => ({ ...step, percent: step.percent?.toString() ?? null })),
    signature: row.signature && signatureOf(row.signature),
  };
}

/** A change order: open until it is signed or withdrawn. */
export type ChangeOrderShown = {
  id: string;
  number: number;
  words: string;
  why: string;
  askedBy: string;
  kind: CommissionLine['kind'];
  priceCents: Cents;
  dueEvent: PlanStep['event'] | null;
  promisedBefore: Day | null;
  promisedAfter: Day | null;
  offeredOn: Day;
  body: string;
  contentSha256: string;
  signed: (SignatureShown & { on: Day }) | null;
  withdrawnWhy: string | null;
};

/** Every change order of a commission in its order, for whoever may see it, as the agreement. */
export async function changeOrdersForCollector(
  commissionId: string,
  from: Prisma.TransactionClient = db(),
): Promise<ChangeOrderShown[]> {
  const rows = await from.changeOrder.findMany({
    where: { commissionId },
    select: {
      ...{ id: true, number: true, words: true, why: true, askedBy: true, priceCents: true },
      ...{ kind: true, dueEvent: true, promisedBefore: true, promisedAfter: true, offeredOn: true },
      ...{ body: true, contentSha256: true },
      signed: { select: { signedOn: true, signature: { select: signatureSelect } } },
      withdrawn: { select: { why: true } },
    },
    orderBy: { number: 'asc' },
    take: 200,
  });
  return rows.map(({ signed, withdrawn, ...row }) => ({
    ...row,
    promisedBefore: row.promisedBefore && dayFromDate(row.promisedBefore),
    promisedAfter: row.promisedAfter && dayFromDate(row.promisedAfter),
    offeredOn: dayFromDate(row.offeredOn),
    signed: signed && { ...signatureOf(signed.signature), on: dayFromDate(signed.signedOn) },
    withdrawnWhy: withdrawn?.why ?? null,
  }));
}
