import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import type { AssemblyInput } from '@/lib/installation/input/assembly/assembly';
import { assembliesOf } from '@/lib/installation/reads/assembly/newest';
import { decideCuring, type AssemblyRefusal } from '@/lib/installation/rules/assembly/cure';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, type Result } from '@/lib/platform/result';

type Answer = { commissionNumber: number };

/**
 * Writes down that pieces were set on their board: with what, when, and until when it cures. It
 * stays as it was written; pieces that are set again are written down again, and cure anew.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, then as {@link decideCuring}
 */
export async function setPieces(
  doer: Doer,
  input: AssemblyInput,
): Promise<Result<Answer, AnyRefusal | AssemblyRefusal>> {
  const { requestKey, ...set } = input;
  const permission = 'installation.do';
  const command = { name: 'setPieces', permission, key: requestKey, input: set } as const;
  return carryOut<Answer, AssemblyRefusal>(doer, command, (tx) => addAssembly(tx, doer, set));
}

/** The step of {@link setPieces}: joins the caller's transaction, asks nobody for leave. */
export async function addAssembly(
  tx: Tx,
  doer: Doer,
  typed: Omit<AssemblyInput, 'requestKey'>,
): Promise<Result<Answer, CommissionRefusal | AssemblyRefusal>> {
  const { set, commissionId, ...said } = typed;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const { gallery, number } = found.value;
  const [last] = await assembliesOf(commissionId, tx);
  const how = { zone: gallery.timeZone, now: doer.at, last: last?.finishedAt ?? null };
  const decided = decideCuring(set, how);
  if (!decided.ok) return decided;
  await tx.assembly.create({
    data: { commissionId, ...said, ...decided.value, staffId: doer.actor.id, at: doer.at },
    select: { id: true },
  });
  await tellHistory(tx, doer, {
    ...{ commissionId, did: 'set its pieces on the board' },
    facts: {
      ...{ board: said.board, adhesive: said.adhesive, lot: said.lot },
      curesAt: decided.value.curesAt.toISOString(),
    },
  });
  return ok({ commissionNumber: number });
}
