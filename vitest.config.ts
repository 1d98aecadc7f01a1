import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

// pure: no disk, no network, no database. database: real PostgreSQL, one database per file.
// browser: the product as it is started for a person. outside: HTTP and files, none of our code.
export default defineConfig({
  resolve: {
    alias: [
      { find: /^@\//, replacement: here('./') },
      { find: 'server-only', replacement: here('./tests/helpers/empty.ts') },
    ],
  },
  test: {
    environment: 'node',
    pool: 'forks',
    maxWorkers: 2,
    passWithNoTests: false,
    allowOnly: false,
    restoreMocks: true,
    projects: [
      {
        extends: true,
        test: {
          name: 'pure',
          include: [
            'tests/rules/**/*.test.ts',
            'tests/published/**/*.test.ts',
            'tests/properties/*.test.ts',
            'tests/security/*.test.ts',
          ],
          testTimeout: 20_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'database',
          include: [
            'tests/database/**/*.test.ts',
            'tests/properties/database/**/*.test.ts',
            'tests/faults/**/*.test.ts',
          ],
          globalSetup: 'tests/helpers/database-server.ts',
          setupFiles: 'tests/helpers/database-per-file.ts',
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts', 'tests/browser/**/*.spec.ts'],
          globalSetup: 'tests/helpers/product-server.ts',
          // One gallery, one till: stories follow each other.
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'outside',
          include: ['tests/outside/**/*.test.ts'],
          globalSetup: 'tests/helpers/product-server.ts',
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
