import 'server-only';
import { isAllowed, type Doer } from '@/lib/access/rules';
import { livingId } from '@/lib/collectors/reads/group';
import type { ReferralSaid } from '@/lib/commissions/input/enquiry/referral';
import {
  isSameReferral,
  referralWords,
  type ReferralFact,
} from '@/lib/commissions/rules/enquiry/referral';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { tellHistory } from '@/lib/commissions/writes/carry-out';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

type Brought = { id: string; name: string };

/** What is settled about a commission's referral by a form, or left as it is. */
export type ReferralToSettle = {
  commissionId: string;
  collectorId: string;
  said: ReferralSaid;
  /** Once it is agreed, only the owner settles it anew. */
  isAgreed: boolean;
};

/**
 * Settles who brought a collector, for how much, and whether the collector knows; joins the
 * caller's transaction. A form that does not ask for it leaves it as it was.
 *
 * @returns refuses, in this order: nobody like these letters, more than one, the collector
 *   themselves, settled before it was agreed
 * @example the same said again after the agreement is no change, and nobody is refused for it
 */
export async function settleReferral(
  tx: Tx,
  doer: Doer,
  settle: ReferralToSettle,
): Promise<Result<true, CommissionRefusal>> {
  const { commissionId, collectorId, said, isAgreed } = settle;
  if (said.asksReferral === null) return ok(true);
  const found = await findBrought(tx, said);
  if (!found.ok) return found;
  const by = found.value;
  if (by && by.id === (await livingId(tx, collectorId)))
    return refuse({ code: 'brought_by_themselves', name: by.name });
  const next = asSaid(by, said);
  if (isSameReferral(await settledOf(tx, commissionId), next)) return ok(true);
  if (isAgreed && !isAllowed(doer.actor.roles, 'trade.keep')) {
    return refuse({ code: 'referral_settled' });
  }
  const { broughtById, percent: broughtPercent, isKnown: broughtKnown } = next;
  await tx.commission.update({
    where: { id: commissionId },
    data: { broughtById, broughtPercent, broughtKnown },
    select: { id: true },
  });
  const facts = { why: referralWords(next) ?? 'left open' };
  await tellHistory(tx, doer, { commissionId, did: 'settled who brought them', facts });
  return ok(true);
}

function asSaid(by: Brought | null, said: ReferralSaid): ReferralFact {
  return {
    ...{ broughtById: by?.id ?? null, name: by?.name ?? null },
    ...{ percent: said.broughtPercent, isKnown: said.broughtKnown },
  };
}

async function settledOf(tx: Tx, commissionId: string): Promise<ReferralFact> {
  const row = await tx.commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: {
      broughtBy: { select: { id: true, name: true } },
      broughtPercent: true,
      broughtKnown: true,
    },
  });
  return {
    ...{ broughtById: row.broughtBy?.id ?? null, name: row.broughtBy?.name ?? null },
    ...{ percent: row.broughtPercent?.toString() ?? null, isKnown: row.broughtKnown },
  };
}

const namesMost = 4;

async function findBrought(
  tx: Tx,
  { broughtLetters: letters, broughtById }: ReferralSaid,
): Promise<Result<Brought | null, CommissionRefusal>> {
  if (letters === null) return ok(null);
  const shown = broughtById === null ? null : await nameOf(tx, broughtById);
  if (shown?.name === letters) return ok(shown);
  const found = await likeLetters(tx, letters);
  const exact = found.filter((each) => isSaidWhole(each, letters));
  const only = exact.length === 1 ? exact : found;
  const [first, second] = only;
  if (!first) return refuse({ code: 'brought_unknown', letters });
  if (!second) return ok({ id: first.id, name: first.name });
  const names = (exact.length > 1 ? exact : found).slice(0, namesMost).map(toldApart);
  return refuse({ code: 'brought_several', letters, names });
}

async function nameOf(tx: Tx, id: string): Promise<Brought | null> {
  const living = await livingId(tx, id);
  if (living === null) return null;
  return tx.collector.findUnique({ where: { id: living }, select: { id: true, name: true } });
}

type Like = Brought & { city: string | null; phone: string | null; email: string | null };

function likeLetters(tx: Tx, letters: string): Promise<Like[]> {
  const contains = { contains: letters, mode: 'insensitive' } as const;
  return tx.collector.findMany({
    where: {
      mergedIntoId: null,
      erasedAt: null,
      OR: [{ name: contains }, { firm: contains }, { email: contains }, { phone: contains }],
    },
    select: { id: true, name: true, city: true, phone: true, email: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: namesMost + 1,
  });
}

function isSaidWhole({ name, phone, email }: Like, letters: string): boolean {
  const said = letters.toLowerCase();
  return [name, phone, email].some((each) => each?.toLowerCase() === said);
}

function toldApart({ name, city, phone, email }: Like): string {
  const more = city ?? phone ?? email;
  return more === null ? name : `${name} (${more})`;
}
