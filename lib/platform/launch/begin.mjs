import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { install, generateClient } from './prepare.mjs';
import { readSettings, refuseIfTaken } from './settings.mjs';
import { inTurn, root } from './steps.mjs';

/**
 * Everything up to the point where TypeScript can be run, then the rest of it in its own process
 * (the condition `react-server` has to be set when Node starts).
 */
export async function begin(words) {
  const stop = new AbortController();
  let gallery = null;
  const pass = (signal) => {
    if (gallery) gallery.kill(signal);
    else stop.abort();
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => pass(signal));
  watchNpm(() => pass('SIGTERM'));
  try {
    const settings = readSettings(words, process.env);
    await refuseIfTaken(settings);
    await inTurn(async () => {
      await install(stop.signal);
      await generateClient(stop.signal);
    }, stop.signal);
    gallery = openGallery(settings);
    process.exitCode = await ended(gallery);
  } catch (fault) {
    if (stop.signal.aborted) process.exit(130);
    process.stderr.write(`${fault instanceof Error ? fault.message : String(fault)}\n`);
    process.exit(1);
  }
}

/** npm, told to end, ends at once and tells nobody: whoever it has started looks for itself. */
function watchNpm(end) {
  if (!process.env.npm_lifecycle_event) return;
  const before = lineage();
  setInterval(() => lineage() !== before && end(), 500).unref();
}

/** Who started this process; when that is npm's shell, who started the shell too (Linux). */
function lineage() {
  const parent = process.ppid;
  try {
    const stat = readFileSync(`/proc/${parent}/stat`, 'utf8');
    const [, name, rest] = /\((.*)\) (.*)/s.exec(stat);
    return /^(ba|da)?sh$/.test(name) ? `${parent} ${rest.split(' ')[1]}` : String(parent);
  } catch {
    return String(parent);
  }
}

function openGallery(settings) {
  const script = join(root, 'lib/platform/launch/gallery.ts');
  return spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', script, JSON.stringify(settings)],
    // The channel tells the gallery when this process is gone, however it went.
    { cwd: root, stdio: ['inherit', 'inherit', 'inherit', 'ipc'] },
  );
}

function ended(child) {
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code, signal) => {
      if (signal) process.stderr.write(`Kiln & Counter was ended from outside (${signal}).\n`);
      resolve(code ?? 1);
    });
  });
}
