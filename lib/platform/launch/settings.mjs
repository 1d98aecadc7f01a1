import { existsSync, readFileSync, statSync } from 'node:fs';
import { connect, createServer, isIP } from 'node:net';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { root } from './steps.mjs';

const flags = new Map([
  ['--lan', 'isForLan'],
  ['--empty', 'isEmpty'],
  ['--dev', 'isForDevelopment'],
]);

/**
 * What was asked for on the command line and in the environment, checked.
 *
 * @throws Error with one sentence naming the variable or word that is wrong
 */
export function readSettings(words, environment) {
  const settings = { isForLan: false, isEmpty: false, isForDevelopment: false };
  for (const word of words) {
    const name = flags.get(word);
    if (!name)
      throw new Error(`${word} is not known here. Known: ${[...flags.keys()].join(', ')}.`);
    settings[name] = true;
  }
  return {
    ...settings,
    port: readPort(environment.PORT),
    host: readHost(environment.HOST, settings.isForLan),
    dataDir: readDataDir(environment.DATA_DIR),
    databaseUrl: readDatabaseUrl(environment.DATABASE_URL),
  };
}

function readPort(text) {
  if (!text) return 3210;
  const port = Number(text);
  if (/^\d+$/.test(text) && port >= 1 && port <= 65_535) return port;
  throw new Error(`PORT is a whole number from 1 to 65535; it says “${text}”.`);
}

function readHost(text, isForLan) {
  const host = text || (isForLan ? '0.0.0.0' : '127.0.0.1');
  if (isIP(host) || host === 'localhost') return host;
  throw new Error(`HOST is an address of this machine, such as 127.0.0.1; it says “${host}”.`);
}

function readDataDir(text) {
  const folder = resolve(root, text || 'data');
  if (existsSync(folder) && !statSync(folder).isDirectory()) {
    throw new Error(`DATA_DIR is a folder; ${folder} is a file.`);
  }
  return folder;
}

function readDatabaseUrl(text) {
  if (!text) return null;
  if (/^postgres(ql)?:$/.test(URL.canParse(text) ? new URL(text).protocol : '')) return text;
  throw new Error('DATABASE_URL is an address that begins with postgresql://; it says otherwise.');
}

/**
 * Makes sure, before any long work, that the address can be listened on.
 *
 * @throws Error with one sentence; when this gallery itself has it open, the sentence says so.
 *   Copies on a database of somebody's own may be as many as they like.
 */
export async function refuseIfTaken({ dataDir, host, port, databaseUrl }) {
  const open = databaseUrl === null ? await findOpen(dataDir) : null;
  if (open) {
    throw new Error(`Kiln & Counter is already open on this data, at ${open.url}.`);
  }
  // One that was closed a moment ago may still be letting go.
  for (let tries = 1; ; tries += 1) {
    const code = await listenOnce(host, port);
    if (code === null) return;
    if (code === 'EADDRINUSE' && tries < 10) await pause(200);
    else throw new Error(portSentence(code, host, port));
  }
}

function portSentence(code, host, port) {
  if (code === 'EADDRINUSE') {
    return `Port ${port} is taken by another program. Choose another: PORT=${port + 1} npm start`;
  }
  if (code === 'EACCES') {
    return `Port ${port} may not be used by this account. Choose one above 1023, such as 3210.`;
  }
  return `HOST ${host} is not an address of this machine (${code}).`;
}

/** What the running copy has noted in the data folder, if it still answers there. */
async function findOpen(dataDir) {
  try {
    const { url } = JSON.parse(readFileSync(join(dataDir, 'open.json'), 'utf8'));
    const { hostname, port } = new URL(url);
    return (await isListening(hostname, Number(port))) ? { url } : null;
  } catch {
    // No note, or not a whole one: the lock of the database decides.
    return null;
  }
}

function isListening(host, port) {
  return new Promise((done) => {
    const probe = connect({ host, port, timeout: 2_000 });
    const end = (answer) => {
      probe.destroy();
      done(answer);
    };
    probe.once('connect', () => end(true));
    probe.once('timeout', () => end(false));
    probe.once('error', () => end(false));
  });
}

function listenOnce(host, port) {
  return new Promise((done) => {
    const probe = createServer();
    probe.once('error', (error) => done(error.code ?? 'unknown'));
    probe.listen(port, host, () => probe.close(() => done(null)));
  });
}
