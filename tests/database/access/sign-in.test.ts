import { beforeEach, expect, test } from 'vitest';
import type { Actor } from '@/lib/access/rules';
import { stopAccess } from '@/lib/access/writes';
import { signIn } from '@/lib/access/writes/sign-in';
import { sql, startAfresh } from '../../helpers/database';
import { by, later, openGallery, password, takeOn } from './people';

let owner: Actor;

beforeEach(async () => {
  await startAfresh();
  owner = (await openGallery()).owner;
});

function knock(fields: Partial<Record<'name' | 'password' | 'address', string>>, seconds = 0) {
  const door = { name: 'maren', password, address: '192.0.2.7', device: 'Firefox on Linux' };
  return signIn({ ...door, ...fields }, later(seconds));
}

const differ = { ok: false, refusal: { code: 'name_and_password_differ' } };
const wait = (waitMs: number) => ({ ok: false, refusal: { code: 'wait_a_little', waitMs } });

test('the right name and password open a session, and that is written down', async () => {
  const entered = await knock({});
  expect(entered).toMatchObject({ ok: true, value: { staffId: owner.id } });
  const lines = await sql(`select did, facts->>'device' as device from "AuditLine" order by id`);
  expect(lines.at(-1)).toEqual({ did: 'signed in', device: 'Firefox on Linux' });
});

test('an unknown name, a wrong password and a stopped access are refused alike', async () => {
  const tomas = await takeOn(owner, 'tomas', ['gallery']);
  const requestKey = crypto.randomUUID();
  await stopAccess(by(owner), { requestKey, staffId: tomas.id });
  expect(await knock({ name: 'nobody' })).toEqual(differ);
  expect(await knock({ password: 'heron at low water' })).toEqual(differ);
  expect(await knock({ name: 'tomas' })).toEqual(differ);
});

test('an unknown name takes as long as a known one', async () => {
  const took = async (name: string, address: string) => {
    const begun = performance.now();
    for (let tries = 0; tries < 4; tries += 1) {
      await knock({ name, password: 'heron at low water', address });
    }
    return performance.now() - begun;
  };
  await took('warming', '192.0.2.1');
  const known = await took('maren', '192.0.2.2');
  const unknown = await took('nobody', '192.0.2.3');
  expect(unknown / known).toBeGreaterThan(0.4);
});

test('after five wrong tries even the right password has to wait, longer each time', async () => {
  for (let second = 0; second < 5; second += 1) {
    expect(await knock({ password: 'wrong wrong' }, second)).toEqual(differ);
  }
  expect(await knock({}, 5)).toEqual(wait(29_000));
  expect(await knock({}, 33.999)).toEqual(wait(1));
  expect(await knock({ password: 'wrong wrong' }, 34)).toEqual(differ);
  expect(await knock({}, 35)).toEqual(wait(59_000));
  expect(await knock({}, 94)).toMatchObject({ ok: true });
  expect(await knock({ password: 'wrong wrong' }, 95)).toEqual(differ);
  expect(await knock({}, 96)).toMatchObject({ ok: true });
});

test('a name that nobody has is slowed like any other', async () => {
  for (let second = 0; second < 5; second += 1) await knock({ name: 'nobody' }, second);
  expect(await knock({ name: 'nobody' }, 5)).toEqual(wait(29_000));
});

test('guessing one name does not lock another name at another address', async () => {
  await takeOn(owner, 'tomas', ['gallery']);
  for (let second = 0; second < 5; second += 1) await knock({ password: 'wrong wrong' }, second);
  expect(await knock({ name: 'tomas', address: '192.0.2.8' }, 5)).toMatchObject({ ok: true });
});

test('an address that tries twenty names has to wait, and a right one among them is no help', async () => {
  await takeOn(owner, 'tomas', ['gallery']);
  for (let second = 0; second < 20; second += 1) await knock({ name: `guess${second}` }, second);
  expect(await knock({ name: 'tomas' }, 20)).toEqual(wait(29_000));
  expect(await knock({ name: 'tomas' }, 49)).toMatchObject({ ok: true });
  expect(await knock({ name: 'guess99' }, 50)).toEqual(differ);
  expect(await knock({ name: 'tomas' }, 51)).toEqual(wait(59_000));
});

test('thirty guesses at the same moment are five guesses', async () => {
  const guesses = Array.from({ length: 30 }, () => knock({ password: 'wrong wrong' }));
  const answers = await Promise.all(guesses);
  const looked = answers.filter((each) => !each.ok && each.refusal.code !== 'wait_a_little');
  expect(looked).toHaveLength(5);
  const kept = await sql('select count(*)::int as tries from "SignInTry" where not succeeded');
  expect(kept).toEqual([{ tries: 5 }]);
});
