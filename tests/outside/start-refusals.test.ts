import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { addressOf, aDataFolder, anOpenGallery, askOutside } from '../helpers/launches';
import { databaseRuns, refusedStart } from '../helpers/launches';
import { freePort } from '../helpers/server';

test('a port that is taken is said in one line, before anything is begun', async () => {
  const dataDir = aDataFolder();
  const taken = await listenSomewhere();
  const { code, lines } = await refusedStart({ dataDir, port: taken });
  expect({ code, lines }).toEqual({
    code: 1,
    lines: [expect.stringContaining(`Port ${taken} is taken`)],
  });
  expect(existsSync(join(dataDir, 'keys.json'))).toBe(false);
});

test.each([
  ['a port in words', { PORT: 'seven' }, /PORT is a whole number/],
  ['a port that is too high', { PORT: '70000' }, /PORT is a whole number/],
  ['a host with a path', { HOST: 'http://here' }, /HOST is an address/],
  [
    'a host that is elsewhere',
    { HOST: '192.0.2.1' },
    /HOST 192\.0\.2\.1 is not an address of this/,
  ],
  ['another kind of database', { DATABASE_URL: 'mysql://a@b/c' }, /DATABASE_URL is an address/],
])('%s is said in one line', async (_label, environment, sentence) => {
  const { code, lines } = await refusedStart({ dataDir: aDataFolder(), environment });
  expect(code).toBe(1);
  expect(lines).toEqual([expect.stringMatching(sentence)]);
});

test('a word that is not known is said in one line', async () => {
  const { code, lines } = await refusedStart({ dataDir: aDataFolder(), words: ['--everything'] });
  expect({ code, lines }).toEqual({
    code: 1,
    lines: [expect.stringContaining('--everything is not known here')],
  });
});

test('a data folder that is a file is said in one line', async () => {
  const dataDir = join(aDataFolder(), 'file');
  writeFileSync(dataDir, '');
  const { code, lines } = await refusedStart({ dataDir });
  expect({ code, lines }).toEqual({ code: 1, lines: [expect.stringContaining('is a file')] });
});

test.each([
  ['/dev/null/kiln', /a part of its path is a file/],
  ['/proc/kiln', /cannot be made at that place/],
])('a data folder that cannot be made (%s) is said in one line', async (dataDir, sentence) => {
  const { code, lines } = await refusedStart({ dataDir });
  expect(code).toBe(1);
  expect(lines).toEqual([expect.stringMatching(sentence)]);
});

test('a database that does not answer is said in one line', async () => {
  const nobody = await freePort();
  const environment = { DATABASE_URL: `postgresql://kiln@127.0.0.1:${nobody}/kiln` };
  const { code, lines } = await refusedStart({ dataDir: aDataFolder(), environment });
  expect({ code, lines }).toEqual({
    code: 1,
    lines: [expect.stringContaining(`127.0.0.1:${nobody} does not answer`)],
  });
});

test('a wrong password and a missing database are said in one line each', async () => {
  const dataDir = aDataFolder();
  await anOpenGallery({ dataDir });
  const wrong = addressOf(dataDir);
  wrong.password = 'wrong';
  const missing = addressOf(dataDir);
  missing.pathname = '/elsewhere';

  const first = await refusedStart({
    dataDir: aDataFolder(),
    environment: { DATABASE_URL: wrong.href },
  });
  expect(first).toEqual({
    code: 1,
    lines: [expect.stringContaining('does not accept the account or password')],
  });
  const second = await refusedStart({
    dataDir: aDataFolder(),
    environment: { DATABASE_URL: missing.href },
  });
  expect(second).toEqual({ code: 1, lines: [expect.stringContaining('has no “elsewhere”')] });
});

test('data of a newer version are refused in one line and left as they are', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir });
  const tables = 'select count(*)::int as n from information_schema.tables';
  const before = await askOutside(dataDir, tables);
  await askOutside(
    dataDir,
    `insert into _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
     values ('later', 'x', '29990101000000_later', now(), 1)`,
  );
  await open.end();

  const { code, lines } = await refusedStart({ dataDir });
  expect(code).toBe(1);
  expect(lines).toEqual([expect.stringMatching(/newer version .*29990101000000_later/)]);
  expect(databaseRuns(dataDir)).toBe(false);

  const { lines: again } = await refusedStart({ dataDir });
  expect(again).toEqual(lines);
  expect(before).not.toEqual([{ n: 0 }]);
});

test('a cluster of another PostgreSQL is refused in one line and not touched', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir });
  await open.end();
  const version = join(dataDir, 'postgres/PG_VERSION');
  writeFileSync(version, '19\n');
  const { code, lines } = await refusedStart({ dataDir });
  expect({ code, lines }).toEqual({
    code: 1,
    lines: [expect.stringContaining('belong to PostgreSQL 19')],
  });
  expect(readFileSync(version, 'utf8')).toBe('19\n');
});

test('secrets that were damaged are said in one line and not made anew', async () => {
  const dataDir = aDataFolder();
  writeFileSync(join(dataDir, 'keys.json'), '{"half":');
  const { code, lines } = await refusedStart({ dataDir });
  expect({ code, lines }).toEqual({ code: 1, lines: [expect.stringContaining('is damaged')] });
  expect(readFileSync(join(dataDir, 'keys.json'), 'utf8')).toBe('{"half":');
});

async function listenSomewhere(): Promise<number> {
  const server = await new Promise<Server>((settle) => {
    const one = createServer().listen(0, '127.0.0.1', () => settle(one));
  });
  onTestFinished(() => {
    server.close();
  });
  const at = server.address();
  return typeof at === 'object' && at ? at.port : 0;
}
