import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { beforeEach, describe, expect, test } from 'vitest';
import { findLoad, listLoads } from '@/lib/data/reads';
import { askToStop, lookAtFile } from '@/lib/data/writes';
import { carryLoad } from '@/lib/data/writes/carry-load';
import { db } from '@/lib/platform/db/client';
import { databaseUrl, sql, startAfresh } from '../../helpers/database';
import { aGallery, type TestGallery } from '../stock/a-gallery';
import { begun, broughtIn, bytesOf, manyPeople } from './a-load';

let gallery: TestGallery;

beforeEach(async () => {
  await startAfresh();
  gallery = await aGallery();
});

const people = () => sql<{ count: number }>('select count(*)::int as count from "Collector"');
const later = (seconds: number) => new Date(Date.now() + seconds * 1_000);
const aKey = () => crypto.randomUUID();

/** Waits until a file under way has brought in its first batch. */
async function underWay(loadId: string): Promise<void> {
  for (;;) {
    const where = { id: loadId };
    const load = await db().dataLoad.findUnique({ where, select: { rowsDone: true } });
    if ((load?.rowsDone ?? 0) > 0) return;
    await pause(5);
  }
}

test('ten thousand people are brought in whole, each with its line in the audit', async () => {
  const brought = await broughtIn(gallery.owner, 'people', manyPeople(10_000));
  expect(brought).toMatchObject({ ok: true, value: { newLines: 10_000 } });
  expect(await people()).toEqual([{ count: 10_000 }]);
  const told = await sql(`select 1 from "AuditLine" where did = 'brought in a collector'`);
  expect(told).toHaveLength(10_000);
}, 120_000);

test('the same file again changes nothing', async () => {
  await broughtIn(gallery.owner, 'people', manyPeople(3));
  const again = await broughtIn(gallery.owner, 'people', manyPeople(3));
  expect(again).toMatchObject({ refusal: { code: 'nothing_to_do' } });
});

test('the same yes twice brings it in once', async () => {
  const agreed = await begun(gallery.owner, 'people', manyPeople(300));
  const [first, second] = [
    await carryLoad(gallery.owner, agreed),
    await carryLoad(gallery.owner, agreed),
  ];
  expect(second).toEqual(first);
  expect(await people()).toEqual([{ count: 300 }]);
});

test('two at once bring it in once', async () => {
  const agreed = await begun(gallery.owner, 'people', manyPeople(300));
  const both = await Promise.all([
    carryLoad(gallery.owner, agreed),
    carryLoad(gallery.owner, agreed),
  ]);
  expect(both.map((each) => each.ok)).toEqual([true, true]);
  expect(await people()).toEqual([{ count: 300 }]);
});

describe('what is refused, in this order', () => {
  test('who may not', async () => {
    const agreed = await begun(gallery.owner, 'people', manyPeople(1));
    expect(await carryLoad(gallery.gallery, agreed)).toMatchObject({
      refusal: { code: 'not_allowed' },
    });
    const file = { requestKey: aKey(), kind: 'people', fileName: 'a.csv' } as const;
    const looked = await lookAtFile(gallery.books, { ...file, bytes: bytesOf('x') });
    expect(looked).toMatchObject({ refusal: { code: 'not_allowed' } });
  });

  test('a file that is not here', async () => {
    const agreed = { loadId: aKey(), planSha256: '0'.repeat(64), leaveRefusedOut: false };
    expect(await carryLoad(gallery.owner, agreed)).toMatchObject({
      refusal: { code: 'unknown_load' },
    });
  });

  test('people who changed since', async () => {
    const agreed = await begun(gallery.owner, 'people', manyPeople(2));
    const person = { name: 'P', email: 'p1@example.org', createdAt: gallery.at };
    await db().collector.create({ data: person });
    expect(await carryLoad(gallery.owner, agreed)).toMatchObject({
      refusal: { code: 'things_changed' },
    });
    expect(await people()).toEqual([{ count: 1 }]);
  });

  test('refused lines, unless they are left out', async () => {
    const agreed = await begun(gallery.owner, 'people', 'name,email\nWren,\nAsh,no mail\n');
    expect(await carryLoad(gallery.owner, agreed)).toMatchObject({
      refusal: { code: 'lines_refused', lines: 1 },
    });
    const without = { ...agreed, leaveRefusedOut: true };
    expect(await carryLoad(gallery.owner, without)).toMatchObject({ ok: true });
    expect(await people()).toEqual([{ count: 1 }]);
  });

  test('a file that cannot be read is not kept', async () => {
    const file = { requestKey: aKey(), kind: 'people', fileName: 'a.csv' } as const;
    const looked = await lookAtFile(gallery.owner, { ...file, bytes: bytesOf('mail\na@b.c') });
    expect(looked).toMatchObject({ refusal: { code: 'column_missing' } });
    expect(await sql('select 1 from "StoredFile"')).toEqual([]);
  });
});

describe('how far it is', () => {
  test('is told while nothing is kept yet, and a wish to stop keeps nothing', async () => {
    const agreed = await begun(gallery.owner, 'people', manyPeople(5_000));
    const carried = carryLoad(gallery.owner, agreed);
    await underWay(agreed.loadId);
    expect(await people()).toEqual([{ count: 0 }]);
    expect(await findLoad(gallery.owner.actor, agreed.loadId, later(0))).toMatchObject({
      standing: 'going',
      rowsTotal: 5_000,
    });
    await askToStop(gallery.owner, agreed);
    expect(await carried).toMatchObject({ refusal: { code: 'stopped' } });
    expect(await people()).toEqual([{ count: 0 }]);
    expect(await findLoad(gallery.owner.actor, agreed.loadId, later(0))).toMatchObject({
      ...{ standing: 'not_kept', outcome: 'It was stopped; nothing was kept.' },
    });
    expect(await askToStop(gallery.owner, agreed)).toMatchObject({
      refusal: { code: 'ended_before' },
    });
  });

  test('a process that is ended in the middle leaves nothing behind, and that is told', async () => {
    const agreed = await begun(gallery.owner, 'people', manyPeople(20_000));
    const given = JSON.stringify({ ...gallery.owner, agreed });
    const script = 'tests/database/data/carry-alone.ts';
    const flags = ['--conditions=react-server', '--import', 'tsx', script, given];
    const child = spawn(process.execPath, flags, {
      env: { ...process.env, DATABASE_URL: databaseUrl() },
      stdio: 'ignore',
    });
    await underWay(agreed.loadId);
    child.kill('SIGKILL');
    await once(child, 'exit');
    expect(await people()).toEqual([{ count: 0 }]);
    const soon = await findLoad(gallery.owner.actor, agreed.loadId, later(0));
    const after = await findLoad(gallery.owner.actor, agreed.loadId, later(90));
    expect([soon?.standing, after?.standing]).toEqual(['going', 'half_way']);
    const again = await broughtIn(gallery.owner, 'people', manyPeople(20));
    expect(again).toMatchObject({ ok: true });
  }, 120_000);

  test('the latest come first, and only the owner sees them', async () => {
    await broughtIn(gallery.owner, 'people', manyPeople(2));
    expect(await listLoads(gallery.owner.actor, later(0))).toMatchObject([
      { standing: 'kept', outcome: 'It was brought in: 2 new.', rowsDone: 2, by: 'The owner' },
    ]);
    await expect(listLoads(gallery.books.actor, later(0))).rejects.toThrow();
  });
});
