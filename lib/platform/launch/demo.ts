import 'server-only';
import { pathToFileURL } from 'node:url';
import pg from 'pg';
import { migrate } from '../db/migrate';
import { during, root, run, withParent } from './steps.mjs';

/** One number for "the demo gallery is being loaded", the same for every copy of the program. */
const loadLock = 7_311_964_204;
/** Kept as the schema's comment while the demo is coming in, so that it goes when the rows go. */
const unfinished = 'The demo gallery is still being loaded';

/** Which database, whether it is to stay empty, and the way to be told to stop. */
export type Loading = { databaseUrl: string; isEmpty: boolean; signal: AbortSignal };

/**
 * Brings the database to this version, and hangs the demo gallery in it when nobody works there
 * yet.
 *
 * A load that was killed is noticed by its mark and begun again from empty; an empty gallery that
 * was asked for stays empty.
 */
export async function readyData(loading: Loading): Promise<void> {
  const session = new pg.Client({ connectionString: loading.databaseUrl });
  session.on('error', () => undefined);
  await session.connect();
  try {
    await session.query('select pg_advisory_lock($1)', [loadLock]);
    if (await isUnfinished(session)) await startOver(session);
    await during('Bringing the database up to date', () => migrate(loading.databaseUrl));
    if (!loading.isEmpty && (await hasNobody(session))) await loadDemo(session, loading);
  } finally {
    await session.end();
  }
}

async function isUnfinished(session: pg.Client): Promise<boolean> {
  const found = await session.query<{ mark: string | null }>(
    "select obj_description(to_regnamespace('public'), 'pg_namespace') as mark",
  );
  return found.rows[0]?.mark === unfinished;
}

async function startOver(session: pg.Client): Promise<void> {
  await session.query('drop schema public cascade; create schema public');
}

async function hasNobody(session: pg.Client): Promise<boolean> {
  const found = await session.query<{ some: boolean }>(
    'select exists (select 1 from public."Staff") as some',
  );
  return found.rows[0]?.some !== true;
}

async function loadDemo(session: pg.Client, { databaseUrl, signal }: Loading): Promise<void> {
  await session.query(`comment on schema public is '${unfinished}'`);
  await during('Hanging the demo gallery', async (say) => {
    const script =
      `const { loadDemoGallery } = await import(${JSON.stringify(loadFile)});` +
      `await loadDemoGallery((sentence) => console.log(sentence)); process.exit(0);`;
    const words = ['--conditions=react-server', '--import', 'tsx', ...withParent];
    await run(process.execPath, [...words, '--input-type=module', '--eval', script], {
      fails: 'The demo gallery could not be hung',
      signal,
      env: { DATABASE_URL: databaseUrl },
      hear: (chunk) => say(chunk.trim().split('\n').at(-1) ?? ''),
    });
  });
  await session.query('comment on schema public is null');
}

/** True when the rows are the demo gallery's, whose names and passwords may be shown. */
export async function isDemo(databaseUrl: string): Promise<boolean> {
  const session = new pg.Client({ connectionString: databaseUrl });
  await session.connect();
  try {
    const found = await session.query<{ demo: boolean }>(
      'select exists (select 1 from public."Gallery" where "isDemo") as demo',
    );
    return found.rows[0]?.demo === true;
  } finally {
    await session.end();
  }
}

const loadFile = pathToFileURL(`${root}/seed/load.ts`).href;

/** Absolute path of the list of people who work in the demo gallery. */
export const demoPeopleFile = `${root}/seed/people.json`;
