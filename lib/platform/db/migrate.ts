import 'server-only';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import type { MigrationList, SchemasContainer } from '@prisma/schema-engine-wasm/schema_engine_bg';
import pg from 'pg';
import { openEngine, type Connection, type Engine } from './engine';
import { StartFault } from './server-fault';

const root = resolve(import.meta.dirname, '../../..');
const migrationsFolder = join(root, 'prisma/migrations');
/** One number for "migrations are being applied", the same for every copy of the program. */
const migrationLock = 7_311_964_203;
const everything = { externalTables: [], externalEnums: [] };

/**
 * Brings a database to the state of this version.
 *
 * Each migration is applied by the official engine in one transaction together with its line in
 * `_prisma_migrations`, under a lock: a start killed half-way leaves a whole number of them, and
 * two at once apply each of them once.
 *
 * @returns the names that were applied now, oldest first
 * @throws StartFault when the data are of a newer version (nothing is touched), or a migration
 *         does not go through (it is undone)
 */
export async function migrate(databaseUrl: string): Promise<string[]> {
  return withOneConnection(databaseUrl, async (connection) => {
    await connection.client.query('select pg_advisory_lock($1)', [migrationLock]);
    const names = migrationNames();
    const applied = await appliedNames(connection.client);
    assertNotNewer(applied, names);
    const pending = names.filter((name) => !applied.includes(name));
    for (const name of pending) await applyOne(connection, name, names);
    return pending;
  });
}

/**
 * The SQL that would still be needed to make a migrated database look like the models.
 *
 * @returns '' when the two agree
 */
export async function migrationDrift(databaseUrl: string): Promise<string> {
  return withOneConnection(databaseUrl, async (connection) => {
    const { engine, complaint } = await openEngine(connection);
    const models = readModels();
    const told = await engine
      .diff({
        from: { tag: 'schemaDatasource', ...models, configDir: join(root, 'prisma') },
        to: { tag: 'schemaDatamodel', ...models },
        script: true,
        exitCode: null,
        filters: everything,
      })
      .catch((error: unknown) => {
        throw complaint() ?? error;
      });
    const sql = told.stdout?.trim() ?? '';
    return sql === '-- This is an empty migration.' ? '' : sql;
  });
}

/** The migrations that this version knows, oldest first. */
export function migrationNames(): string[] {
  return readdirSync(migrationsFolder)
    .filter((name) => statSync(join(migrationsFolder, name)).isDirectory())
    .sort();
}

async function applyOne(
  connection: Connection,
  name: string,
  names: readonly string[],
): Promise<void> {
  const { client } = connection;
  await client.query('begin');
  let opened: Engine | null = null;
  try {
    opened = await openEngine(connection);
    const upToHere = names.slice(0, names.indexOf(name) + 1);
    const done = await opened.engine.applyMigrations({
      migrationsList: listOf(upToHere),
      filters: everything,
    });
    if (done.appliedMigrationNames.join() !== name) {
      throw new Error(`The engine applied [${done.appliedMigrationNames.join(', ')}].`);
    }
    await client.query('commit');
  } catch (error) {
    await client.query('rollback');
    const reason = opened?.complaint() ?? error;
    const words = reason instanceof Error ? reason.message : String(reason);
    throw new StartFault(`The change ${name} of the database did not go through: ${words}`, {
      cause: reason,
    });
  } finally {
    opened?.engine.free();
  }
}

async function appliedNames(client: pg.PoolClient): Promise<string[]> {
  const table = await client.query("select to_regclass('public._prisma_migrations') as found");
  const found: unknown = table.rows[0];
  if (JSON.stringify(found) === '{"found":null}') return [];
  const rows = await client.query<{ name: string }>(
    'select migration_name as name from public._prisma_migrations ' +
      'where rolled_back_at is null and finished_at is not null order by started_at',
  );
  return rows.rows.map((row) => row.name);
}

function assertNotNewer(applied: readonly string[], known: readonly string[]): void {
  const unknown = applied.find((name) => !known.includes(name));
  if (unknown === undefined) return;
  throw new StartFault(
    `These data were last used by a newer version of Kiln & Counter (${unknown}). ` +
      'Nothing was changed; start them with that version.',
  );
}

function listOf(names: readonly string[]): MigrationList {
  return {
    baseDir: migrationsFolder,
    lockfile: { path: './migration_lock.toml', content: 'provider = "postgresql"\n' },
    shadowDbInitScript: '',
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: {
          tag: 'ok',
          value: readFileSync(join(migrationsFolder, name, 'migration.sql'), 'utf8'),
        },
      },
    })),
  };
}

function readModels(): SchemasContainer {
  const folder = join(root, 'prisma');
  const files = readdirSync(folder).filter((name) => name.endsWith('.prisma'));
  return {
    files: files.sort().map((name) => ({
      path: relative(root, join(folder, name)),
      content: readFileSync(join(folder, name), 'utf8'),
    })),
  };
}

async function withOneConnection<Answer>(
  databaseUrl: string,
  work: (connection: Connection) => Promise<Answer>,
): Promise<Answer> {
  const pool = new pg.Pool({
    connectionString: databaseUrl,
    max: 1,
    connectionTimeoutMillis: 10_000,
  });
  pool.on('error', () => undefined);
  try {
    const client = await pool.connect();
    try {
      return await work({ pool, client });
    } finally {
      // Closed, not kept: the lock and anything unfinished go with it.
      client.release(true);
    }
  } finally {
    await pool.end();
  }
}
