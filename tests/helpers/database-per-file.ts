import { afterAll } from 'vitest';
import { dropDatabase, makeDatabase } from './database';

// Set before any test file is imported, hence before lib/platform/db/client.ts can read it.
process.env['DATABASE_URL'] = await makeDatabase();

afterAll(dropDatabase);
