import 'server-only';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** The blank stock list with a few rows to go by, as the bytes of a CSV. */
export async function readListTemplate(): Promise<Uint8Array<ArrayBuffer>> {
  return Uint8Array.from(await readFile(join(process.cwd(), 'seed/stock-list-template.csv')));
}
