import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { quickFolder } from './quick-folder';
import { freePort, startProduct } from './server';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the demo gallery is open, without a slash at the end. */
    baseUrl: string;
    /** Its data folder, for a look at what was written. */
    dataDir: string;
  }
}

/**
 * The product as a person starts it: real launcher, production build, demo gallery. In a whole run of
 * the tests the gallery was hung before, and DEMO_GALLERY says where: two years of trade take time.
 */
export default async function startDemo(project: TestProject) {
  const dataDir = mkdtempSync(join(quickFolder(), 'kiln-product-'));
  // As root, the account that runs the database has to pass through.
  chmodSync(dataDir, 0o711);
  const hung = process.env['DEMO_GALLERY'];
  // With whoever owns each file: the database minds.
  if (hung) execFileSync('cp', ['-a', `${hung}/.`, dataDir]);
  const product = await startProduct({ dataDir, port: await freePort() });
  project.provide('baseUrl', product.url);
  project.provide('dataDir', dataDir);
  return async () => {
    await product.end();
    rmSync(dataDir, { recursive: true, force: true });
  };
}
