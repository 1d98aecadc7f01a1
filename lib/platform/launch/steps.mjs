import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';

/** Absolute folder of the project. */
export const root = resolve(import.meta.dirname, '../../..');

/** Lets only one start at a time change the project's own folder (install, generate, build). */
export async function inTurn(work, signal) {
  const mark = createHash('sha256').update(root).digest('hex').slice(0, 16);
  const file = join(tmpdir(), `kiln-and-counter-${mark}.lock`);
  let isTold = false;
  while (!takeTurn(file)) {
    if (!isTold) process.stdout.write('Waiting for another start of this copy …\n');
    isTold = true;
    await pause(300, undefined, { signal });
  }
  const leave = () => rmSync(file, { force: true });
  process.once('exit', leave);
  try {
    return await work();
  } finally {
    process.off('exit', leave);
    leave();
  }
}

function takeTurn(file) {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  if (isHeld(file)) return false;
  // Its holder was killed. Of two that find it so, the one whose number is read back goes on.
  rmSync(file, { force: true });
  return false;
}

function isHeld(file) {
  try {
    const text = readFileSync(file, 'utf8');
    // Just made, its number not yet written.
    if (text === '') return Date.now() - statSync(file).mtimeMs < 5_000;
    return isOurs(Number(text));
  } catch {
    return false;
  }
}

/** True while the process of this number runs and is a start or a test run of ours. */
function isOurs(pid) {
  try {
    process.kill(pid, 0);
  } catch (error) {
    return error.code === 'EPERM';
  }
  const words = `/proc/${pid}/cmdline`;
  // Empty for one that has ended and is still listed; another program after a restart.
  return !existsSync(words) || /start\.mjs|gallery\.ts|run\.mjs/.test(readFileSync(words, 'utf8'));
}

/**
 * Shows a long step with its seconds: one line that counts on a terminal, two plain lines
 * elsewhere. A step that takes less than a second leaves no trace.
 */
export async function during(title, work) {
  const startedAt = performance.now();
  const seconds = () => Math.round((performance.now() - startedAt) / 1000);
  const isTerminal = process.stdout.isTTY === true;
  let said = '';
  let isShown = false;
  const show = () => {
    if (isTerminal) process.stdout.write(`\r\u001b[K${title} … ${seconds()} s${said}`);
    else if (!isShown) process.stdout.write(`${title} …\n`);
    isShown = true;
  };
  const ticking = setInterval(show, 1000);
  try {
    const answer = await work((sentence) => {
      said = `  ${sentence}`.slice(0, 60);
    });
    if (isShown)
      process.stdout.write(`${isTerminal ? '\r\u001b[K' : ''}${title}: ${seconds()} s\n`);
    return answer;
  } catch (error) {
    if (isShown && isTerminal) process.stdout.write('\n');
    throw error;
  } finally {
    clearInterval(ticking);
  }
}

/** Words for Node that make a process end when the one that started it is gone. */
export const withParent = [
  '--import',
  pathToFileURL(join(import.meta.dirname, 'stay-with-parent.mjs')).href,
];

/**
 * Runs a program of the project and keeps what it says for the case that it fails.
 *
 * @throws Error with one sentence: what failed (`fails`), and the program's own reason
 */
export function run(program, words, { fails, signal, env = {}, shell = false, hear = () => {} }) {
  const child = spawn(program, words, {
    cwd: root,
    shell,
    env: { ...process.env, ...env, KILN_LAUNCHER: String(process.pid) },
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  const end = () => child.kill('SIGTERM');
  signal?.addEventListener('abort', end, { once: true });
  let said = '';
  child.stdout.on('data', (chunk) => {
    said += chunk;
    hear(String(chunk));
  });
  child.stderr.on('data', (chunk) => {
    said += chunk;
  });
  return new Promise((resolve, reject) => {
    child.once('error', (error) =>
      reject(fault(`${fails}: ${program} cannot be run (${error.code}).`)),
    );
    child.once('close', (code) => {
      signal?.removeEventListener('abort', end);
      if (code === 0) resolve();
      else reject(fault(signal?.aborted ? 'Stopped.' : `${fails}: ${reasonIn(said)}`));
    });
  });
}

/** An error whose message is one sentence for the person who started this. */
export function fault(sentence) {
  return Object.assign(new Error(sentence), { name: 'StartFault' });
}

function reasonIn(said) {
  if (/no space left on device|ENOSPC/i.test(said)) return 'there is no room left on the disk.';
  const lines = said.split('\n').map((line) => line.replace(/^npm (error|ERR!)\s*/, '').trim());
  const telling = lines.find((line) => /error|cannot|failed|not found|denied/i.test(line));
  return telling ?? lines.findLast(Boolean) ?? 'it gave no reason.';
}
