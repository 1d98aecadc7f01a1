import 'server-only';
import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient } from '@/generated/prisma/client';
import { readEnvironment } from '../env';

const kept = globalThis as typeof globalThis & { kilnAndCounterDb?: PrismaClient };

/** The one client of this process; made when it is first asked for. */
export function db(): PrismaClient {
  kept.kilnAndCounterDb ??= openClient();
  return kept.kilnAndCounterDb;
}

function openClient(): PrismaClient {
  const environment = readEnvironment();
  const adapter = new PrismaPg({
    connectionString: environment.DATABASE_URL,
    max: environment.DATABASE_POOL,
    connectionTimeoutMillis: 10_000,
  });
  // Prisma keeps the plan of each raw statement together with its parameters; a long stock list
  // would otherwise stay in memory for good.
  return new PrismaClient({ adapter, queryPlanCacheMaxSize: 100 });
}
