import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { namesOf } from '@/lib/studio/reads/firings/names';
import { standOf } from '@/lib/studio/reads/firings/firing';
import { isPlannedFiring } from '@/lib/studio/rules/firings/again';
import type { FiringToChange } from '@/lib/studio/rules/firings/planning';
import { firingKindOf, type FiringKind } from '@/lib/studio/rules/firings/schedule';

/** A firing, as far as a change of it asks. */
export type FiringHere = FiringToChange & {
  id: string;
  cone: string;
  kind: FiringKind;
  kilnId: string;
  kiln: string;
  litAt: Date | null;
};

/** A firing that somebody wants to change; null when there is none. */
export async function loadFiringToChange(
  tx: Tx,
  where: { id: string } | { lines: { some: { id: string } } },
): Promise<FiringHere | null> {
  const row = await tx.firing.findFirst({
    where,
    select: {
      ...{ id: true, number: true, cone: true, peg: true, kilnId: true, calledOffAt: true },
      kiln: { select: { name: true } },
      lit: { select: { staffId: true, at: true } },
      opened: { select: { staffId: true } },
    },
  });
  if (!row) return null;
  const staffId = row.opened?.staffId ?? row.lit?.staffId;
  const names = await namesOf(tx, staffId === undefined ? [] : [staffId]);
  const { id, number, cone, kilnId } = row;
  return {
    ...{ id, number, cone, kilnId, kiln: row.kiln.name, kind: firingKindOf(row.peg) },
    ...{ stand: standOf(row), litAt: row.lit?.at ?? null },
    by: (staffId === undefined ? undefined : names.get(staffId)) ?? 'Somebody',
  };
}

/** Keeps whether a firing counts as planned, by what lies in it now. */
export async function countAsPlanned(tx: Tx, firingId: string): Promise<void> {
  const lines = await tx.firingLine.findMany({
    where: { firingId },
    select: { isAgain: true },
  });
  await tx.firing.update({
    where: { id: firingId },
    data: { isPlanned: isPlannedFiring(lines) },
  });
}

/** A command of the log, by its name. */
export function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
