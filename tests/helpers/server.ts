import { spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/** Absolute folder of the project. */
export const root = resolve(import.meta.dirname, '../..');

export type Start = {
  dataDir: string;
  port: number;
  words?: readonly string[];
  environment?: Readonly<Record<string, string>>;
  /** Through npm, as a person types it, instead of Node itself. */
  isByNpm?: boolean;
};

export type Launcher = {
  pid: number;
  /** Everything it has said so far. */
  said: () => { out: string; complaints: string };
  /** Settles with its exit code. */
  ended: Promise<number | null>;
  /** Asks it to end, and waits until it has. */
  end: (signal?: NodeJS.Signals) => Promise<number | null>;
};

/** The real start command, in a process of its own. */
export function launch(start: Start): Launcher {
  const { dataDir, port, words = [], environment = {}, isByNpm = false } = start;
  const script = join(root, 'lib/platform/launch/start.mjs');
  const [program, ...first] = isByNpm ? ['npm', 'start', '--'] : [process.execPath, script];
  const child = spawn(program, [...first, ...words], {
    cwd: root,
    env: { ...bare(), PORT: String(port), DATA_DIR: dataDir, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const said = { out: '', complaints: '' };
  child.stdout.on('data', (chunk: Buffer) => (said.out += chunk.toString('utf8')));
  child.stderr.on('data', (chunk: Buffer) => (said.complaints += chunk.toString('utf8')));
  const ended = new Promise<number | null>((settle) => child.once('close', settle));
  return {
    pid: child.pid ?? 0,
    said: () => said,
    ended,
    end: (signal = 'SIGTERM') => {
      child.kill(signal);
      return ended;
    },
  };
}

/** What a person's shell has, without what the test runner has added. */
function bare(): NodeJS.ProcessEnv {
  const kept = ['PATH', 'HOME', 'USER', 'LANG', 'npm_execpath'];
  const all = kept.map((name) => [name, process.env[name]] as const);
  return { NODE_ENV: 'production', ...Object.fromEntries(all.filter(([, value]) => value)) };
}

/** Starts the product and waits until it says that it is open. */
export async function startProduct(start: Start): Promise<Launcher & { url: string }> {
  const launcher = launch(start);
  const url = await saidUrl(launcher);
  return { ...launcher, url };
}

async function saidUrl(launcher: Launcher): Promise<string> {
  const over = launcher.ended.then((code) => ({ code }));
  for (;;) {
    const { out } = launcher.said();
    const url = /is open: (\S+)/.exec(out)?.[1];
    // The last line it says when it opens.
    if (url && out.includes('Ctrl-C')) return url;
    const next = await Promise.race([over, pause(50, null)]);
    if (next === null) continue;
    const last = JSON.stringify(launcher.said());
    throw new Error(`The product did not open (${next.code ?? 'killed'}): ${last}`);
  }
}

/** A port of this machine that nobody listens on. */
export function freePort(): Promise<number> {
  return new Promise((settle, fail) => {
    const probe = createServer();
    probe.once('error', fail);
    probe.listen(0, '127.0.0.1', () => {
      const at = probe.address();
      probe.close(() => settle(typeof at === 'object' && at ? at.port : 0));
    });
  });
}
