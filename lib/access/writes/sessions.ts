import 'server-only';
import { recordAudit } from '@/lib/audit/writes';
import { db } from '@/lib/platform/db/client';
import { inTransaction, onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { OwnPasswordInput } from '../input';
import { hashPassword, isPasswordOf } from '../password-hash';
import { allow, type Doer, type NotAllowed } from '../rules';
import { readPassword } from '../rules/password';
import type { StaffRefusal } from '../rules/staff';

/** Ends every open session of a person; joins the caller's transaction. @returns how many */
export async function endSessionsOf(
  tx: Tx,
  staffId: string,
  at: Date,
  keepSessionId?: string,
): Promise<number> {
  const ended = await tx.staffSession.updateMany({
    where: { staffId, endedAt: null, ...(keepSessionId ? { id: { not: keepSessionId } } : {}) },
    data: { endedAt: at },
  });
  return ended.count;
}

/** Signs this browser out. Does nothing to a session that has ended already. */
export async function signOut(sessionId: string, at: Date): Promise<void> {
  await db().staffSession.updateMany({
    where: { id: sessionId, endedAt: null },
    data: { endedAt: at },
  });
}

/** Signs a person out of every browser, this one too. @returns how many there were */
export async function signOutEverywhere(doer: Doer): Promise<Result<number, NotAllowed>> {
  const may = allow(doer.actor, 'self.keep');
  if (!may.ok) return may;
  return inTransaction(async (tx) => {
    const ended = await endSessionsOf(tx, doer.actor.id, doer.at);
    const subjectId = doer.actor.id;
    const entry = { did: 'signed out everywhere', subject: 'Staff', subjectId, facts: { ended } };
    await recordAudit(tx, doer, entry);
    return ok(ended);
  });
}

/**
 * Changes one's own password; every other browser is signed out.
 *
 * @param sessionId the session that stays
 * @returns refuses, in this order: not allowed, the present password is another one, the new
 *   password's refusals
 */
export async function changeOwnPassword(
  doer: Doer,
  sessionId: string,
  input: OwnPasswordInput,
): Promise<Result<string, StaffRefusal>> {
  const may = allow(doer.actor, 'self.keep');
  if (!may.ok) return may;
  const { id } = doer.actor;
  const select = { name: true, signInName: true, passwordHash: true };
  const person = await db().staff.findUniqueOrThrow({ where: { id }, select });
  if (!(await isPasswordOf(input.currentPassword, person.passwordHash))) {
    return refuse({ code: 'own_password_wrong' });
  }
  const password = readPassword(input.password, [person.name, person.signInName]);
  if (!password.ok) return password;
  const passwordHash = await hashPassword(password.value);
  const { requestKey: key } = input;
  const command = { key, name: 'changeOwnPassword', staffId: id, input: { id }, at: doer.at };
  return onceOnly<string, StaffRefusal>(command, async (tx) => {
    await tx.staff.update({ where: { id }, data: { passwordHash } });
    const ended = await endSessionsOf(tx, id, doer.at, sessionId);
    const entry = {
      did: 'chose a new password',
      subject: 'Staff',
      subjectId: id,
      facts: { ended },
    };
    await recordAudit(tx, doer, entry);
    return ok(person.name);
  });
}
