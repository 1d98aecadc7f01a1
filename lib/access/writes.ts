import 'server-only';
import { recordAudit } from '@/lib/audit/writes';
import { db } from '@/lib/platform/db/client';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type {
  AddStaffInput,
  ChangeRolesInput,
  NewPasswordInput,
  OnePersonInput,
  OneSessionInput,
} from './input';
import { hashPassword } from './password-hash';
import { allow, type Doer } from './rules';
import { readPassword } from './rules/password';
import { decideChange, type StaffMember, type StaffRefusal } from './rules/staff';
import { endSessionsOf } from './writes/sessions';

type Done = Promise<Result<string, StaffRefusal>>;

/**
 * Takes someone on: from now on they can sign in.
 *
 * @returns the new person's id; refuses, in this order: not allowed, the password's refusals, a
 *   sign-in name that somebody has already
 */
export async function addStaff(doer: Doer, input: AddStaffInput): Done {
  const may = allow(doer.actor, 'staff.keep');
  if (!may.ok) return may;
  const { requestKey, name, signInName, roles } = input;
  const password = readPassword(input.password, [name, signInName]);
  if (!password.ok) return password;
  const passwordHash = await hashPassword(password.value);
  const asked = { name, signInName, roles };
  return onceOnly<string, StaffRefusal>(
    command(doer, 'addStaff', requestKey, asked),
    async (tx) => {
      const taken = await tx.staff.findUnique({ where: { signInName }, select: { id: true } });
      if (taken) return refuse({ code: 'sign_in_name_taken', signInName });
      const id = newId();
      await tx.staff.create({ data: { id, ...asked, passwordHash, createdAt: doer.at } });
      await note(tx, doer, { did: 'took someone on', id, facts: { name, roles } });
      return ok(id);
    },
  );
}

/**
 * Changes what someone is here; counts from their next request on.
 *
 * @returns refuses, in this order: not allowed, nobody of that id, the last owner
 */
export async function changeRoles(doer: Doer, input: ChangeRolesInput): Done {
  const { requestKey, staffId: id, roles } = input;
  return change(doer, { name: 'changeRoles', requestKey, asked: { id, roles } }, async (tx) => {
    const decided = decideChange(await everyone(tx), { id, roles });
    if (!decided.ok) return decided;
    await tx.staff.update({ where: { id }, data: { roles } });
    await note(tx, doer, { did: 'changed the part of', id, facts: { roles } });
    return ok(decided.value.name);
  });
}

/**
 * Stops someone's access; every browser they are signed in with is signed out at once.
 *
 * @returns refuses, in this order: not allowed, nobody of that id, the last owner
 */
export async function stopAccess(doer: Doer, input: OnePersonInput): Done {
  const { requestKey, staffId: id } = input;
  return change(doer, { name: 'stopAccess', requestKey, asked: { id } }, async (tx) => {
    const decided = decideChange(await everyone(tx), { id, active: false });
    if (!decided.ok) return decided;
    await tx.staff.update({ where: { id }, data: { active: false } });
    const ended = await endSessionsOf(tx, id, doer.at);
    await note(tx, doer, { did: 'stopped the access of', id, facts: { ended } });
    return ok(decided.value.name);
  });
}

/** Lets someone whose access was stopped come back, with the password they had. */
export async function letBackIn(doer: Doer, input: OnePersonInput): Done {
  const { requestKey, staffId: id } = input;
  return change(doer, { name: 'letBackIn', requestKey, asked: { id } }, async (tx) => {
    const decided = decideChange(await everyone(tx), { id, active: true });
    if (!decided.ok) return decided;
    await tx.staff.update({ where: { id }, data: { active: true } });
    await note(tx, doer, { did: 'let back in', id, facts: {} });
    return ok(decided.value.name);
  });
}

/**
 * Gives someone a new password and signs them out everywhere.
 *
 * @returns refuses, in this order: not allowed, nobody of that id, the password's refusals
 */
export async function giveNewPassword(doer: Doer, input: NewPasswordInput): Done {
  const may = allow(doer.actor, 'staff.keep');
  if (!may.ok) return may;
  const { requestKey, staffId: id } = input;
  const select = { name: true, signInName: true };
  const person = await db().staff.findUnique({ where: { id }, select });
  if (!person) return refuse({ code: 'unknown_person' });
  const password = readPassword(input.password, [person.name, person.signInName]);
  if (!password.ok) return password;
  const passwordHash = await hashPassword(password.value);
  return change(doer, { name: 'giveNewPassword', requestKey, asked: { id } }, async (tx) => {
    await tx.staff.update({ where: { id }, data: { passwordHash } });
    const ended = await endSessionsOf(tx, id, doer.at);
    await note(tx, doer, { did: 'gave a new password to', id, facts: { ended } });
    return ok(person.name);
  });
}

/**
 * Signs one browser out, whoever sits at it.
 *
 * @returns refuses, in this order: not allowed, a session that is unknown or has ended
 */
export async function endSession(doer: Doer, input: OneSessionInput): Done {
  const { requestKey, sessionId } = input;
  return change(doer, { name: 'endSession', requestKey, asked: { sessionId } }, async (tx) => {
    const session = await tx.staffSession.findUnique({
      where: { id: sessionId },
      select: { endedAt: true, staff: { select: { id: true, name: true } } },
    });
    if (!session || session.endedAt) return refuse({ code: 'session_unknown' });
    await tx.staffSession.update({ where: { id: sessionId }, data: { endedAt: doer.at } });
    const { id, name } = session.staff;
    await note(tx, doer, { did: 'signed out a browser of', id, facts: { sessionId } });
    return ok(name);
  });
}

type Change = { name: string; requestKey: string; asked: Record<string, unknown> };

async function change(
  doer: Doer,
  { name, requestKey, asked }: Change,
  work: (tx: Tx) => Promise<Result<string, StaffRefusal>>,
): Done {
  const may = allow(doer.actor, 'staff.keep');
  if (!may.ok) return may;
  return onceOnly<string, StaffRefusal>(command(doer, name, requestKey, asked), work);
}

/** A password never goes into what is remembered of a command. */
function command(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}

async function everyone(tx: Tx): Promise<StaffMember[]> {
  const select = { id: true, name: true, roles: true, active: true };
  return tx.staff.findMany({ select, orderBy: { id: 'asc' }, take: 1000 });
}

type Noted = {
  did: string;
  id: string;
  facts: Record<string, string | number | readonly string[]>;
};

async function note(tx: Tx, doer: Doer, { did, id, facts }: Noted): Promise<void> {
  await recordAudit(tx, doer, { did, subject: 'Staff', subjectId: id, facts });
}
