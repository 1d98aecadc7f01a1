import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  boxInput,
  moveContentsInput,
  removeBoxInput,
  weighBoxesInput,
} from '@/lib/sending/input/boxes';
import { readToGo } from '@/lib/sending/reads/to-go';
import { piecesTyped } from '@/lib/sending/rules/typed/pieces';
import { proposeShipmentBoxes, putBox, removeBox, weighBoxes } from '@/lib/sending/writes/boxes';
import { moveContents } from '@/lib/sending/writes/move';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { asked, done } from '@/tests/database/commissions/a-commission';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { gridOf } from '@/lib/studio/rules/parts/laying';
import { aPacked, aSent, aShipment, boxesOf, packer, toPropose } from './a-shipment';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const aBox = (shipmentId: string, fields: Record<string, string> = {}) =>
  boxInput('in').parse({
    ...{ requestKey: randomUUID(), shipmentId, kind: 'crate', lengthUm: '40', widthUm: '30' },
    ...{ heightUm: '10 1/2', paddingUm: '2', contents: 'Moss; 12 lb\n\nCare sheet', ...fields },
  });
const toMove = (shipmentId: string, fromId: string, contentIds: string[], toId: string) =>
  moveContentsInput.parse({ requestKey: randomUUID(), shipmentId, fromId, contentIds, toId });

/** A commission with a drawing of six parts, as the studio keeps it. */
async function aDrawnCommission() {
  const logged = await asked(gallery.owner, '2026-11-02', {});
  const { commissionId } = logged;
  const job = await db().job.create({
    data: {
      ...{ title: 'Herons', wanted: 1, pieces: 1, technique: 'slab_relief' },
      commission: { connect: { id: commissionId } },
      ...{ openedById: gallery.owner.id, openedAt: new Date() },
    },
  });
  const shapes = gridOf({ rows: 2, columns: 3, isOffset: false });
  await db().partShape.createMany({
    data: shapes.map(({ number, outline }) => ({
      ...{ jobId: job.id, number, area: number < 4 ? 'sky' : '' },
      outline: outline.map(([x, y]) => [x, y]),
    })),
  });
  await db().partMap.create({
    data: {
      ...{ jobId: job.id, widthUm: 900_000, heightUm: 600_000 },
      ...{ drawnById: gallery.owner.id, drawnAt: new Date() },
    },
  });
  return commissionId;
}

describe('boxes that are proposed', () => {
  test('hold every piece, and take the place of those that were there', async () => {
    const { shipmentId } = await aPacked(gallery);
    const boxes = await boxesOf(shipmentId);
    expect(boxes.map(({ position, kind }) => [position, kind])).toEqual([
      [1, 'double_box'],
      [2, 'crate'],
    ]);
    expect(
      boxes.map(({ contents }) => contents.map(({ words, pieces }) => [words, pieces])),
    ).toEqual([[['Tern', 2]], [['Heron', 1]]]);
    done(
      await proposeShipmentBoxes(packer(gallery), toPropose(shipmentId, 'Moss; 6 × 6 × 1; 2 lb')),
    );
    expect((await boxesOf(shipmentId)).map(({ contents }) => contents[0]?.words)).toEqual(['Moss']);
  });

  test('a relief goes whole or by the numbers of its drawing, which weigh together the same', async () => {
    const commissionId = await aDrawnCommission();
    const toGo = await readToGo(gallery.maker, { commissionId, saleId: null });
    expect(toGo.pieces).toMatchObject([{ widthUm: 900_000, heightUm: 600_000 }]);
    expect(toGo.parts?.map(({ partNumber }) => partNumber)).toEqual([1, 2, 3, 4, 5, 6]);
    const whole = toGo.pieces[0]?.weightG;
    expect(toGo.parts?.reduce((sum, { weightG }) => sum + weightG, 0)).toBe(whole);
    const { shipmentId } = await aShipment(gallery, { commissionId });
    const list = piecesTyped(toGo.parts ?? [], 'in');
    done(await proposeShipmentBoxes(packer(gallery), toPropose(shipmentId, list)));
    const parts = (await boxesOf(shipmentId)).flatMap(({ contents }) => contents);
    expect(parts.map(({ partNumber }) => partNumber).toSorted()).toEqual([1, 2, 3, 4, 5, 6]);
    const seven = toPropose(shipmentId, 'Part 7; 6 × 6 × 1 in; 2 lb');
    expect(await proposeShipmentBoxes(packer(gallery), seven)).toMatchObject({
      refusal: { code: 'no_such_part', partNumber: 7, parts: 6 },
    });
  });

  test.each([
    ['nothing', '', 'nothing_to_go'],
    ['a line that does not read', 'Moss; large; 2 lb', 'line_not_read'],
    ['a weight of nothing', 'Moss; 6 × 6 × 1; 0 lb', 'line_not_read'],
    ['a part twice', 'Part 1; 6 × 6 × 1; 2 lb\nPart 1; 6 × 6 × 1; 2 lb', 'part_twice'],
    ['too many boxes', '100 × Heron; 40 × 30 × 3 in; 70 lb', 'too_many_boxes'],
  ])('refuses %s', async (_label, pieces, code) => {
    const { shipmentId } = await aShipment(gallery);
    const refused = await proposeShipmentBoxes(packer(gallery), toPropose(shipmentId, pieces));
    expect(refused).toMatchObject({ ok: false, refusal: { code } });
    expect(await boxesOf(shipmentId)).toEqual([]);
  });

  test('two at once leave one set of boxes', async () => {
    const { shipmentId } = await aShipment(gallery);
    await Promise.all([
      proposeShipmentBoxes(packer(gallery), toPropose(shipmentId)),
      proposeShipmentBoxes(packer(gallery), toPropose(shipmentId)),
    ]);
    expect(await boxesOf(shipmentId)).toHaveLength(2);
  });
});

