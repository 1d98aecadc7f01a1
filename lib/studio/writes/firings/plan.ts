import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { newId } from '@/lib/platform/new-id';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { scheduleKept } from '@/lib/studio/input/firings';
import type { CallOffInput, KeepScheduleInput, PlanFiringInput } from '@/lib/studio/input/firings';
import { kilnColumns, readKilnFacts } from '@/lib/studio/reads/kilns/facts';
import { readAtKilns } from '@/lib/studio/reads/firings/waiting';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import { isPlannedFiring } from '@/lib/studio/rules/firings/again';
import { proposeLoad, type ProposedLine } from '@/lib/studio/rules/firings/load';
import {
  decidePlan,
  mayChangeLoad,
  type PlanRefusal,
  type ScheduleRefusal,
  type StandRefusal,
} from '@/lib/studio/rules/firings/planning';
import { startSchedule, type FiringKind } from '@/lib/studio/rules/firings/schedule';
import { coneNamed } from '@/lib/studio/rules/kilns/cones';
import { firingTime, type Firing } from '@/lib/studio/rules/kilns/firing';
import { commandOf, loadFiringToChange } from './to-change';

/** A firing that was planned, with how many pieces were laid in. */
export type PlannedFiring = { id: string; number: number; pieces: number };

/**
 * Plans a firing of a kiln to a cone, with the load that is proposed of what waits for it. It goes
 * as the last firing of that kind in that kiln went, or as such firings commonly begin.
 *
 * @returns refuses, in this order: not allowed, then as {@link decidePlan}, nothing that waits
 */
export async function planFiring(
  doer: Doer,
  input: PlanFiringInput,
): Promise<Result<PlannedFiring, NotAllowed | PlanRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...plan } = input;
  const command = commandOf(doer, 'planFiring', requestKey, plan);
  return onceOnly<PlannedFiring, PlanRefusal>(command, async (tx) => {
    const row = await tx.kiln.findUnique({ where: { id: plan.kilnId }, select: kilnColumns });
    const kiln = row && readKilnFacts(row);
    const cone = decidePlan(kiln && { ...kiln, isRetired: kiln.retiredOn !== null }, plan.cone);
    if (!cone.ok) return cone;
    const waiting = await readAtKilns(tx, { cone: cone.value, kind: plan.kind });
    const free = waiting.filter(({ pieces }) => pieces > 0);
    if (!kiln || free.length === 0) return refuse({ code: 'nothing_waits', cone: cone.value });
    const { roomAroundUm } = await getStudioSettings(tx);
    const lines = proposeLoad(kiln, free, roomAroundUm);
    const firing = await tx.firing.create({
      data: {
        ...{ kilnId: kiln.id, cone: cone.value, peg: plan.kind, isPlanned: isPlannedFiring(lines) },
        ...{ schedule: await scheduleToBegin(tx, kiln.id, cone.value, plan.kind) },
        ...{ plannedOn: dateFromDay(plan.plannedOn), madeById: doer.actor.id, at: doer.at },
      },
      select: { id: true, number: true },
    });
    await layIn(tx, firing.id, lines);
    const pieces = lines.reduce((sum, line) => sum + line.pieces, 0);
    const { number } = firing;
    const facts = { number, kiln: kiln.name, cone: cone.value, plannedOn: plan.plannedOn, pieces };
    const did = 'planned a firing';
    await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: firing.id, facts });
    return ok({ ...firing, pieces });
  });
}

/** As the last such firing of this kiln went, or else as such firings commonly begin. */
async function scheduleToBegin(
  tx: Tx,
  kilnId: string,
  cone: string,
  kind: FiringKind,
): Promise<Firing> {
  const last = await tx.firing.findFirst({
    where: { kilnId, cone, peg: kind, opened: { isNot: null } },
    select: { schedule: true },
    orderBy: { number: 'desc' },
  });
  if (last) return scheduleKept.parse(last.schedule);
  return startSchedule(kind, coneNamed(cone) ?? '6');
}

async function layIn(tx: Tx, firingId: string, lines: readonly ProposedLine[]): Promise<void> {
  const rows = lines.map(({ lying, partIds, ...line }) => ({
    row: { ...line, ...lying, id: newId(), firingId },
    partIds,
  }));
  await tx.firingLine.createMany({ data: rows.map(({ row }) => row) });
  const parts = rows.flatMap(({ row, partIds }) =>
    partIds.map((partId) => ({ lineId: row.id, partId })),
  );
  if (parts.length > 0) await tx.firingLinePart.createMany({ data: parts });
}

/**
 * Keeps how a firing is to go, its day and its note, until it is lit.
 *
 * @returns refuses, in this order: not allowed, no such firing, called off, lit, opened, then as
 *   {@link firingTime}
 */
export async function keepSchedule(
  doer: Doer,
  input: KeepScheduleInput,
): Promise<Result<{ number: number }, NotAllowed | ScheduleRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...kept } = input;
  const command = commandOf(doer, 'keepSchedule', requestKey, kept);
  return onceOnly<{ number: number }, ScheduleRefusal>(command, async (tx) => {
    const firing = await loadFiringToChange(tx, { id: kept.firingId });
    const mayBe = mayChangeLoad(firing);
    if (!mayBe.ok) return mayBe;
    const time = firingTime(kept.schedule);
    if (!time.ok) return time;
    const { firingId: id, schedule, plannedOn, note } = kept;
    const { number } = await tx.firing.update({
      where: { id },
      data: { schedule, plannedOn: dateFromDay(plannedOn), note },
      select: { number: true },
    });
    const facts = { number, plannedOn, peakC: time.value.peakC, minutes: time.value.totalMinutes };
    const did = 'changed how a firing is to go';
    await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: id, facts });
    return ok({ number });
  });
}

/**
 * Calls a firing off before it is lit. Its pieces are free for other loads again.
 *
 * @returns refuses, in this order: not allowed, no such firing, called off, lit, opened
 */
export async function callOffFiring(
  doer: Doer,
  input: CallOffInput,
): Promise<Result<{ number: number }, NotAllowed | StandRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, firingId: id } = input;
  const command = commandOf(doer, 'callOffFiring', requestKey, { firingId: id });
  return onceOnly<{ number: number }, StandRefusal>(command, async (tx) => {
    const firing = await loadFiringToChange(tx, { id });
    const mayBe = mayChangeLoad(firing);
    if (!mayBe.ok) return mayBe;
    const { number } = await tx.firing.update({
      where: { id },
      data: { calledOffAt: doer.at },
      select: { number: true },
    });
    const did = 'called a firing off';
    await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: id, facts: { number } });
    return ok({ number });
  });
}
