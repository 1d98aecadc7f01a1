import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import type { Actor } from '@/lib/access/rules';
import {
  addStaff,
  changeRoles,
  endSession,
  giveNewPassword,
  letBackIn,
  stopAccess,
} from '@/lib/access/writes';
import { constraintOf } from '@/lib/platform/db/errors';
import { db } from '@/lib/platform/db/client';
import { sql, startAfresh } from '../../helpers/database';
import { aPerson, by, done, openGallery, password, takeOn } from './people';

let owner: Actor;
const key = () => ({ requestKey: randomUUID() });

beforeEach(async () => {
  await startAfresh();
  owner = (await openGallery()).owner;
});

const refusedAs = (code: string) => ({ ok: false, refusal: { code } });

test('nobody but an owner keeps the list, whatever they send', async () => {
  const tomas = await takeOn(owner, 'tomas', ['gallery', 'maker', 'books']);
  const staffId = owner.id;
  const refusal = { code: 'not_allowed', permission: 'staff.keep' };
  const tries = [
    addStaff(by(tomas), aPerson('oriel', ['owner'])),
    changeRoles(by(tomas), { ...key(), staffId: tomas.id, roles: ['owner'] }),
    stopAccess(by(tomas), { ...key(), staffId }),
    letBackIn(by(tomas), { ...key(), staffId }),
    giveNewPassword(by(tomas), { ...key(), staffId, password }),
    endSession(by(tomas), { ...key(), sessionId: randomUUID() }),
  ];
  for (const answer of await Promise.all(tries)) expect(answer).toEqual({ ok: false, refusal });
  expect(await sql('select count(*)::int as people from "Staff"')).toEqual([{ people: 2 }]);
});

test('a password is kept as argon2id, with 19 MiB, two passes and one lane', async () => {
  await takeOn(owner, 'tomas', ['gallery']);
  const kept = await sql<{ passwordHash: string }>('select "passwordHash" from "Staff"');
  expect(kept).toHaveLength(2);
  for (const { passwordHash } of kept) {
    expect(passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  }
  expect(new Set(kept.map((each) => each.passwordHash)).size).toBe(2);
});

test('no password is kept anywhere else: not with the command, not in the audit', async () => {
  await takeOn(owner, 'tomas', ['gallery']);
  const everything = await sql<{ row: string }>(
    `select row_to_json(k)::text as row from "CommandKey" k
     union all select row_to_json(a)::text from "AuditLine" a`,
  );
  expect(everything.length).toBeGreaterThan(1);
  expect(everything.filter(({ row }) => row.includes(password))).toEqual([]);
});

test('two people cannot sign in by the same name', async () => {
  await takeOn(owner, 'tomas', ['gallery']);
  expect(await addStaff(by(owner), aPerson('tomas', ['maker']))).toEqual({
    ok: false,
    refusal: { code: 'sign_in_name_taken', signInName: 'tomas' },
  });
});

test('of two people taken on by the same name at once, one is told that it is taken', async () => {
  const answers = await Promise.all([
    addStaff(by(owner), aPerson('tomas', ['maker'])),
    addStaff(by(owner), aPerson('tomas', ['gallery'])),
  ]);
  expect(answers.map((answer) => (answer.ok ? 'ok' : answer.refusal.code)).toSorted()).toEqual([
    'ok',
    'sign_in_name_taken',
  ]);
});

test('the same form sent twice takes on one person', async () => {
  const person = aPerson('tomas', ['gallery']);
  const answers = await Promise.all([addStaff(by(owner), person), addStaff(by(owner), person)]);
  expect(done(answers[0])).toBe(done(answers[1]));
  expect(await sql('select count(*)::int as people from "Staff"')).toEqual([{ people: 2 }]);
});

test('the same key with another name in it is refused', async () => {
  const person = aPerson('tomas', ['gallery']);
  done(await addStaff(by(owner), person));
  expect(await addStaff(by(owner), { ...person, signInName: 'oriel' })).toEqual(
    refusedAs('key_used_for_something_else'),
  );
});

test('a common password and the name are refused before anything is written', async () => {
  const person = { ...aPerson('tomas', ['gallery']), password: 'Tomas Fennick 1' };
  expect(await addStaff(by(owner), person)).toEqual(refusedAs('password_is_the_name'));
  const change = { ...key(), staffId: owner.id, password: 'maren tidewell' };
  expect(await giveNewPassword(by(owner), change)).toEqual(refusedAs('password_is_the_name'));
});

test('the last owner stays an owner and keeps their access', async () => {
  const refusal = { code: 'last_owner', name: owner.name };
  const staffId = owner.id;
  expect(await changeRoles(by(owner), { ...key(), staffId, roles: ['maker'] })).toEqual({
    ok: false,
    refusal,
  });
  expect(await stopAccess(by(owner), { ...key(), staffId })).toEqual({ ok: false, refusal });
});

test('of two owners who stop each other at the same moment, one stays', async () => {
  const other = await takeOn(owner, 'tomas', ['owner']);
  const answers = await Promise.all([
    stopAccess(by(owner), { ...key(), staffId: other.id }),
    stopAccess(by(other), { ...key(), staffId: owner.id }),
  ]);
  expect(answers.map((answer) => (answer.ok ? 'ok' : answer.refusal.code)).toSorted()).toEqual([
    'last_owner',
    'ok',
  ]);
  const left = await sql('select count(*)::int as owners from "Staff" where active');
  expect(left).toEqual([{ owners: 1 }]);
});

test('someone who was stopped comes back with what they were', async () => {
  const tomas = await takeOn(owner, 'tomas', ['gallery']);
  done(await stopAccess(by(owner), { ...key(), staffId: tomas.id }));
  done(await letBackIn(by(owner), { ...key(), staffId: tomas.id }));
  const kept = await sql('select active, roles::text[] as roles from "Staff" where id = $1', [
    tomas.id,
  ]);
  expect(kept).toEqual([{ active: true, roles: ['gallery'] }]);
});

test('a stranger’s id changes nobody', async () => {
  const unknown = refusedAs('unknown_person');
  const staffId = randomUUID();
  expect(await stopAccess(by(owner), { ...key(), staffId })).toEqual(unknown);
  expect(await giveNewPassword(by(owner), { ...key(), staffId, password })).toEqual(unknown);
});

test.each([
  ['a password that is not hashed', { passwordHash: password }, 'password_is_argon2id'],
  ['a sign-in name with a capital', { signInName: 'Tomas' }, 'sign_in_name_is_lower_case'],
  ['nobody’s part', { roles: [] }, 'staff_has_a_role'],
])('the database itself refuses %s', async (_label, fields, name) => {
  const passwordHash = '$argon2id$v=19$m=19456,t=2,p=1$c2FsdHNhbHQ$aGFzaA';
  const person = { name: 'Tomas', signInName: 'tomas', passwordHash, roles: ['maker' as const] };
  const createdAt = by(owner).at;
  const write = db().staff.create({ data: { ...person, createdAt, ...fields } });
  const fault: unknown = await write.then(() => null).catch((error: unknown) => error);
  expect(constraintOf(fault)).toBe(name);
});
