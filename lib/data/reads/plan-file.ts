import 'server-only';
import { createHash } from 'node:crypto';
import type { Prisma } from '@/generated/prisma/client';
import { dayOf } from '@/lib/dates/rules';
import { ok, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { headingOf } from '../rules/columns';
import {
  peopleColumns,
  planPeople,
  readPerson,
  type PersonRead,
  type PlannedPerson,
} from '../rules/people';
import { countLines, type FileKind, type LoadCounts } from '../rules/plan';
import type { FileRefusal } from '../rules/refusals';
import { planSales, type PlannedSale } from '../rules/sales';
import { salesColumns } from '../rules/sales-file';
import { readSales } from '../rules/sales-read';
import { readCsvFile, type CsvFile } from './csv-file';
import { readKeysGone, readKnownForSales, readPeople } from './known';

/** What a file would do, as things are now. */
export type FilePlan = {
  counts: LoadCounts;
  /** The same for the same plan and for no other, so that what is confirmed is what was shown. */
  planSha256: string;
  passedOver: readonly string[];
} & ({ kind: 'people'; plan: PlannedPerson[] } | { kind: 'sales'; plan: PlannedSale[] });

/**
 * Reads a file and says what each of its lines would do.
 *
 * @returns refuses what {@link readCsvFile} refuses, and a heading without what is needed
 */
export async function planFile(
  from: Prisma.TransactionClient,
  of: { kind: FileKind; bytes: Uint8Array; now: Date },
): Promise<Result<FilePlan, FileRefusal>> {
  const file = await readCsvFile(of.bytes);
  if (!file.ok) return file;
  return of.kind === 'people'
    ? planOfPeople(from, file.value)
    : planOfSales(from, file.value, of.now);
}

async function planOfPeople(
  from: Prisma.TransactionClient,
  file: CsvFile,
): Promise<Result<FilePlan, FileRefusal>> {
  const heading = headingOf(file.heading, peopleColumns, ['name']);
  if (!heading.ok) return heading;
  const read = file.lines.map((line) => readPerson(heading.value, line));
  const gone = await readKeysGone(from);
  const asKept = read.map((row) => underKeptKey(row, gone));
  const plan = planPeople(asKept, await readPeople(from));
  const { passedOver } = heading.value;
  const facts = { counts: countLines(plan), planSha256: hashOf(plan), passedOver };
  return ok({ kind: 'people', plan, ...facts });
}

/** A row of somebody under the key by which they are looked up now. */
function underKeptKey(row: PersonRead, gone: ReadonlyMap<string, string | null>): PersonRead {
  const under = row.key === null ? undefined : gone.get(row.key);
  if (under === undefined) return row;
  if (under !== null) return { ...row, key: under };
  const sentence = 'They asked to be struck out. Take this line out of the file.';
  return { ...row, faults: [...row.faults, { column: 'key', sentence }] };
}

async function planOfSales(
  from: Prisma.TransactionClient,
  file: CsvFile,
  now: Date,
): Promise<Result<FilePlan, FileRefusal>> {
  const heading = headingOf(file.heading, salesColumns, ['tenders']);
  if (!heading.ok) return heading;
  const gallery = await getGallery(from);
  const { timeZone: zone } = gallery;
  const read = readSales(heading.value, file.lines, { zone, now });
  const known = await readKnownForSales(from, read, { gallery, todayOn: dayOf(now, zone) });
  const plan = planSales(read, known);
  const { passedOver } = heading.value;
  const facts = { counts: countLines(plan), planSha256: hashOf(plan), passedOver };
  return ok({ kind: 'sales', plan, ...facts });
}

function hashOf(plan: readonly (PlannedPerson | PlannedSale)[]): string {
  const hash = createHash('sha256');
  for (const row of plan) hash.update(`${JSON.stringify(row, plainOf)}\n`);
  return hash.digest('hex');
}

/** How many of a SKU are here changes with every sale and does not matter to the plan. */
function plainOf(key: string, value: unknown): unknown {
  if (typeof value === 'bigint') return `${value}`;
  return key === 'onHand' || key === 'numbersHere' ? undefined : value;
}
