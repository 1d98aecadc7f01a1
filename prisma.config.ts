import { defineConfig } from 'prisma/config';

// Only `prisma generate` reads this file. Migrations are made and applied by
// lib/platform/db/migrate.ts, which needs no downloaded engine.
export default defineConfig({ schema: 'prisma', migrations: { path: 'prisma/migrations' } });
