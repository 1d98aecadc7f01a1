import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type {
  CloseKilnInput,
  KeepKilnInput,
  NoteCareInput,
  ReopenKilnInput,
  RetireKilnInput,
} from '@/lib/studio/input/kilns';
import { decideKiln, type KilnRefusal } from '@/lib/studio/rules/kilns/keeping';
import { todayOf } from '../jobs/keep-move';

type KilnResult<Value> = Promise<Result<Value, NotAllowed | KilnRefusal | KeyRefusal>>;

function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}

/**
 * Writes a kiln down, or changes what is known of one.
 *
 * @returns refuses, in this order: not allowed, no such kiln, then as {@link decideKiln}
 */
export async function keepKiln(doer: Doer, input: KeepKilnInput): KilnResult<{ id: string }> {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey, kilnId, ...kiln } = input;
  const command = commandOf(doer, 'keepKiln', requestKey, { kilnId, ...kiln });
  return onceOnly<{ id: string }, KilnRefusal>(command, async (tx) => {
    const before = kilnId === null ? null : await tx.kiln.findUnique({ where: { id: kilnId } });
    if (kilnId !== null && !before) return refuse({ code: 'no_such_kiln' });
    const namesake = await tx.kiln.findUnique({ where: { name: kiln.name } });
    const decided = decideKiln(kiln, namesake !== null && namesake.id !== kilnId);
    if (!decided.ok) return decided;
    const kept =
      kilnId === null
        ? await tx.kiln.create({ data: kiln, select: { id: true } })
        : await tx.kiln.update({ where: { id: kilnId }, data: kiln, select: { id: true } });
    await recordAudit(tx, doer, {
      did: before ? 'changed what is known of a kiln' : 'wrote a kiln down',
      ...{ subject: 'Kiln', subjectId: kept.id, facts: kiln },
    });
    return ok(kept);
  });
}

/**
 * Writes down what was changed or mended in a kiln, for good.
 *
 * @returns refuses, in this order: not allowed, no such kiln, a day that has not come, something
 *   else without a word of what
 */
export async function noteCare(doer: Doer, input: NoteCareInput): KilnResult<{ kilnId: string }> {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey, ...care } = input;
  const command = commandOf(doer, 'noteCare', requestKey, care);
  return onceOnly<{ kilnId: string }, KilnRefusal>(command, async (tx) => {
    const { kilnId, part, on, note } = care;
    if (!(await hasKiln(tx, kilnId))) return refuse({ code: 'no_such_kiln' });
    if (on > (await todayOf(tx, doer))) return refuse({ code: 'in_the_future' });
    if (part === 'other' && note === '') return refuse({ code: 'say_what_was_done' });
    await tx.kilnCare.create({
      data: {
        ...{ kilnId, part, on: dateFromDay(on), note, staffId: doer.actor.id, at: doer.at },
      },
    });
    const facts = { part, on, note };
    const did = 'wrote down what was done to a kiln';
    await recordAudit(tx, doer, { did, subject: 'Kiln', subjectId: kilnId, facts });
    return ok({ kilnId });
  });
}

async function hasKiln(tx: Tx, id: string): Promise<boolean> {
  return (await tx.kiln.findUnique({ where: { id }, select: { id: true } })) !== null;
}

/**
 * Writes down days on which a kiln stands still.
 *
 * @returns refuses, in this order: not allowed, no such kiln, a last day before the first
 */
export async function closeKiln(doer: Doer, input: CloseKilnInput): KilnResult<{ kilnId: string }> {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey, ...days } = input;
  const command = commandOf(doer, 'closeKiln', requestKey, days);
  return onceOnly<{ kilnId: string }, KilnRefusal>(command, async (tx) => {
    const { kilnId, fromOn, toOn, why } = days;
    if (!(await hasKiln(tx, kilnId))) return refuse({ code: 'no_such_kiln' });
    if (toOn < fromOn) return refuse({ code: 'days_backwards' });
    await tx.studioClosed.create({
      data: { kilnId, why, fromOn: dateFromDay(fromOn), toOn: dateFromDay(toOn) },
    });
    const facts = { fromOn, toOn, why };
    const did = 'wrote down days on which a kiln stands still';
    await recordAudit(tx, doer, { did, subject: 'Kiln', subjectId: kilnId, facts });
    return ok({ kilnId });
  });
}

/** Takes days back on which a kiln was to stand still; refuses days that are not in the list. */
export async function reopenKiln(
  doer: Doer,
  input: ReopenKilnInput,
): KilnResult<{ kilnId: string }> {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey, closedId } = input;
  const command = commandOf(doer, 'reopenKiln', requestKey, { closedId });
  return onceOnly<{ kilnId: string }, KilnRefusal>(command, async (tx) => {
    const row = await tx.studioClosed.findUnique({ where: { id: closedId } });
    if (!row?.kilnId) return refuse({ code: 'no_such_days' });
    await tx.studioClosed.delete({ where: { id: closedId } });
    const facts = { fromOn: dayFromDate(row.fromOn), toOn: dayFromDate(row.toOn), why: row.why };
    const did = 'took back days on which a kiln was to stand still';
    await recordAudit(tx, doer, { did, subject: 'Kiln', subjectId: row.kilnId, facts });
    return ok({ kilnId: row.kilnId });
  });
}

/**
 * Puts a kiln out of use, or back into it. Its log stays.
 *
 * @returns refuses, in this order: not allowed, no such kiln, a kiln that burns
 */
export async function retireKiln(doer: Doer, input: RetireKilnInput): KilnResult<{ id: string }> {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const { requestKey, kilnId, isRetired } = input;
  const command = commandOf(doer, 'retireKiln', requestKey, { kilnId, isRetired });
  return onceOnly<{ id: string }, KilnRefusal>(command, async (tx) => {
    const kiln = await tx.kiln.findUnique({ where: { id: kilnId }, select: { name: true } });
    if (!kiln) return refuse({ code: 'no_such_kiln' });
    const burning = await tx.firing.findFirst({
      where: { kilnId, lit: { isNot: null }, opened: null },
      select: { number: true },
    });
    if (burning) return refuse({ code: 'still_burning', kiln: kiln.name, number: burning.number });
    const retiredOn = isRetired ? dateFromDay(await todayOf(tx, doer)) : null;
    await tx.kiln.update({ where: { id: kilnId }, data: { retiredOn } });
    const did = isRetired ? 'put a kiln out of use' : 'took a kiln into use again';
    const facts = { name: kiln.name };
    await recordAudit(tx, doer, { did, subject: 'Kiln', subjectId: kilnId, facts });
    return ok({ id: kilnId });
  });
}
