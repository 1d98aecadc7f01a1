import 'server-only';
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { StartFault } from '../db/server-fault';
import { root, withParent } from './steps.mjs';

/** The pages, being served. */
export type Web = {
  /** Settles when they stop being served although nobody here stopped them. */
  lost: Promise<void>;
  stop: () => Promise<void>;
};

/** Where the pages are served, and what they are told. */
export type Serving = {
  host: string;
  port: number;
  isForDevelopment: boolean;
  environment: Readonly<Record<string, string>>;
  signal: AbortSignal;
};

const readyTimeoutMs = 120_000;
const stopTimeoutMs = 8_000;

/**
 * Serves the built pages and waits until they answer.
 *
 * @throws StartFault when the port was taken meanwhile, or the pages do not come up
 */
export async function serveWeb(serving: Serving): Promise<Web> {
  const { host, port, isForDevelopment, environment } = serving;
  const next = [`${root}/node_modules/next/dist/bin/next`, isForDevelopment ? 'dev' : 'start'];
  const child = spawn(
    process.execPath,
    [...withParent, ...next, '--hostname', host, '--port', String(port)],
    {
      cwd: root,
      env: {
        ...process.env,
        NEXT_TELEMETRY_DISABLED: '1',
        ...environment,
        KILN_LAUNCHER: String(process.pid),
        NODE_ENV: isForDevelopment ? 'development' : 'production',
      },
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    },
  );
  const words = listen(child);
  const gone = once(child, 'exit').then(() => undefined);
  const web = { lost: gone, stop: () => stop(child) };
  try {
    await answers(child, serving, words);
  } catch (fault) {
    await web.stop();
    throw fault;
  }
  return web;
}

type Words = { text: () => string; passOn: () => void };

/** Keeps what the pages' server says until it is up; from then on its complaints are shown. */
function listen(child: ChildProcess): Words {
  let text = '';
  let isShown = false;
  child.stdout?.on('data', (chunk: Buffer) => {
    if (!isShown) text += chunk.toString('utf8');
  });
  child.stderr?.on('data', (chunk: Buffer) => {
    if (isShown) process.stderr.write(chunk);
    else text += chunk.toString('utf8');
  });
  return {
    text: () => text,
    passOn: () => {
      isShown = true;
    },
  };
}

async function answers(child: ChildProcess, serving: Serving, words: Words): Promise<void> {
  const deadline = performance.now() + readyTimeoutMs;
  while (performance.now() < deadline) {
    if (serving.signal.aborted) throw new StartFault('Stopped before it was open.');
    if (child.exitCode !== null || child.signalCode !== null) throw fellOver(words.text(), serving);
    if (await answersOnce(localUrl(serving.host, serving.port))) return words.passOn();
    await pause(100);
  }
  throw new StartFault('The pages did not answer within two minutes.');
}

async function answersOnce(url: string): Promise<boolean> {
  try {
    const answer = await fetch(url, { redirect: 'manual', signal: AbortSignal.timeout(60_000) });
    await answer.body?.cancel();
    return true;
  } catch {
    return false;
  }
}

function fellOver(words: string, { port }: Serving): StartFault {
  if (words.includes('EADDRINUSE')) {
    return new StartFault(`Port ${port} was taken by another program in the meantime.`);
  }
  const telling = words.split('\n').find((line) => /error/i.test(line)) ?? 'it gave no reason';
  return new StartFault(`The pages could not be served: ${telling.trim()}`);
}

async function stop(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGTERM');
  const late = setTimeout(() => child.kill('SIGKILL'), stopTimeoutMs);
  await gone;
  clearTimeout(late);
}

/** The address under which this machine itself reaches the pages. */
export function localUrl(host: string, port: number): string {
  const name = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host;
  return `http://${name.includes(':') ? `[${name}]` : name}:${port}`;
}
