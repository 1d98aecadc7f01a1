import 'server-only';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { loadJobToMove } from '@/lib/studio/reads/moving';
import { outside, type PartHere } from '@/lib/studio/rules';
import type { PartsRefusal } from '@/lib/studio/rules/parts/words';

/** Parts that stand at one position. */
export type PartsAt = { fromPosition: number; partIds: string[] };

/**
 * The chosen parts of a job, where they stand.
 *
 * @returns refuses, in this order: no such job, nothing chosen, a part that is not in its drawing,
 *   one that was lost, one that is in a kiln that was lit
 */
export async function loadChosen(
  tx: Tx,
  { jobId, partIds }: { jobId: string; partIds: readonly string[] },
): Promise<Result<PartHere[], PartsRefusal>> {
  const job = await loadJobToMove(tx, { id: jobId });
  if (!job) return refuse({ code: 'no_such_job' });
  if (partIds.length === 0) return refuse({ code: 'nothing_chosen' });
  const byId = new Map(job.parts.map((part) => [part.id, part]));
  const chosen = partIds.flatMap((id) => byId.get(id) ?? []);
  if (chosen.length < partIds.length) return refuse({ code: 'no_such_part' });
  const lost = chosen.find(({ position }) => position === outside);
  if (lost) return refuse({ code: 'part_lost', number: lost.number });
  const burning = await firstInKiln(tx, chosen);
  return burning === null ? ok(chosen) : refuse({ code: 'part_in_kiln', number: burning });
}

async function firstInKiln(tx: Tx, parts: readonly PartHere[]): Promise<number | null> {
  const found = await tx.firingLinePart.findFirst({
    where: {
      partId: { in: parts.map(({ id }) => id) },
      line: { firing: { lit: { isNot: null }, opened: { is: null } } },
    },
    select: { part: { select: { number: true } } },
    orderBy: { part: { number: 'asc' } },
  });
  return found?.part.number ?? null;
}

/** Parts by where they stand, those nearest to the end of the route first. */
export function byPosition(parts: readonly PartHere[]): PartsAt[] {
  const positions = [...new Set(parts.map(({ position }) => position))].toSorted((a, b) => b - a);
  return positions.map((fromPosition) => ({
    fromPosition,
    partIds: parts.flatMap((part) => (part.position === fromPosition ? [part.id] : [])),
  }));
}
