import { createHash } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { keepFile } from '@/lib/files/writes';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { sql, startAfresh } from '../../helpers/database';

const at = new Date('2026-11-25T18:00:00Z');
const text = (words: string) => new TextEncoder().encode(words);

beforeEach(startAfresh);

async function keep(bytes: Uint8Array): Promise<{ id: string; sha256: string }> {
  const kept = await inTransaction(async (tx) =>
    ok(await keepFile(tx, { bytes, mediaType: 'image/webp', at })),
  );
  if (!kept.ok) throw new Error('Keeping is never refused.');
  return kept.value;
}

test('a file is named by its bytes', async () => {
  const bytes = text('heron at low water');
  const { sha256 } = await keep(bytes);
  expect(sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
});

test('the same bytes are kept once, also when they come at the same moment', async () => {
  const bytes = text('heron at low water');
  const kept = await Promise.all([keep(bytes), keep(bytes), keep(bytes)]);
  expect(new Set(kept.map((file) => file.id)).size).toBe(1);
  expect(await keep(bytes)).toEqual(kept[0]);
  expect(await sql('select count(*)::int as files from "StoredFile"')).toEqual([{ files: 1 }]);
});

test('the database itself refuses a file under another name than its bytes', async () => {
  const write = sql(
    `insert into "StoredFile" (id, sha256, "mediaType", "byteLength", bytes, "createdAt")
     values (gen_random_uuid(), repeat('0', 64), 'image/webp', 3, 'abc', now())`,
  );
  await expect(write).rejects.toThrow('file_is_named_by_its_bytes');
});

test.each(['update "StoredFile" set bytes = \'x\'', 'delete from "StoredFile"'])(
  'a kept file is never changed: %s',
  async (statement) => {
    await keep(text('heron at low water'));
    await expect(sql(statement)).rejects.toThrow('never_changed');
  },
);
