import 'server-only';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { startServer, type DatabaseServer } from '../db/server';
import { asStartFault, codeOf, StartFault } from '../db/server-fault';
import { readKeys, readyDataFolder } from '../db/server-keys';
import { demoPeopleFile, isDemo, readyData } from './demo';
import { buildPages } from './prepare.mjs';
import { during, inTurn } from './steps.mjs';
import { localUrl, serveWeb, type Web } from './web';

// The second half of npm start, in a process of its own: database, data, pages, and the way back.

const settingsShape = z.strictObject({
  isForLan: z.boolean(),
  isEmpty: z.boolean(),
  isForDevelopment: z.boolean(),
  port: z.number(),
  host: z.string(),
  dataDir: z.string(),
  databaseUrl: z.string().nullable(),
});
type Settings = z.infer<typeof settingsShape>;

const people = z.array(
  z.object({ signInName: z.string(), name: z.string(), role: z.string(), password: z.string() }),
);

type Open = { server: DatabaseServer | null; web: Web | null };

async function main(settings: Settings): Promise<number> {
  const ending = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'disconnect'] as const) {
    process.on(signal, () => ending.abort());
  }
  const open: Open = { server: null, web: null };
  const note = join(settings.dataDir, 'open.json');
  let isOpen = false;
  try {
    await openUp(settings, open, ending.signal);
    if (ending.signal.aborted) return 130;
    isOpen = settings.databaseUrl === null;
    if (isOpen) writeFileSync(note, JSON.stringify({ pid: process.pid, url: address(settings) }));
    return await untilClosed(open, ending.signal);
  } catch (error) {
    if (ending.signal.aborted) return 130;
    say(process.stderr, sentenceOf(error, settings));
    return 1;
  } finally {
    if (isOpen) rmSync(note, { force: true });
    await open.web?.stop();
    await open.server?.stop();
  }
}

async function openUp(settings: Settings, open: Open, signal: AbortSignal): Promise<void> {
  const { dataDir, databaseUrl, host, port, isEmpty, isForDevelopment } = settings;
  readyDataFolder(dataDir);
  if (databaseUrl === null) {
    open.server = await during('Starting the database', () => startServer(dataDir));
    if (open.server.isElsewhere) sayElsewhere(open.server, dataDir);
  }
  const url = databaseUrl ?? open.server?.url() ?? '';
  await readyData({ databaseUrl: url, isEmpty, signal });
  if (!isForDevelopment) await inTurn(() => buildPages(signal), signal);
  const keys = readKeys(dataDir);
  const environment = {
    DATABASE_URL: url,
    NEXTAUTH_SECRET: process.env['NEXTAUTH_SECRET'] ?? keys.signInSecret,
    NEXTAUTH_URL: process.env['NEXTAUTH_URL'] ?? address(settings),
    AUTH_TRUST_HOST: 'true',
    NEXT_SERVER_ACTIONS_ENCRYPTION_KEY:
      process.env['NEXT_SERVER_ACTIONS_ENCRYPTION_KEY'] ?? keys.formKey,
  };
  const serving = { host, port, isForDevelopment, environment, signal };
  open.web = await during('Opening the doors', () => serveWeb(serving));
  await tellHowToEnter(settings, url);
}

async function untilClosed(open: Open, signal: AbortSignal): Promise<number> {
  const asked = new Promise<'asked'>((resolve) => {
    signal.addEventListener('abort', () => resolve('asked'));
    if (signal.aborted) resolve('asked');
  });
  const never = new Promise<never>(() => undefined);
  const how = await Promise.race([
    asked,
    open.web?.lost.then(() => 'The pages stopped being served; the gallery is closed.') ?? never,
    open.server?.lost.then(() => 'The database stopped; the gallery is closed.') ?? never,
  ]);
  // Ctrl-C reaches the pages at the same moment as us.
  if (how === 'asked' || signal.aborted) return 0;
  say(process.stderr, how);
  return 1;
}

function address({ host, port, isForLan }: Settings): string {
  const first = isForLan ? lanAddresses()[0] : undefined;
  return localUrl(first ?? host, port);
}

function lanAddresses(): string[] {
  const all = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  return all.filter((one) => one.family === 'IPv4' && !one.internal).map((one) => one.address);
}

async function tellHowToEnter(settings: Settings, databaseUrl: string): Promise<void> {
  const { host, port } = settings;
  say(process.stdout, `Kiln & Counter is open: ${localUrl(host, port)}`);
  if (host === '0.0.0.0') {
    for (const one of lanAddresses()) say(process.stdout, `On this network: http://${one}:${port}`);
  }
  if ((await isDemo(databaseUrl)) && existsSync(demoPeopleFile)) {
    say(process.stdout, 'This is the demo gallery. Sign in as one of these:');
    for (const one of people.parse(JSON.parse(readFileSync(demoPeopleFile, 'utf8')))) {
      say(
        process.stdout,
        `  ${one.signInName}, password ${one.password}: ${one.name}, ${one.role}`,
      );
    }
  }
  say(process.stdout, 'Ctrl-C closes it.');
}

function sayElsewhere(server: DatabaseServer, dataDir: string): void {
  say(
    process.stdout,
    `The database may not run as root and cannot enter ${dataDir}: its data are in ${server.folder}.`,
  );
}

function sentenceOf(error: unknown, { databaseUrl, dataDir }: Settings): string {
  const fault = asStartFault(error);
  // The steps that run before TypeScript can be run have only the name.
  if (fault instanceof Error && fault.name === StartFault.name) return fault.message;
  if (databaseUrl !== null) {
    const sentence = unreachable(error, new URL(databaseUrl));
    if (sentence !== null) return sentence;
  }
  const log = join(dataDir, 'last-fault.log');
  const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
  writeFileSync(log, `${words}\n`, { mode: 0o600 });
  const first = error instanceof Error ? error.message.split('\n')[0] : String(error);
  return `Kiln & Counter could not be opened: ${first ?? ''} (the whole of it is in ${log})`;
}

function unreachable(error: unknown, url: URL): string | null {
  const place = `${url.hostname}:${url.port || '5432'}`;
  const code = codeOf(error) ?? '';
  if (['28P01', '28000'].includes(code)) {
    return `The database at ${place} does not accept the account or password in DATABASE_URL.`;
  }
  if (code === '3D000') return `The database at ${place} has no “${url.pathname.slice(1)}”.`;
  const isSilent =
    /^(ECONN|ENOTFOUND|EAI_|ETIMEDOUT|EHOST|ENET)/.test(code) ||
    (error instanceof Error && /timeout|terminated/i.test(error.message));
  return isSilent ? `The database at ${place} does not answer (DATABASE_URL).` : null;
}

function say(stream: NodeJS.WriteStream, sentence: string): void {
  stream.write(`${sentence.split('\n').join(' ')}\n`);
}

process.exit(await main(settingsShape.parse(JSON.parse(process.argv[2] ?? '{}'))));
