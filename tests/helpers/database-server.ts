import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { migrate } from '@/lib/platform/db/migrate';
import { startServer } from '@/lib/platform/db/server';
import { quickFolder } from './quick-folder';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the migrated template database; nobody may stay connected to it. */
    templateUrl: string;
  }
}

/** One real server for the whole run; its one database becomes the template of all others. */
export default async function startDatabaseServer(project: TestProject) {
  const folder = mkdtempSync(join(quickFolder(), 'kiln-tests-'));
  // As root, the account that runs the database has to pass through.
  chmodSync(folder, 0o711);
  const server = await startServer(folder, 'throwaway');
  await migrate(server.url());
  project.provide('templateUrl', server.url());
  return async () => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  };
}
