import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { livingId } from '@/lib/collectors/reads/group';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A command about what is kept back: its name and what the form said, with its key. */
export type KeepingCommand = { name: string; input: { requestKey: string } };

/**
 * Runs one command about holds and what was taken home to try: asks whether the doer may, then
 * does it once, in one transaction.
 */
export async function carryOut<Answer extends Prisma.InputJsonValue, Refusal>(
  doer: Doer,
  { name, input }: KeepingCommand,
  work: (tx: Tx) => Promise<Result<Answer, Refusal>>,
): Promise<Result<Answer, Refusal | NotAllowed | KeyRefusal>> {
  const allowed = allow(doer.actor, 'stock.hold');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  return onceOnly<Answer, Refusal>(
    { key, name, staffId: doer.actor.id, input: said, at: doer.at },
    work,
  );
}

/** For whom something is kept: the collector's own name and telephone, or what was written. */
export type NamedFor = { collectorId: string | null; forWhom: string; phone: string };

/**
 * The name as it stands on the slip; a collector's own where none was written.
 *
 * @returns refuses `unknown_collector`
 */
export async function nameWhom(
  tx: Tx,
  said: NamedFor,
): Promise<Result<NamedFor, { code: 'unknown_collector' }>> {
  const { forWhom, phone } = said;
  if (said.collectorId === null) return ok({ collectorId: null, forWhom, phone });
  const collectorId = await livingId(tx, said.collectorId);
  if (!collectorId) return refuse({ code: 'unknown_collector' });
  const collector = await tx.collector.findUniqueOrThrow({
    where: { id: collectorId },
    select: { name: true, phone: true },
  });
  const named = { forWhom: forWhom || collector.name, phone: phone || (collector.phone ?? '') };
  return ok({ collectorId, ...named });
}
