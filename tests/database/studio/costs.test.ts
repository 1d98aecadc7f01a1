import { beforeAll, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { findCost, listCosts } from '@/lib/studio/reads/costs/sheet';
import { readUnitCost } from '@/lib/studio/reads/costs/unit-cost';
import { aJob, aStudio, type TestStudio } from '@/tests/database/studio/a-studio';
import { sql } from '@/tests/helpers/database';

let studio: TestStudio;
let skuId: string;
beforeAll(async () => {
  studio = await aStudio();
  const { at: createdAt } = studio.owner;
  const design = await db().design.create({ data: { code: 'TERN', title: 'Tern', createdAt } });
  const colourway = await db().colourway.create({ data: { name: 'fog' } });
  const sku = await db().sku.create({
    data: {
      ...{ code: 'TERN-6-FO', designId: design.id, colourwayId: colourway.id, kind: 'relief_tile' },
      ...{ widthUm: 152_400, heightUm: 152_400, depthUm: 19_050, weightG: 530 },
      ...{ priceCents: 5_200n, createdAt },
    },
  });
  skuId = sku.id;
});
const today = '2026-05-04';
const hour = (cents: number) => sql(`UPDATE "StudioSettings" SET "centsPerHour" = $1`, [cents]);
const costOf = async (of: { skuId: string } | { jobId: string } = { skuId }) =>
  readUnitCost(db(), of);
const linesOf = async () => {
  const found = await findCost(studio.owner.actor, 'tern-6-fo', today);
  const lines = found?.sheet.cost.ok ? found.sheet.cost.value.lines : [];
  return Object.fromEntries(lines.map(({ what, cents }) => [what, cents]));
};

test('nothing is told while nothing is known, nor while the hour is not', async () => {
  expect(await costOf()).toBeNull();
  expect((await findCost(studio.books.actor, 'TERN-6-FO', today))?.sheet.cost).toMatchObject({
    refusal: { code: 'nothing_known' },
  });
  await db().clayBody.create({ data: { name: 'white slip', centsPerKg: '180' } });
  expect(await costOf()).toBeNull();
  expect(await linesOf()).toMatchObject({ clay: 154n, hands: 0n });
  expect(await costOf({ skuId: studio.taxPlaceId })).toBeNull();
});

test('a piece is reckoned by the usual route, and its lines come to the whole', async () => {
  await hour(2_500);
  await sql(`UPDATE "StudioSettings" SET "overheadPercent" = 20, "glazeCentsPerM2" = 2600`);
  const total = await costOf();
  const lines = await linesOf();
  expect(Object.values(lines).reduce((sum, cents) => sum + cents, 0n)).toBe(total);
  // Slip-cast: 8 + 6 + 2 + 10 + 2 + 5 minutes at $25 an hour.
  expect(lines).toMatchObject({ clay: 154n, glaze: 60n, hands: 1_375n, firing: 0n, mould: 0n });
  expect(lines['losses']).toBeGreaterThan(0n);
});

test('a firing is shared by the room of what was in it', async () => {
  const job = await aJob(studio.maker, { technique: 'slip_cast', skuId, pieces: 40 });
  const { id: staffId } = studio.maker.actor;
  const { at } = studio.maker;
  const on = new Date('2026-05-02');
  const kiln = await db().kiln.create({
    data: {
      ...{ name: 'the large kiln', insideHeightUm: 685_000, shelfWidthUm: 530_000 },
      ...{ shelfDepthUm: 530_000, shelfThickUm: 19_000, shelves: 12, powerW: 11_520 },
      ...{ centsPerKwh: '15', cones: ['6', '04'] },
    },
  });
  const reckoned = (await linesOf())['firing'] ?? 0n;
  expect(reckoned).toBeGreaterThan(10n);
  const size = { widthUm: 152_400, depthUm: 152_400, heightUm: 19_050 };
  const step = await db().jobStep.findFirstOrThrow({ where: { jobId: job.id, cone: '6' } });
  await sql(
    `INSERT INTO "JobMove" ("jobId", "fromPosition", "toPosition", pieces, "staffId", "movedOn", at)
     VALUES ($1, 0, $2, 40, $3, $4, $5)`,
    [job.id, step.position, staffId, on, at],
  );
  const { id: firingId } = await db().firing.create({
    data: {
      ...{ kilnId: kiln.id, cone: '6', peg: 'glaze', schedule: {}, plannedOn: on, at },
      madeById: staffId,
      lines: { create: [{ jobId: job.id, position: step.position, pieces: 40, ...size }] },
    },
    select: { id: true },
  });
  await db().firingLit.create({ data: { firingId, litOn: on, at, staffId } });
  await db().$transaction(async (tx) => {
    const cost = { wattHours: 70_000, isMetered: false, costCents: 40_000n };
    await tx.firingOpened.create({
      data: { firingId, openedOn: on, at, celsius: 60, staffId, ...cost },
    });
    const line = await tx.firingLine.findFirstOrThrow({ where: { firingId } });
    const move = await tx.jobMove.findFirstOrThrow({ where: { jobId: job.id } });
    await tx.firingResult.create({
      data: { lineId: line.id, outcome: 'good', pieces: 40, moveId: move.id, staffId, at },
    });
  });
  // A fortieth of $400, and the bisque as it is reckoned from the kiln.
  const shared = (await linesOf())['firing'] ?? 0n;
  expect(shared).toBeGreaterThan(1_000n);
  expect(shared).toBeLessThan(1_000n + reckoned);
  const found = await findCost(studio.owner.actor, 'TERN-6-FO', today);
  expect(found?.sheet.said.map(({ words }) => words)).toContain(
    'the glaze kiln: of the last firing to cone 6, by the room it takes.',
  );
});

test('a job is reckoned by its own size and clay', async () => {
  const ofSku = await aJob(studio.maker, { technique: 'slip_cast', skuId });
  expect(await costOf({ jobId: ofSku.id })).toBe(await costOf());
  const large = await aJob(studio.maker, { technique: 'slab_relief', title: 'Herons' });
  await db().job.update({
    where: { id: large.id },
    data: { widthUm: 304_800, heightUm: 304_800, depthUm: 38_100 },
  });
  const cost = (await costOf({ jobId: large.id })) ?? 0n;
  expect(cost).toBeGreaterThan((await costOf()) ?? 0n);
});

test('the list has every first with its price, and only for those who see what stock cost', async () => {
  const { sheets } = await listCosts(studio.books.actor, today);
  expect(sheets).toMatchObject([
    { code: 'TERN-6-FO', title: 'Tern', priceCents: 5_200n, sold: null, technique: 'slip_cast' },
  ]);
  expect(sheets[0]?.earned?.centsPerTurn).toBeGreaterThan(0n);
  expect(sheets[0]?.earned?.centsPerHour).toBeGreaterThan(0n);
  await expect(listCosts(studio.maker.actor, today)).rejects.toThrow();
});

test('the database holds what an hour and a kilogram may cost', async () => {
  await expect(hour(-1)).rejects.toThrow(/studio_settings_are_sound/);
});
