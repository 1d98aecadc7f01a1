import 'server-only';
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import {
  chownSync,
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { StartFault, mentionsFullDisk } from './server-fault';
import { assertRoom, moveInto, type Account, type Place } from './server-place';

/** Safe keeps every promise through a power cut; throwaway is for tests only. */
export type Durability = 'safe' | 'throwaway';

const minimumRoomMb = 300;

/** The folder of the cluster inside its home. */
export function clusterFolder(place: Place): string {
  return join(place.home, 'postgres');
}

/**
 * Makes an empty cluster unless there is one.
 *
 * It is made in a folder aside and moved into place when it is whole, so that a start killed
 * half-way leaves nothing broken.
 *
 * @throws StartFault when the disk is nearly full, or the cluster is of another PostgreSQL
 */
export async function readyCluster(place: Place, password: string): Promise<void> {
  const cluster = clusterFolder(place);
  if (existsSync(cluster)) return assertSameMajor(place, cluster);
  assertRoom(place.home, minimumRoomMb);
  const aside = join(place.home, `starting-${randomBytes(4).toString('hex')}`);
  mkdirSync(aside, { mode: 0o700 });
  const passwordFile = join(aside, 'password');
  writeFileSync(passwordFile, password, { mode: 0o600 });
  if (place.account) {
    chownSync(aside, place.account.uid, place.account.gid);
    chownSync(passwordFile, place.account.uid, place.account.gid);
  }
  try {
    const unfinished = join(aside, 'postgres');
    const made = await run(place, 'initdb', initdbArguments(unfinished, passwordFile));
    if (made.code !== 0) throw faultFrom('The database could not be made', made.words);
    moveInto(unfinished, cluster);
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}

function initdbArguments(cluster: string, passwordFile: string): string[] {
  const settings = {
    timezone: 'UTC',
    log_timezone: 'UTC',
    listen_addresses: '127.0.0.1',
    unix_socket_directories: '',
    max_connections: '120',
  };
  return [
    ...['-D', cluster, '-U', 'postgres', '-A', 'scram-sha-256', `--pwfile=${passwordFile}`],
    ...['-E', 'UTF8', '--no-locale', '--locale-provider=builtin', '--builtin-locale=C.UTF-8'],
    ...['--data-checksums', '--no-instructions'],
    ...Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]),
  ];
}

function assertSameMajor(place: Place, cluster: string): void {
  const ours = readFileSync(join(place.programs, '../share/postgresql/postgres.bki'), 'utf8');
  const major = /^# PostgreSQL (\d+)/.exec(ours)?.[1];
  const theirs = readFileSync(join(cluster, 'PG_VERSION'), 'utf8').trim();
  if (major === undefined || theirs === major) return;
  throw new StartFault(
    `The data in ${cluster} belong to PostgreSQL ${theirs}; this version brings PostgreSQL ` +
      `${major}. Start them with the version that made them.`,
  );
}

/** What a running server says of itself in its lock file. */
export type Running = { pid: number; port: number; isReady: boolean };

/** The server that has this cluster open, or null when none has. */
export function findRunning(place: Place): Running | null {
  const lock = join(clusterFolder(place), 'postmaster.pid');
  if (!existsSync(lock)) return null;
  const lines = readFileSync(lock, 'utf8').split('\n');
  const pid = Number(lines[0]);
  if (!Number.isInteger(pid) || pid < 1 || !isAlive(pid)) return null;
  if (isSomethingElse(pid)) {
    // After a restart of the machine the number may belong to another program.
    rmSync(lock, { force: true });
    return null;
  }
  return { pid, port: Number(lines[3] ?? 0), isReady: lines[7]?.trim() === 'ready' };
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Another program, or a server that has ended and is still listed because nobody asked after it. */
function isSomethingElse(pid: number): boolean {
  const file = `/proc/${pid}/stat`;
  if (!existsSync(file)) return false;
  const [, name, state] = /^\d+ \((.*)\) (\w)/s.exec(readFileSync(file, 'utf8')) ?? [];
  return name !== 'postgres' || state === 'Z';
}

/**
 * Starts the server on a port of this machine.
 *
 * @returns false when another start was quicker and has the cluster open
 * @throws StartFault with PostgreSQL's own last words when it will not start
 */
export async function startCluster(place: Place, port: number, how: Durability): Promise<boolean> {
  const log = join(place.home, 'postgres.log');
  const before = logLength(log, place.account);
  const speed =
    how === 'safe' ? '' : ' -c fsync=off -c synchronous_commit=off -c full_page_writes=off';
  const started = await run(place, 'pg_ctl', [
    ...['start', '-w', '-t', '120', '-s', '-D', clusterFolder(place), '-l', log],
    ...['-o', `-p ${port}${speed}`],
  ]);
  if (started.code === 0) return true;
  if (findRunning(place)) return false;
  const words = existsSync(log) ? readFileSync(log, 'utf8').slice(before) : '';
  throw faultFrom('The database did not start', `${words}\n${started.words}`);
}

function logLength(log: string, account: Account): number {
  if (existsSync(log) && statSync(log).size < 5_000_000) return statSync(log).size;
  writeFileSync(log, '', { mode: 0o600 });
  if (account) chownSync(log, account.uid, account.gid);
  return 0;
}

/** Stops the server: sessions are closed, everything is written, nothing is left running. */
export async function stopCluster(place: Place): Promise<void> {
  if (!findRunning(place)) return;
  const cluster = clusterFolder(place);
  const stopped = await run(place, 'pg_ctl', [
    ...['stop', '-w', '-t', '60', '-s', '-m', 'fast', '-D', cluster],
  ]);
  if (stopped.code === 0 || !findRunning(place)) return;
  throw faultFrom('The database did not stop', stopped.words);
}

function faultFrom(sentence: string, words: string): StartFault {
  if (mentionsFullDisk(words)) {
    return new StartFault(`${sentence}: there is no room left on the disk.`);
  }
  const lines = words.split('\n').map((line) => line.trim());
  const telling = lines.find((line) => /FATAL|PANIC|error/i.test(line)) ?? lines.find(Boolean);
  return new StartFault(
    `${sentence}: ${(telling ?? 'it gave no reason').replace(/^.*?FATAL:\s+/, '')}`,
  );
}

function run(
  place: Place,
  program: string,
  args: string[],
): Promise<{ code: number; words: string }> {
  const { account } = place;
  const child = spawn(join(place.programs, program), args, {
    cwd: '/',
    env: { NODE_ENV: 'production', PATH: '/usr/bin:/bin', LC_ALL: 'C', TZ: 'UTC' },
    stdio: ['ignore', 'pipe', 'pipe'],
    uid: account?.uid,
    gid: account?.gid,
  });
  return new Promise((resolve, reject) => {
    let words = '';
    const hear = (chunk: Buffer) => {
      words += chunk.toString('utf8');
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('error', reject);
    // 'exit', not 'close': the server that pg_ctl leaves running may hold the pipes open.
    child.on('exit', (code) => resolve({ code: code ?? 1, words }));
  });
}
