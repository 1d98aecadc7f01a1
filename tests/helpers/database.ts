import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { inject } from 'vitest';
import { db } from '@/lib/platform/db/client';

/**
 * Every test file of the project `database` has a database of its own, cloned from one migrated
 * template, and `db()` of lib/platform/db/client.ts is pointed at it. A test that wants an
 * untouched one asks for {@link startAfresh}.
 */
const own = `t_${randomUUID().replaceAll('-', '')}`;

/** Address of this file's database. */
export function databaseUrl(): string {
  return urlOf(own);
}

/** Puts this file's database back to the freshly migrated state (about a tenth of a second). */
export async function startAfresh(): Promise<void> {
  await dropDatabase();
  await makeDatabase();
}

/**
 * One statement in a session of its own, by plain SQL: an independent look at what was written,
 * or a knock at a constraint.
 */
export async function sql<Row extends pg.QueryResultRow>(
  statement: string,
  values: unknown[] = [],
): Promise<Row[]> {
  return inSession(async (session) => (await session.query<Row>(statement, values)).rows);
}

/** A session of its own, for as long as the work takes: to hold a lock, or to be a second till. */
export async function inSession<Answer>(
  work: (session: pg.Client) => Promise<Answer>,
): Promise<Answer> {
  return connected(databaseUrl(), work);
}

/** Makes this file's database from the template; called once before the file is read. */
export async function makeDatabase(): Promise<string> {
  await connected(urlOf('postgres'), (session) =>
    session.query(`create database ${own} template ${templateName()}`),
  );
  return databaseUrl();
}

/** Lets go of this file's database; called once after its last test. */
export async function dropDatabase(): Promise<void> {
  await db().$disconnect();
  for (let triesLeft = 20; ; triesLeft -= 1) {
    try {
      return await dropOnce();
    } catch (error) {
      // PostgreSQL's own cleaning may be at work in it, and that is not ours to end: it is short.
      const isCleaned = error instanceof pg.DatabaseError && error.code === '42501';
      if (!isCleaned || triesLeft === 0) throw error;
      await pause(100);
    }
  }
}

async function dropOnce(): Promise<void> {
  await connected(urlOf('postgres'), (session) =>
    session.query(`drop database if exists ${own} with (force)`),
  );
}

async function connected<Answer>(
  url: string,
  work: (session: pg.Client) => Promise<Answer>,
): Promise<Answer> {
  const session = new pg.Client({ connectionString: url });
  await session.connect();
  try {
    return await work(session);
  } finally {
    await session.end();
  }
}

function templateName(): string {
  return new URL(inject('templateUrl')).pathname.slice(1);
}

function urlOf(database: string): string {
  const url = new URL(inject('templateUrl'));
  url.pathname = `/${database}`;
  return url.href;
}
