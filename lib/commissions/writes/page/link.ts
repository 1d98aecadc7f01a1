import 'server-only';
import { randomBytes } from 'node:crypto';
import type { Doer } from '@/lib/access/rules';
import type { MakeLinkInput, WithdrawLinkInput } from '@/lib/commissions/input/page/link';
import { tokenSha256 } from '@/lib/commissions/reads/page/open-link';
import { runsOutAt } from '@/lib/commissions/rules/page/link';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findForWriting,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import { newId } from '@/lib/platform/new-id';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A secret of 256 bits for an address, which nobody guesses. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** An address that was made; its secret is known only here, and null when it was made before. */
export type MadeLink = { linkId: string; commissionNumber: number; token: string | null };

/**
 * Makes an address that opens the collector's page. Whoever holds it sees what the commission
 * costs, so only those who see money make one.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown. Sent twice
 *   it makes one, and the second answer has no secret in it: that is kept nowhere
 */
export async function makeLink(
  doer: Doer,
  input: MakeLinkInput,
): Promise<Result<MadeLink, AnyRefusal>> {
  const { requestKey, ...wanted } = input;
  const [token, linkId] = [newToken(), newId()];
  const command = {
    name: 'makeLink',
    permission: 'commissions.take_money',
    key: requestKey,
    input: wanted,
  } as const;
  const made = await carryOut(doer, command, (tx) =>
    addLink(tx, doer, { ...wanted, token, linkId }),
  );
  if (!made.ok) return made;
  return ok({ ...made.value, token: made.value.linkId === linkId ? token : null });
}

/** The step of {@link makeLink}: joins the caller's transaction, asks nobody for leave. */
export async function addLink(
  tx: Tx,
  doer: Doer,
  link: Omit<MakeLinkInput, 'requestKey'> & { token: string; linkId: string },
): Promise<Result<{ linkId: string; commissionNumber: number }, CommissionRefusal>> {
  const { commissionId, forName, days, token, linkId } = link;
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  await tx.collectorLink.create({
    data: {
      ...{ id: linkId, commissionId, forName },
      tokenSha256: tokenSha256(token),
      madeById: doer.actor.id,
      madeAt: doer.at,
      runsOutAt: runsOutAt(doer.at, days),
    },
    select: { id: true },
  });
  const did = `opened their page to ${forName}`;
  await tellHistory(tx, doer, { commissionId, did, facts: { days } });
  return ok({ linkId, commissionNumber: found.value.number });
}

/**
 * Withdraws an address for good: from then on it opens nothing.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown commission,
 *   unknown address, withdrawn before
 */
export async function withdrawLink(
  doer: Doer,
  input: WithdrawLinkInput,
): Promise<Result<{ commissionNumber: number }, AnyRefusal>> {
  const { requestKey, ...which } = input;
  const command = {
    name: 'withdrawLink',
    permission: 'commissions.take_money',
    key: requestKey,
    input: which,
  } as const;
  return carryOut(doer, command, async (tx) => {
    const { commissionId, linkId } = which;
    const found = await findForWriting(tx, doer, commissionId);
    if (!found.ok) return found;
    const link = await tx.collectorLink.findFirst({
      where: { id: linkId, commissionId },
      select: { forName: true, withdrawnAt: true },
    });
    if (!link) return refuse({ code: 'unknown_link' });
    if (link.withdrawnAt) return refuse({ code: 'link_shut_already' });
    await tx.collectorLink.update({
      where: { id: linkId },
      data: { withdrawnAt: doer.at },
      select: { id: true },
    });
    const did = `withdrew the address of ${link.forName}`;
    await tellHistory(tx, doer, { commissionId, did, facts: {} });
    return ok({ commissionNumber: found.value.number });
  });
}
