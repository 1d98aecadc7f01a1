import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { colourTileContent, sketchContent } from '@/lib/commissions/rules/content';
import { sha256Of } from '@/lib/commissions/reads/content';
import { inSession } from '@/tests/helpers/database';

const folder = join(import.meta.dirname, '../../../prisma/migrations');
const before = ['20261125092931_what_the_gallery_keeps', '20261125130642_counter_and_stockroom'];
const contents = '20261127181440_commission_from_first_to_last';

const id = (tail: number) => `0190aaaa-0000-7000-8000-${String(tail).padStart(12, '0')}`;
const bytes = Buffer.from('a picture of herons');
const sha = createHash('sha256').update(bytes).digest('hex');
const note = 'Two herons, “wading”; the left one looks back.\nScale 1 : 10';
const glazes = 'celadon × 3 over iron slip, cone 6';

const rows = `
  INSERT INTO "Staff" (id, name, "signInName", "passwordHash", roles, "createdAt")
    VALUES ('${id(1)}', 'M', 'm', '$argon2id$x', '{owner}', now());
  INSERT INTO "Collector" (id, name, "createdAt") VALUES ('${id(2)}', 'Marit Oland', now());
  INSERT INTO "Commission" (id, "collectorId", title, "askedAt", "askedOn", "takenById")
    VALUES ('${id(3)}', '${id(2)}', 'Herons', now(), now(), '${id(1)}');
  INSERT INTO "StoredFile" (id, sha256, "mediaType", "byteLength", bytes, "createdAt")
    VALUES ('${id(4)}', '${sha}', 'image/webp', ${bytes.length}, '\\x${bytes.toString('hex')}', now());
  INSERT INTO "Sketch" (id, "commissionId", letter, "fileId", "fileSha256", note, "shownOn", at)
    VALUES ('${id(5)}', '${id(3)}', 'A', '${id(4)}', '${sha}', $note$${note}$note$, now(), now());
  INSERT INTO "ColourTile" (id, "commissionId", number, glazes, "fileId", "fileSha256", "shownOn", at)
    VALUES ('${id(6)}', '${id(3)}', 12, '${glazes}', '${id(4)}', '${sha}', now(), now());
  INSERT INTO "Approval" (id, "commissionId", "sketchId", "fileSha256", "approvedBy", how, "approvedOn", "recordedById", at)
    VALUES ('${id(7)}', '${id(3)}', '${id(5)}', '${sha}', 'Marit Oland', 'in_person', now(), '${id(1)}', now());
  INSERT INTO "Approval" (id, "commissionId", "colourTileId", "fileSha256", "approvedBy", how, "approvedOn", "recordedById", at)
    VALUES ('${id(8)}', '${id(3)}', '${id(6)}', '${sha}', 'Marit Oland', 'in_person', now(), '${id(1)}', now());`;

const read = (name: string) => readFileSync(join(folder, name, 'migration.sql'), 'utf8');

test('what was approved before is still approved, now under the hash of its whole content', async () => {
  await inSession(async (session) => {
    await session.query('drop schema public cascade; create schema public');
    for (const name of before) await session.query(read(name));
    await session.query(rows);
    await session.query(read(contents));
    const kept = await session.query<{ sketch: string | null; tile: string | null; yes: string }>(
      `select sketch."contentSha256" as sketch, tile."contentSha256" as tile, yes."contentSha256" as yes
       from "Approval" yes left join "Sketch" sketch on sketch.id = yes."sketchId"
       left join "ColourTile" tile on tile.id = yes."colourTileId" order by yes.id`,
    );
    const sketch = sha256Of(
      sketchContent({ letter: 'A', fileSha256: sha, note, scale: '', areas: [] }),
    );
    const bare = { body: '', coats: null, cone: '', firing: '', areas: [], shades: [] };
    const tile = sha256Of(colourTileContent({ ...bare, number: 12, fileSha256: sha, glazes }));
    expect(kept.rows).toEqual([
      { sketch, tile: null, yes: sketch },
      { sketch: null, tile, yes: tile },
    ]);
  });
});
