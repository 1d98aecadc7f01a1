import 'server-only';
import { randomBytes } from 'node:crypto';
import {
  existsSync,
  linkSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { StartFault } from './server-fault';

const keys = z.object({
  databaseOwnerPassword: z.string().min(20),
  databasePassword: z.string().min(20),
  signInSecret: z.string().min(32),
  formKey: z.string().min(40),
});
const note = z.object({ folder: z.string(), port: z.number().int().min(1).max(65_535) });

/** What a gallery's data folder keeps secret; made once, readable by its owner alone. */
export type Keys = z.infer<typeof keys>;

/** Where the cluster lies and the port it was last given: `database.json` in the data folder. */
export type DatabaseNote = z.infer<typeof note>;

/**
 * Makes the data folder if need be.
 *
 * @throws Error EACCES and the like, when it cannot be made or written
 */
export function readyDataFolder(dataDir: string): void {
  // Root lends the database an account of its own, which has to pass through; secrets are 0600.
  makeFolder(dataDir, process.getuid?.() === 0 ? 0o711 : 0o700);
  const probe = join(dataDir, `.probe-${process.pid}`);
  writeFileSync(probe, '');
  rmSync(probe);
}

/** One by one: Node's own way of making them all at once never ends where a system makes none. */
function makeFolder(folder: string, mode: number): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder), 0o755);
  try {
    mkdirSync(folder, { mode });
  } catch (error) {
    if (!existsSync(folder)) throw error;
  }
}

/**
 * The secrets of this data folder; makes them the first time.
 *
 * Two starts at the same moment agree: the file appears whole, once, and both read it.
 */
export function readKeys(dataDir: string): Keys {
  const file = join(dataDir, 'keys.json');
  if (!existsSync(file)) {
    const made: Keys = {
      databaseOwnerPassword: randomBytes(24).toString('hex'),
      databasePassword: randomBytes(24).toString('hex'),
      signInSecret: randomBytes(32).toString('base64'),
      formKey: randomBytes(32).toString('base64'),
    };
    const draft = join(dataDir, `.keys-${process.pid}`);
    writeFileSync(draft, `${JSON.stringify(made, null, 2)}\n`, { mode: 0o600 });
    publish(draft, file);
  }
  return parseFile(file, keys);
}

/** Reads the note; null when no database was made here yet. */
export function readNote(dataDir: string): DatabaseNote | null {
  const file = join(dataDir, 'database.json');
  return existsSync(file) ? parseFile(file, note) : null;
}

/** Writes the note, whole or not at all. */
export function writeNote(dataDir: string, kept: DatabaseNote): void {
  const draft = join(dataDir, `.database-${process.pid}`);
  writeFileSync(draft, `${JSON.stringify(kept, null, 2)}\n`, { mode: 0o600 });
  renameSync(draft, join(dataDir, 'database.json'));
}

function publish(draft: string, file: string): void {
  try {
    linkSync(draft, file);
  } catch (error) {
    if (!existsSync(file)) throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}

function parseFile<Kept>(file: string, shape: z.ZodType<Kept>): Kept {
  try {
    return shape.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch (error) {
    if (error instanceof Error && 'code' in error) throw error;
    throw new StartFault(`${file} cannot be read: it is damaged. Put it back from a backup.`);
  }
}
