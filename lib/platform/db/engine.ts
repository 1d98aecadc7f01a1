import 'server-only';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { PrismaPg } from '@prisma/adapter-pg';
import { ColumnTypeEnum, bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import type { SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';
import type { SchemaEngine } from '@prisma/schema-engine-wasm/schema_engine_bg';
import type pg from 'pg';

/** A pool, and the one client of it that everything is sent through. */
export type Connection = { pool: pg.Pool; client: pg.PoolClient };

/** The official schema engine, and the last thing PostgreSQL itself complained about. */
export type Engine = { engine: SchemaEngine; complaint: () => Error | null };

let isLoaded: Promise<void> | null = null;

/**
 * Opens the schema engine on a connection.
 *
 * @param connection the engine does everything on it, so that a transaction begun there holds all
 */
export async function openEngine(connection: Connection): Promise<Engine> {
  isLoaded ??= load();
  await isLoaded;
  let complaint: Error | null = null;
  // Where the engine leaves word of a panic.
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: {
      set_message: (words: string) => {
        complaint ??= new Error(words);
      },
    },
  });
  const hear = (error: unknown): never => {
    complaint ??= error instanceof Error ? error : new Error(String(error));
    throw error;
  };
  const factory = bindMigrationAwareSqlAdapterFactory(readyAdapter(connection, hear));
  const engine = await bindings.SchemaEngine.new(
    { datamodels: undefined },
    () => undefined,
    factory,
  );
  return { engine, complaint: () => complaint };
}

/** The package's own entry leaves the instantiation to a bundler; in Node it is done by hand. */
async function load(): Promise<void> {
  const entry = createRequire(import.meta.url).resolve(
    '@prisma/schema-engine-wasm/schema_engine_bg',
  );
  const bytes = await readFile(join(dirname(entry), 'schema_engine_bg.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, {
    './schema_engine_bg.js': { ...bindings, ...quietTimers() },
  });
  bindings.__wbg_set_wasm(instance.exports);
  const begin = instance.exports['__wbindgen_start'];
  if (typeof begin === 'function') Reflect.apply(begin, undefined, []);
}

/** The engine never clears the timer of its own lock, which would hold a process for 10 seconds. */
function quietTimers(): WebAssembly.ModuleImports {
  const names = Object.keys(bindings).filter((name) => name.startsWith('__wbg_setTimeout_'));
  const start = (work: () => void, afterMs: number) => setTimeout(work, afterMs >>> 0).unref();
  return Object.fromEntries(names.map((name) => [name, start]));
}

/**
 * The stock adapter, put right in two places. It cuts a script at every semicolon, which tears
 * functions apart, while PostgreSQL takes a whole script as it is. And it does not know the
 * one-byte type "char" of PostgreSQL's catalogue, which the engine reads.
 */
function readyAdapter(
  connection: Connection,
  hear: (error: unknown) => never,
): SqlMigrationAwareDriverAdapterFactory {
  const oneByteColumns = new Set<number>();
  const stock = new PrismaPg(throughOneClient(connection, oneByteColumns), { schema: 'public' });
  const connect = async () => {
    const adapter = await stock.connect();
    const ask = adapter.queryRaw.bind(adapter);
    adapter.queryRaw = async (query) => {
      const answer = await ask(query).catch(hear);
      const columnTypes = answer.columnTypes.map((type, column) =>
        oneByteColumns.has(column) ? ColumnTypeEnum.Character : type,
      );
      return { ...answer, columnTypes };
    };
    adapter.executeScript = async (script) => {
      await connection.client.query(script).catch(hear);
    };
    return adapter;
  };
  const { provider, adapterName } = stock;
  return { provider, adapterName, connect, connectToShadowDb: () => stock.connectToShadowDb() };
}

type Send = (this: pg.PoolClient, ...words: unknown[]) => Promise<pg.QueryResult>;

const oneByteOid = 18;
const textOid = 25;

/** A pool whose every query goes through its one client, and which notes one-byte columns. */
function throughOneClient({ pool, client }: Connection, oneByteColumns: Set<number>): pg.Pool {
  const send = client.query.bind(client) as Send;
  const query = async (...words: unknown[]) => {
    const answer = await Reflect.apply(send, client, words);
    oneByteColumns.clear();
    for (const [column, field] of answer.fields.entries()) {
      if (field.dataTypeID !== oneByteOid) continue;
      oneByteColumns.add(column);
      field.dataTypeID = textOid;
    }
    return answer;
  };
  return new Proxy(pool, {
    get(target, key): unknown {
      const part: unknown = key === 'query' ? query : Reflect.get(target, key, target);
      return part instanceof Function ? part.bind(target) : part;
    },
  });
}