describe('boxes by hand', () => {
  test('one is added, measured, filled and changed', async () => {
    const { shipmentId } = await aShipment(gallery);
    done(await putBox(packer(gallery), aBox(shipmentId)));
    const [box] = await boxesOf(shipmentId);
    expect(box).toMatchObject({ heightUm: 266_700, scaleG: null, position: 1 });
    expect(box?.contents.map(({ layer, weightG }) => [layer, weightG])).toEqual([
      [1, 5_443],
      [2, 0],
    ]);
    const changed = aBox(shipmentId, { crateId: box?.id ?? '', scaleG: '61.5 lb', kind: 'box' });
    done(await putBox(packer(gallery), changed));
    expect(await boxesOf(shipmentId)).toMatchObject([{ kind: 'box', scaleG: 27_896, position: 1 }]);
    const again = await putBox(packer(gallery), { ...changed, requestKey: randomUUID() });
    expect(again).toMatchObject({ refusal: { code: 'no_such_box' } });
  });

  test.each([
    ['nothing in it', { contents: '' }, 'nothing_in_it'],
    ['what does not read', { contents: 'Moss; heavy' }, 'content_not_read'],
    ['a box that is not there', { crateId: randomUUID() }, 'no_such_box'],
    ['a part that lies elsewhere', { contents: 'Part 1; 2 lb' }, 'part_elsewhere'],
  ])('refuses %s', async (_label, fields, code) => {
    const { shipmentId } = await aPacked(gallery, {}, 'Part 1; 6 × 6 × 1 in; 2 lb');
    const refused = await putBox(packer(gallery), aBox(shipmentId, fields));
    expect(refused).toMatchObject({ ok: false, refusal: { code } });
  });

  test.each([
    [{ lengthUm: '0' }],
    [{ widthUm: 'wide' }],
    [{ heightUm: '-3' }],
    [{ paddingUm: '13' }],
    [{ scaleG: '0' }],
    [{ scaleG: '999999999 lb' }],
    [{ kind: 'sack' }],
  ])('%j does not read', (fields) => {
    expect(() => aBox(randomUUID(), fields)).toThrow();
  });

  test('one that goes lets the others move up', async () => {
    const { shipmentId } = await aPacked(gallery);
    const [first] = await boxesOf(shipmentId);
    const crateId = first?.id ?? '';
    const form = removeBoxInput.parse({ requestKey: randomUUID(), shipmentId, crateId });
    done(await removeBox(packer(gallery), form));
    expect(await boxesOf(shipmentId)).toMatchObject([{ position: 1, kind: 'crate' }]);
    const again = await removeBox(packer(gallery), { ...form, requestKey: randomUUID() });
    expect(again).toMatchObject({ refusal: { code: 'no_such_box' } });
  });

  test('the scale is written down for all, and taken back by an empty field', async () => {
    const { shipmentId } = await aPacked(gallery);
    const weigh = (scale: Record<string, string>) =>
      weighBoxesInput('in').parse({ requestKey: randomUUID(), shipmentId, ...scale });
    done(await weighBoxes(packer(gallery), weigh({ 'scale.1': '10 lb', 'scale.2': '120' })));
    expect((await boxesOf(shipmentId)).map(({ scaleG }) => scaleG)).toEqual([4_536, 54_431]);
    done(await weighBoxes(packer(gallery), weigh({ 'scale.2': '' })));
    expect((await boxesOf(shipmentId)).map(({ scaleG }) => scaleG)).toEqual([4_536, null]);
    expect(await weighBoxes(packer(gallery), weigh({ 'scale.3': '1' }))).toMatchObject({
      refusal: { code: 'no_such_box' },
    });
    expect(() => weigh({ 'scale.1': 'heavy' })).toThrow();
  });
});

