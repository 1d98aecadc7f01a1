import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { backInput, giveInput } from '@/lib/holds/input/approval';
import { findApproval, listApprovals } from '@/lib/holds/reads/approvals';
import { listStillHere } from '@/lib/holds/reads/still-here';
import { noteCollected } from '@/lib/holds/writes/collect';
import { takeBackFromApproval } from '@/lib/holds/writes/approval-back';
import { giveOnApproval } from '@/lib/holds/writes/approvals';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  noon,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';

let gallery: OpenGallery;
let collectorId: string;
let tern: TestPiece;
let count = 0;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const who = { name: 'Marit Oland', phone: '555 0148', createdAt: noon };
  ({ id: collectorId } = await db().collector.create({ data: who, select: { id: true } }));
});

beforeEach(async () => {
  count += 1;
  const title = `Tern ${count}`;
  tern = await aPieceHere(gallery, { sku: `TERN-${count}`, title, priceCents: 18_000n, here: 3 });
});

const asked = (over: Record<string, unknown> = {}) =>
  giveInput.parse({
    ...{ requestKey: randomUUID(), collectorId, pieces: `${tern.sku}*2`, dueOn: '2026-11-27' },
    ...{ value: '360', condition: 'one wing chipped', security: 'a cheque, kept here' },
    ...over,
  });

const back = (approvalId: string, over: Record<string, unknown> = {}) =>
  backInput.parse({ requestKey: randomUUID(), approvalId, what: 'back', 'back-1': '1', ...over });

async function given() {
  const made = await giveOnApproval(doing(gallery.clerk), asked());
  if (!made.ok) throw new Error(`not given: ${made.refusal.code}`);
  return made.value;
}

async function levelsOf(skuId: string) {
  return sql(
    `select place.kind::text, level."onHand", level.held from "StockLevel" level
     join "Place" place on place.id = level."placeId" where "skuId" = $1 order by place.kind`,
    [skuId],
  );
}

test('a piece that is tried at home is neither sold nor here', async () => {
  const picture = await sharp({ create: { width: 8, height: 6, channels: 3, background: 'teal' } })
    .jpeg()
    .toBuffer();
  const made = await giveOnApproval(
    doing(gallery.clerk),
    asked({ pictures: new Blob([new Uint8Array(picture)]) }),
  );
  if (!made.ok) throw new Error(made.refusal.code);
  expect(await levelsOf(tern.skuId)).toEqual([
    { kind: 'gallery', onHand: 1, held: 0 },
    { kind: 'on_approval', onHand: 2, held: 0 },
  ]);
  const slip = await findApproval(gallery.clerk, made.value.number);
  expect(slip).toMatchObject({
    ...{ valueCents: 36_000n, dueOn: '2026-11-27', staffName: 'Perrin Oday', endedAt: null },
    lines: [{ position: 1, out: 2, quantity: 2 }],
    pictures: [{ isBack: false, width: 8, height: 6 }],
  });
});

test.each([
  ['a maker', 'maker', {}, 'not_allowed'],
  ['nobody', 'clerk', { collectorId: randomUUID() }, 'unknown_collector'],
  ['nothing', 'clerk', { pieces: '' }, 'nothing_chosen'],
  ['a day that has passed', 'clerk', { dueOn: '2026-11-19' }, 'due_has_passed'],
  ['a whole year', 'clerk', { dueOn: '2027-11-19' }, 'due_too_far'],
  ['a piece nobody knows', 'clerk', { pieces: 'NO-SUCH' }, 'unknown_piece_chosen'],
  ['no picture', 'clerk', { pictures: new Blob(['hello']) }, 'picture_not_kept'],
] as const)('%s is refused, and nothing moves', async (_label, who, over, code) => {
  const refused = await giveOnApproval(doing(gallery[who]), asked(over));
  expect(refused).toMatchObject({ ok: false, refusal: { code } });
  expect(await levelsOf(tern.skuId)).toEqual([{ kind: 'gallery', onHand: 3, held: 0 }]);
});

test('two people who give the last ones home at once: one is refused', async () => {
  const both = await Promise.all([
    giveOnApproval(doing(gallery.clerk), asked()),
    giveOnApproval(doing(gallery.second), asked()),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'not_free' } });
});

test('it comes back in parts, and the slip ends with the last', async () => {
  const { approvalId, number } = await given();
  const first = back(approvalId, { condition: 'whole' });
  expect(await takeBackFromApproval(doing(gallery.clerk), first)).toMatchObject({ ok: true });
  expect(await takeBackFromApproval(doing(gallery.clerk), first)).toMatchObject({ ok: true });
  const half = await findApproval(gallery.clerk, number);
  expect(half).toMatchObject({ endedAt: null, lines: [{ out: 1 }], backs: [{ pieces: 1 }] });
  const more = await takeBackFromApproval(
    doing(gallery.clerk),
    back(approvalId, { 'back-1': '2' }),
  );
  expect(more).toMatchObject({ refusal: { code: 'fewer_are_out', out: 1 } });
  const none = await takeBackFromApproval(doing(gallery.clerk), back(approvalId, { 'back-1': '' }));
  expect(none).toMatchObject({ refusal: { code: 'nothing_comes_back' } });

  const both = await Promise.all([
    takeBackFromApproval(doing(gallery.clerk), back(approvalId)),
    takeBackFromApproval(doing(gallery.second), back(approvalId)),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'all_came_back' } });
  expect(await levelsOf(tern.skuId)).toMatchObject([{ onHand: 3 }, { onHand: 0 }]);
  const { ended } = await listApprovals(gallery.clerk, '2026-11-20');
  expect(ended.map((each) => each.number)).toContain(number);
});

test('what is bought is held for its buyer until the slip is paid', async () => {
  const { approvalId } = await given();
  const bought = back(approvalId, { what: 'bought', 'back-1': '2' });
  const came = await takeBackFromApproval(doing(gallery.clerk), bought);
  expect(came).toMatchObject({
    value: { collectorId, bought: [{ skuId: tern.skuId, quantity: 2, numbers: [] }] },
  });
  expect(await levelsOf(tern.skuId)).toMatchObject([{ onHand: 3, held: 2 }, { onHand: 0 }]);
});

test('a slip that came back is never changed', async () => {
  const { approvalId } = await given();
  await takeBackFromApproval(doing(gallery.clerk), back(approvalId));
  const change = 'update "OnApprovalBack" set bought = true where "approvalId" = $1';
  const failure: unknown = await sql(change, [approvalId]).catch((error: unknown) => error);
  expect(constraintOf(failure)).toBe('never_changed');
});

test('what was sold and still hangs here is collected once', async () => {
  const sold = await sellNow(doing(gallery.clerk), aSale([{ piece: tern, quantity: 1 }]));
  if (!sold.ok) throw new Error('It is here and can be sold.');
  const line = await db().saleLine.findFirstOrThrow({
    where: { saleId: sold.value.saleId },
    select: { id: true },
  });
  const untilOn = new Date('2026-11-28');
  await db().toCollect.create({
    data: { saleLineId: line.id, placeId: gallery.counterId, untilOn },
  });
  const [piece] = await listStillHere(gallery.clerk);
  expect(piece).toMatchObject({ untilOn: '2026-11-28', receipt: sold.value.number });
  const touch = () => ({ requestKey: randomUUID(), saleLineId: line.id });
  const both = await Promise.all([
    noteCollected(doing(gallery.clerk), touch()),
    noteCollected(doing(gallery.second), touch()),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'collected_already' } });
  expect(await listStillHere(gallery.clerk)).toEqual([]);
});
