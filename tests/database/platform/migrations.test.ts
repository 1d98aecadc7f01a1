import { expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { migrate, migrationDrift, migrationNames } from '@/lib/platform/db/migrate';
import { databaseUrl, inSession, sql, startAfresh } from '../../helpers/database';

test('a migrated database is exactly what the models say', async () => {
  expect(await migrationDrift(databaseUrl())).toBe('');
});

test('a table that no model knows is told as a difference', async () => {
  await sql('create table stray (id int primary key)');
  expect(await migrationDrift(databaseUrl())).toContain('DROP TABLE "stray"');
  await startAfresh();
  expect(await migrationDrift(databaseUrl())).toBe('');
});

test('the ordinary table of migrations names each of them once, finished', async () => {
  const rows = await sql<{ name: string; steps: number }>(
    'select migration_name as name, applied_steps_count as steps from _prisma_migrations ' +
      'where finished_at is not null order by migration_name',
  );
  expect(rows.map((row) => row.name)).toEqual(migrationNames());
  expect(rows.every((row) => row.steps === 1)).toBe(true);
});

test('migrating twice changes nothing the second time, also two at once', async () => {
  await sql('drop schema public cascade');
  await sql('create schema public');
  const both = await Promise.all([migrate(databaseUrl()), migrate(databaseUrl())]);
  expect(both.flat().sort()).toEqual(migrationNames());
  expect(await migrate(databaseUrl())).toEqual([]);
});

test('data of a newer version are refused and left alone', async () => {
  await inSession(async (session) => {
    await session.query(
      `insert into _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
       values ('later', 'x', '29990101000000_from_the_future', now(), 1)`,
    );
  });
  await expect(migrate(databaseUrl())).rejects.toThrow(/newer version .*from_the_future/);
  await startAfresh();
  expect(await migrate(databaseUrl())).toEqual([]);
});

test('the client of the product works on this file’s own database', async () => {
  const [row] = await db().$queryRaw<{ name: string }[]>`select current_database() as name`;
  expect(new URL(databaseUrl()).pathname).toBe(`/${row?.name ?? ''}`);
});

test('the gallery’s own account is no superuser', async () => {
  const rows = await sql<{ super: boolean }>(
    'select rolsuper as super from pg_roles where rolname = current_user',
  );
  expect(rows).toEqual([{ super: false }]);
});