describe('into another box', () => {
  async function twoBoxes() {
    const { shipmentId } = await aShipment(gallery);
    done(
      await putBox(packer(gallery), aBox(shipmentId, { contents: 'Part 1; 2 lb\nPart 2; 3 lb' })),
    );
    done(
      await putBox(packer(gallery), aBox(shipmentId, { contents: 'Part 3; 4 lb', scaleG: '70' })),
    );
    const [from, to] = await boxesOf(shipmentId);
    if (!from || !to) throw new Error('there are two boxes');
    return { shipmentId, from, to, idOf: (at: number) => from.contents[at]?.id ?? '' };
  }

  test('what goes over lies on top there, and both are to be weighed anew', async () => {
    const { shipmentId, from, to, idOf } = await twoBoxes();
    done(await moveContents(packer(gallery), toMove(shipmentId, from.id, [idOf(1)], to.id)));
    const [first, second] = await boxesOf(shipmentId);
    expect(first?.contents.map(({ words }) => words)).toEqual(['Part 1']);
    expect(second?.contents.map(({ words, layer }) => [words, layer])).toEqual([
      ['Part 3', 1],
      ['Part 2', 2],
    ]);
    expect(second?.scaleG).toBeNull();
    expect(second?.reckonedG).toBe(to.reckonedG + 1_361);
  });

  test('or into a new one of the same make', async () => {
    const { shipmentId, from, idOf } = await twoBoxes();
    done(await moveContents(packer(gallery), toMove(shipmentId, from.id, [idOf(0)], 'new')));
    expect(await boxesOf(shipmentId)).toMatchObject([{}, {}, { position: 3, kind: 'crate' }]);
  });

  test('refuses nothing chosen, all of it, a box that is gone, and into itself', async () => {
    const { shipmentId, from, to, idOf } = await twoBoxes();
    const moved = (ids: string[], fromId: string, toId: string) =>
      moveContents(packer(gallery), toMove(shipmentId, fromId, ids, toId));
    const codes = [
      await moved([], from.id, to.id),
      await moved([randomUUID()], from.id, to.id),
      await moved([idOf(0), idOf(1)], from.id, to.id),
      await moved([idOf(0)], from.id, randomUUID()),
      await moved([idOf(0)], from.id, from.id),
    ].map((answer) => (answer.ok ? 'moved' : answer.refusal.code));
    expect(codes).toEqual([
      ...['changed_meanwhile', 'changed_meanwhile', 'nothing_in_it'],
      ...['no_such_box', 'no_such_box'],
    ]);
  });

  test('two who move the same part at once leave it in one box', async () => {
    const { shipmentId, from, to, idOf } = await twoBoxes();
    const answers = await Promise.all([
      moveContents(packer(gallery), toMove(shipmentId, from.id, [idOf(0)], to.id)),
      moveContents(packer(gallery), toMove(shipmentId, from.id, [idOf(0)], 'new')),
    ]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    const parts = (await boxesOf(shipmentId)).flatMap(({ contents }) => contents);
    expect(parts.map(({ words }) => words).toSorted()).toEqual(['Part 1', 'Part 2', 'Part 3']);
  });
});

async function firstBox(shipmentId: string): Promise<string> {
  return (await boxesOf(shipmentId)).at(0)?.id ?? '';
}

describe('what left stays as it was packed', () => {
  test('by every command', async () => {
    const { shipmentId } = await aSent(gallery);
    const [box] = await boxesOf(shipmentId);
    const crateId = box?.id ?? '';
    const requestKey = randomUUID();
    const answers = [
      await proposeShipmentBoxes(packer(gallery), toPropose(shipmentId)),
      await putBox(packer(gallery), aBox(shipmentId, { crateId })),
      await removeBox(packer(gallery), { requestKey, shipmentId, crateId }),
      await moveContents(packer(gallery), toMove(shipmentId, crateId, [], 'new')),
    ].map((answer) => (answer.ok ? 'changed' : answer.refusal.code));
    expect(answers).toEqual(Array.from(answers, () => 'left_already'));
  });

  test('and by the database', async () => {
    const { shipmentId } = await aSent(gallery);
    const id = await firstBox(shipmentId);
    const closed = (error: unknown) => constraintOf(error) === 'crate_is_closed_when_sent';
    const changed = db().crate.update({ where: { id }, data: { scaleG: 1 } });
    await expect(changed).rejects.toSatisfy(closed);
    const emptied = db().crateContent.deleteMany({ where: { crateId: id } });
    await expect(emptied).rejects.toSatisfy(closed);
  });

  test('a part lies in one box by the database too', async () => {
    const { shipmentId } = await aPacked(
      gallery,
      {},
      'Part 1; 6 × 6 × 1; 2 lb\nHeron; 40 × 30 × 3; 70',
    );
    const [, other] = await boxesOf(shipmentId);
    const data = {
      crateId: other?.id ?? '',
      position: 9,
      words: 'Part 1',
      partNumber: 1,
      weightG: 1,
    };
    await expect(db().crateContent.create({ data })).rejects.toSatisfy(
      (error) => constraintOf(error) === 'part_goes_in_one_crate',
    );
  });
});
