import 'server-only';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { now } from '@/lib/platform/clock';
import { migrate, migrationDrift } from './migrate';
import { startServer } from './server';

// npm run migration -- add-frames
// Writes what the models have and a freshly migrated database has not. Constraints, triggers and
// checks that Prisma cannot express are then written under it by hand.

const folder = resolve(import.meta.dirname, '../../../prisma/migrations');

async function writeMigration(name: string): Promise<string> {
  const scratch = mkdtempSync(join(tmpdir(), 'kiln-migration-'));
  // As root, the account that runs the database has to pass through.
  chmodSync(scratch, 0o711);
  const server = await startServer(scratch, 'throwaway');
  try {
    await migrate(server.url());
    const sql = await migrationDrift(server.url());
    return writeFolder(name, sql === '' ? '-- Written by hand.' : sql);
  } finally {
    await server.stop();
    rmSync(scratch, { recursive: true, force: true });
  }
}

function writeFolder(name: string, sql: string): string {
  const stamp = now().toISOString().replace(/\D/g, '').slice(0, 14);
  const made = join(folder, `${stamp}_${name}`);
  mkdirSync(made, { recursive: true });
  writeFileSync(join(made, 'migration.sql'), `${sql}\n`);
  const lock = join(folder, 'migration_lock.toml');
  if (!existsSync(lock)) writeFileSync(lock, 'provider = "postgresql"\n');
  return join(made, 'migration.sql');
}

const name = process.argv[2]?.toLowerCase().replace(/[^a-z0-9]+/g, '_') ?? '';
if (name === '') {
  process.stderr.write('Give the migration a name: npm run migration -- add-frames\n');
  process.exitCode = 2;
} else {
  process.stdout.write(`${await writeMigration(name)}\n`);
}
