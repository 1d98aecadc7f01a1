import { startServer } from '@/lib/platform/db/server';
import { readyDataFolder } from '@/lib/platform/db/server-keys';
import { readyData } from '@/lib/platform/launch/demo';

// Hangs the demo gallery in the data folder that is named, as npm start does, and closes it again.

const [, , dataDir = ''] = process.argv;
readyDataFolder(dataDir);
const server = await startServer(dataDir);
try {
  const { signal } = new AbortController();
  await readyData({ databaseUrl: server.url(), isEmpty: false, signal });
} finally {
  await server.stop();
}
process.exit(0);
