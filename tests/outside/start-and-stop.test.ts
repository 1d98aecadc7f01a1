import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { aDataFolder, anOpenGallery, askOutside, databaseRuns } from '../helpers/launches';
import { processes, refusedStart, startedBy, until } from '../helpers/launches';
import { freePort, launch, startProduct } from '../helpers/server';

const isRoot = process.getuid?.() === 0;

test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
  '%s closes everything, and nothing is left running',
  async (signal) => {
    const dataDir = aDataFolder();
    const open = await anOpenGallery({ dataDir });
    const started = startedBy(open.pid).map((one) => one.pid);
    expect(started.length).toBeGreaterThan(1);
    expect(await open.end(signal)).toBe(0);
    expect(databaseRuns(dataDir)).toBe(false);
    expect(processes().filter((one) => started.includes(one.pid))).toEqual([]);
    await expect(fetch(open.url)).rejects.toThrow();
  },
);

test('npm, told to end, takes everything with it', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir, isByNpm: true });
  const started = startedBy(open.pid).map((one) => one.pid);
  expect(started.length).toBeGreaterThan(2);
  process.kill(open.pid, 'SIGTERM');
  await until('nothing is left of it', () =>
    processes().every((one) => !started.includes(one.pid)),
  );
  expect(databaseRuns(dataDir)).toBe(false);
});

test('a second copy on the same data says so and ends, and the first goes on', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir });
  const { code, lines } = await refusedStart({ dataDir });
  expect({ code, lines }).toEqual({
    code: 1,
    lines: [expect.stringContaining(`already open on this data, at ${open.url}`)],
  });
  expect((await fetch(open.url, { redirect: 'manual' })).status).toBeLessThan(500);
});

test('of two copies started at the same moment exactly one opens', async () => {
  const dataDir = aDataFolder();
  const both = [await freePort(), await freePort()].map((port) =>
    launch({ dataDir, port, words: ['--empty'] }),
  );
  onTestFinished(async () => {
    await Promise.all(both.map((one) => one.end()));
  });
  const first = await Promise.race(
    both.map((one, place) => one.ended.then((code) => ({ code, place }))),
  );
  expect(first.code).toBe(1);
  const loser = both[first.place]?.said().complaints.split('\n').filter(Boolean);
  expect(loser).toEqual([expect.stringContaining('already open on this data')]);
  const winner = both[1 - first.place];
  await until('the other one opens', () => winner?.said().out.includes('Ctrl-C') === true);
});

test('a start that is killed takes its pages with it, and the next one goes on', async () => {
  const dataDir = aDataFolder();
  const port = await freePort();
  const open = await anOpenGallery({ dataDir, port });
  await askOutside(dataDir, 'create table kept (id int); insert into kept values (7)');
  const started = startedBy(open.pid).map((one) => one.pid);
  process.kill(open.pid, 'SIGKILL');
  await until('nothing is left of it', () =>
    processes().every((one) => !started.includes(one.pid)),
  );
  await anOpenGallery({ dataDir, port });
  expect(await askOutside(dataDir, 'select id from kept')).toEqual([{ id: 7 }]);
});

test('a database left running by a start that was killed whole is taken over', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir });
  await askOutside(dataDir, 'create table kept (id int); insert into kept values (7)');
  for (const one of [open.pid, ...startedBy(open.pid).map((below) => below.pid)]) {
    process.kill(one, 'SIGKILL');
  }
  await open.ended;
  expect(databaseRuns(dataDir)).toBe(true);
  const again = await anOpenGallery({ dataDir });
  expect(await askOutside(dataDir, 'select id from kept')).toEqual([{ id: 7 }]);
  expect(await again.end()).toBe(0);
  expect(databaseRuns(dataDir)).toBe(false);
});

test('a note of an open gallery that nobody answers to is not believed', async () => {
  const dataDir = aDataFolder();
  const nobody = await freePort();
  const note = { pid: process.pid, url: `http://127.0.0.1:${nobody}` };
  writeFileSync(join(dataDir, 'open.json'), JSON.stringify(note));
  const open = await anOpenGallery({ dataDir });
  expect(await open.end()).toBe(0);
  expect(existsSync(join(dataDir, 'open.json'))).toBe(false);
});

test('a server killed like the rest of the machine is started again on what it had kept', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir });
  await askOutside(dataDir, 'create table kept (id int); insert into kept values (7)');
  const [first] = readFileSync(join(dataDir, 'postgres/postmaster.pid'), 'utf8').split('\n');
  const all = [Number(first), open.pid, ...startedBy(open.pid).map((below) => below.pid)];
  for (const pid of all) process.kill(pid, 'SIGKILL');
  await open.ended;
  await anOpenGallery({ dataDir });
  expect(await askOutside(dataDir, 'select id from kept')).toEqual([{ id: 7 }]);
});

test('when the pages fall over, it says so and stops the database', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir });
  const pages = startedBy(open.pid).find((one) => one.words.startsWith('next-server'));
  expect(pages).toBeDefined();
  process.kill(pages?.pid ?? 0, 'SIGKILL');
  expect(await open.ended).toBe(1);
  expect(open.said().complaints).toMatch(/pages stopped being served/);
  expect(databaseRuns(dataDir)).toBe(false);
});

test('when the database falls over, it says so and stops the pages', async () => {
  const dataDir = aDataFolder();
  const open = await anOpenGallery({ dataDir });
  const [first] = readFileSync(join(dataDir, 'postgres/postmaster.pid'), 'utf8').split('\n');
  process.kill(Number(first), 'SIGQUIT');
  expect(await open.ended).toBe(1);
  expect(open.said().complaints).toContain('The database stopped');
  await expect(fetch(open.url)).rejects.toThrow();
});

test('the data folder keeps its secrets to its owner', async () => {
  const dataDir = aDataFolder();
  await anOpenGallery({ dataDir });
  const modes = ['keys.json', 'database.json'].map(
    (name) => statSync(join(dataDir, name)).mode & 0o777,
  );
  expect(modes).toEqual([0o600, 0o600]);
});

test('a start that was killed in its first seconds leaves nothing broken', async () => {
  const dataDir = aDataFolder();
  const port = await freePort();
  const early = launch({ dataDir, port, words: ['--empty'] });
  await until('it has begun', () => existsSync(join(dataDir, 'keys.json')));
  await early.end('SIGKILL');
  await until('its database is gone', () => !databaseRuns(dataDir));
  const open = await anOpenGallery({ dataDir, port });
  expect((await fetch(open.url, { redirect: 'manual' })).status).toBeLessThan(500);
});

// Only root lends PostgreSQL another account; anyone else runs it as themselves.
test.runIf(isRoot)(
  'root’s own folder: the database goes where it can, and is found again',
  async () => {
    mkdirSync('/root', { recursive: true });
    const dataDir = aDataFolder('/root');
    const open = await startProduct({ dataDir, port: await freePort(), words: ['--empty'] });
    expect(open.said().out).toMatch(/may not run as root and cannot enter .* its data are in \//);
    const { folder } = JSON.parse(readFileSync(join(dataDir, 'database.json'), 'utf8')) as {
      folder: string;
    };
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    expect(folder.startsWith(dataDir)).toBe(false);
    await askOutside(dataDir, 'create table kept (id int); insert into kept values (7)');
    await open.end();
    await anOpenGallery({ dataDir });
    expect(await askOutside(dataDir, 'select id from kept')).toEqual([{ id: 7 }]);
  },
);
