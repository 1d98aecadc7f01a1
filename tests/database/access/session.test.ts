import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { openSession } from '@/lib/access/reads';
import { listStaff } from '@/lib/access/reads/staff';
import type { Actor } from '@/lib/access/rules';
import { changeRoles, endSession, giveNewPassword, stopAccess } from '@/lib/access/writes';
import { signIn } from '@/lib/access/writes/sign-in';
import { changeOwnPassword, signOut, signOutEverywhere } from '@/lib/access/writes/sessions';
import { sql, startAfresh } from '../../helpers/database';
import { by, done, later, openGallery, password, takeOn } from './people';

let owner: Actor;
let tomas: Actor;
const hours = (count: number) => count * 3600;
const key = () => ({ requestKey: randomUUID() });

beforeEach(async () => {
  await startAfresh();
  owner = (await openGallery()).owner;
  tomas = await takeOn(owner, 'tomas', ['gallery']);
});

async function arrive(name = 'tomas', typed = password, seconds = 0): Promise<string> {
  const door = { name, password: typed, address: '192.0.2.7', device: 'Safari on an iPad' };
  return done(await signIn(door, later(seconds))).sessionId;
}

const isOpen = async (sessionId: string, seconds = 1) =>
  (await openSession(sessionId, later(seconds))) !== null;

test('a session says who it is, as the database knows them now', async () => {
  const sessionId = await arrive();
  const roles = ['maker'] as const;
  done(await changeRoles(by(owner), { ...key(), staffId: tomas.id, roles: [...roles] }));
  expect(await openSession(sessionId, later(1))).toEqual({
    actor: { id: tomas.id, name: tomas.name, roles },
    sessionId,
  });
});

test('nobody comes in by a session that never was', async () => {
  expect(await isOpen(randomUUID())).toBe(false);
});

test('a session that was ended is shut at once, and only that one', async () => {
  const [here, there] = [await arrive(), await arrive()];
  await signOut(here, later(1));
  expect([await isOpen(here, 2), await isOpen(there, 2)]).toEqual([false, true]);
});

test('the owner ends a session; a second time there is nothing to end', async () => {
  const sessionId = await arrive();
  expect(await endSession(by(owner), { ...key(), sessionId })).toMatchObject({ ok: true });
  expect(await isOpen(sessionId)).toBe(false);
  expect(await endSession(by(owner), { ...key(), sessionId })).toEqual({
    ok: false,
    refusal: { code: 'session_unknown' },
  });
});

test('stopping someone’s access shuts every session they have', async () => {
  const sessions = [await arrive(), await arrive()];
  done(await stopAccess(by(owner), { ...key(), staffId: tomas.id }));
  expect(await Promise.all(sessions.map((each) => isOpen(each)))).toEqual([false, false]);
});

test('a new password from the owner shuts every session, and the old one opens nothing', async () => {
  const sessionId = await arrive();
  const input = { ...key(), staffId: tomas.id, password: 'heron at low water' };
  done(await giveNewPassword(by(owner), input));
  expect(await isOpen(sessionId)).toBe(false);
  await expect(arrive()).rejects.toThrow('name_and_password_differ');
  expect(await isOpen(await arrive('tomas', 'heron at low water'))).toBe(true);
});

test('one’s own new password keeps the browser it was chosen in', async () => {
  const [here, there] = [await arrive(), await arrive()];
  const input = { ...key(), currentPassword: password, password: 'heron at low water' };
  done(await changeOwnPassword(by(tomas), here, input));
  expect([await isOpen(here), await isOpen(there)]).toEqual([true, false]);
});

test('one’s own password changes only for whoever knows it, and not to a common one', async () => {
  const here = await arrive();
  const guess = { ...key(), currentPassword: 'guess guess!', password: 'aaaaaaaaaaaa' };
  expect(await changeOwnPassword(by(tomas), here, guess)).toEqual({
    ok: false,
    refusal: { code: 'own_password_wrong' },
  });
  const common = { ...key(), currentPassword: password, password: 'aaaaaaaaaaaa' };
  expect(await changeOwnPassword(by(tomas), here, common)).toEqual({
    ok: false,
    refusal: { code: 'password_too_common' },
  });
});

test('signing out everywhere ends one’s own sessions and nobody else’s', async () => {
  const sessions = [await arrive(), await arrive()];
  const owners = await arrive('maren');
  expect(await signOutEverywhere(by(tomas, 1))).toEqual({ ok: true, value: 2 });
  expect(await Promise.all(sessions.map((each) => isOpen(each, 2)))).toEqual([false, false]);
  expect(await isOpen(owners, 2)).toBe(true);
});

test('a browser that nobody used for twelve hours is signed out', async () => {
  const sessionId = await arrive();
  expect(await isOpen(sessionId, hours(12))).toBe(true);
  expect(await isOpen(sessionId, hours(24))).toBe(true);
  expect(await isOpen(sessionId, hours(36) + 1)).toBe(false);
});

test('after thirty days everyone signs in again, however often they were here', async () => {
  const sessionId = await arrive();
  for (let hour = 12; hour <= 30 * 24; hour += 12) {
    expect(await isOpen(sessionId, hours(hour))).toBe(true);
  }
  expect(await isOpen(sessionId, hours(30 * 24) + 1)).toBe(false);
});

test('a session’s last sight is written down at most every five minutes', async () => {
  const sessionId = await arrive();
  const seen = async () => {
    const rows = await sql<{ at: Date }>(
      'select "seenAt" as at from "StaffSession" where id = $1',
      [sessionId],
    );
    return rows[0]?.at;
  };
  await isOpen(sessionId, 300);
  expect(await seen()).toEqual(later(0));
  await isOpen(sessionId, 301);
  expect(await seen()).toEqual(later(301));
});

test('the owner’s list counts the browsers that are still signed in', async () => {
  await arrive();
  await signOut(await arrive(), later(1));
  const count = async (seconds: number) => {
    const people = await listStaff(owner, later(seconds));
    return people.find((person) => person.id === tomas.id)?.openSessions;
  };
  expect(await count(2)).toBe(1);
  expect(await count(hours(12) + 1)).toBe(0);
});
