import { createHash } from 'node:crypto';
import {
  existsSync,
  readFileSync,
  readdirSync,
  statSync,
  statfsSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { during, fault, root, run, withParent } from './steps.mjs';

const builtFrom = ['app', 'lib', 'prisma', 'public', 'next.config.ts', 'proxy.ts'];

/** Installs the packages unless exactly these are there. */
export async function install(signal) {
  const stamp = 'node_modules/.kiln-installed';
  const mark = fingerprint(['package-lock.json']);
  if (existsSync(join(root, 'node_modules')) && !isStale(stamp, mark)) return;
  if (!isInstalled()) {
    assertRoom(1_500, 'install what it needs');
    await during('Installing what it needs', () => npm(['ci', '--include=dev'], signal));
  }
  keepStamp(stamp, mark);
}

/** True when npm's own note in node_modules has every package of the lock, in its version. */
function isInstalled() {
  const note = join(root, 'node_modules/.package-lock.json');
  if (!existsSync(note)) return false;
  const there = JSON.parse(readFileSync(note, 'utf8')).packages;
  const wanted = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  return Object.entries(wanted).every(
    ([path, { version, optional }]) =>
      path === '' || optional === true || there[path]?.version === version,
  );
}

function npm(words, signal) {
  const fails = 'What it needs could not be installed';
  const own = process.env.npm_execpath;
  const quiet = [...words, '--no-audit', '--no-fund', '--loglevel=error'];
  return own?.endsWith('.js')
    ? run(process.execPath, [own, ...quiet], { fails, signal })
    : run('npm', quiet, { fails, signal, shell: process.platform === 'win32' });
}

/** Writes the database client that belongs to the models. */
export async function generateClient(signal) {
  const mark = fingerprint(['prisma', 'prisma.config.ts', 'package-lock.json']);
  if (!isStale('generated/.kiln-made', mark)) return;
  await during('Preparing the database client', () =>
    run(process.execPath, ['node_modules/prisma/build/index.js', 'generate'], {
      fails: 'The database client could not be prepared',
      signal,
      // Generating needs no schema engine, but the command asks for the file to be there.
      env: { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
    }),
  );
  keepStamp('generated/.kiln-made', mark);
}

/** Builds the pages unless they are built from exactly these files. */
export async function buildPages(signal) {
  const mark = fingerprint([...builtFrom, 'package-lock.json', 'tsconfig.json']);
  const isBuilt = existsSync(join(root, '.next/BUILD_ID'));
  if (isBuilt && !isStale('.next/kiln-built', mark)) return;
  assertRoom(300, 'build the pages');
  await during('Building the pages', () =>
    run(process.execPath, [...withParent, 'node_modules/next/dist/bin/next', 'build'], {
      fails: 'The pages could not be built',
      signal,
      env: { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
    }),
  );
  keepStamp('.next/kiln-built', mark);
}

function assertRoom(megabytes, purpose) {
  const disk = statfsSync(root);
  const free = Math.floor((disk.bavail * disk.bsize) / 1_000_000);
  if (free >= megabytes) return;
  throw fault(`There is too little room on the disk to ${purpose}: ${free} MB are free.`);
}

/** One number for the contents of files and folders: it changes when any of them does. */
function fingerprint(paths) {
  const hash = createHash('sha256');
  for (const path of paths) addTo(hash, join(root, path), path);
  return hash.digest('hex');
}

function addTo(hash, path, name) {
  if (!existsSync(path)) return;
  if (!statSync(path).isDirectory()) {
    hash.update(`${name}\0`).update(readFileSync(path)).update('\0');
    return;
  }
  for (const entry of readdirSync(path).sort()) addTo(hash, join(path, entry), `${name}/${entry}`);
}

/** True when the stamp in this file is not the fingerprint: the work has to be done again. */
function isStale(stamp, mark) {
  const file = join(root, stamp);
  return !existsSync(file) || readFileSync(file, 'utf8') !== mark;
}

/** Says that the work was done for this fingerprint. */
function keepStamp(stamp, mark) {
  writeFileSync(join(root, stamp), mark);
}
