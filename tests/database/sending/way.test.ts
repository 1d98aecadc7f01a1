import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { findShipment, listShipments } from '@/lib/sending/reads/shipments';
import { noteWay } from '@/lib/sending/writes/way';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { done } from '@/tests/database/commissions/a-commission';
import { doing, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aPacked, aSent, aShipment, became, packer, sold, today } from './a-shipment';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const noted = (shipmentId: string, kind: string, fields: Record<string, string> = {}) =>
  noteWay(packer(gallery), became(shipmentId, kind, fields));

async function aDrawing(): Promise<string> {
  const bytes = await sharp({
    create: { width: 720, height: 320, channels: 3, background: 'white' },
  })
    .png()
    .toBuffer();
  return `data:image/png;base64,${bytes.toString('base64')}`;
}

describe('on its way', () => {
  test('packed, sent with its number, arrived with a remark', async () => {
    const { shipmentId, number } = await aPacked(gallery);
    done(await noted(shipmentId, 'packed', { on: '2026-11-10', words: 'foam islands' }));
    done(await noted(shipmentId, 'sent', { on: '2026-11-12', tracking: 'CV 44 1029' }));
    done(await noted(shipmentId, 'arrived', { takenBy: 'Marit', words: 'a corner crushed' }));
    const shipment = await findShipment(gallery.maker, number);
    expect(shipment).toMatchObject({ stage: 'arrived', tracking: 'CV 44 1029' });
    expect(shipment?.events).toMatchObject([
      { kind: 'packed', by: 'Tobias Fenn', words: 'foam islands' },
      { kind: 'sent', on: '2026-11-12' },
      { kind: 'arrived', on: today, takenBy: 'Marit', words: 'a corner crushed' },
    ]);
    const listed = (await listShipments(gallery.maker, today)).find(
      (each) => each.number === number,
    );
    expect(listed).toMatchObject({ asks: 'look_at_it', lastOn: today });
  });

  test('a number that was mistyped is noted anew, and the newest holds', async () => {
    const { shipmentId, number } = await aSent(gallery);
    done(await noted(shipmentId, 'noted', { words: 'mistyped', tracking: 'CV 2' }));
    done(await noted(shipmentId, 'noted', { words: 'asked where it is' }));
    expect(await findShipment(gallery.maker, number)).toMatchObject({ tracking: 'CV 2' });
  });

  test('fetched, with a drawn signature', async () => {
    const { shipmentId, number } = await aPacked(gallery, { how: 'fetched' });
    const drawing = await aDrawing();
    const signed = { signedName: 'Perrin Oday', signedCapacity: 'the library', signedAs: 'drawn' };
    done(await noted(shipmentId, 'fetched', { ...signed, drawing }));
    const shipment = await findShipment(gallery.maker, number);
    expect(shipment).toMatchObject({ stage: 'fetched' });
    expect(shipment?.events[0]).toMatchObject({ takenBy: 'Perrin Oday, for the library' });
    expect(shipment?.events[0]?.drawingId).not.toBeNull();
  });

  test('a signature that was to be drawn, and was not, is refused', async () => {
    const { shipmentId } = await aPacked(gallery, { how: 'fetched' });
    for (const drawing of ['', 'data:image/png;base64,bm90IGEgcGljdHVyZQ==']) {
      const signed = { signedName: 'Perrin', signedAs: 'drawn', drawing };
      expect(await noted(shipmentId, 'fetched', signed)).toMatchObject({
        refusal: { code: 'drawing_not_kept' },
      });
    }
    done(await noted(shipmentId, 'fetched', { signedName: 'Perrin', signedAs: 'typed' }));
  });

  test('a sale’s shipment keeps the carrier’s slip on its receipt', async () => {
    const number = await sold(gallery, 'sent');
    const { shipmentId } = await aSent(gallery, { saleNumber: String(number) });
    const proof = async () => (await findReceipt(gallery.owner, number))?.proof;
    expect(await proof()).toMatchObject({
      carrier: 'Coast freight',
      number: 'CV 1',
      arrivedOn: null,
    });
    done(await noted(shipmentId, 'arrived', { on: '2026-11-18' }));
    expect(await proof()).toMatchObject({ sentOn: '2026-11-12', arrivedOn: '2026-11-18' });
  });
});

describe('is refused', () => {
  type Tried = [label: string, kind: string, code: string, more: Record<string, string>];
  test.each<Tried>([
    ['to arrive before it left', 'arrived', 'not_on_the_way', {}],
    ['to be fetched where a carrier takes it', 'fetched', 'goes_otherwise', { signedName: 'P' }],
    ['to be sent where it is fetched', 'sent', 'goes_otherwise', { how: 'fetched' }],
    ['to be sent by nobody', 'sent', 'no_carrier_named', { carrier: '' }],
    ['on a day to come', 'sent', 'day_to_come', { on: '2026-11-21' }],
  ])('%s', async (_label, kind, code, more) => {
    const { shipmentId } = await aPacked(gallery, more);
    expect(await noted(shipmentId, kind, more)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('without a box, before it was sold, twice, and after it was called off', async () => {
    const { shipmentId: bare } = await aShipment(gallery);
    expect(await noted(bare, 'sent')).toMatchObject({ refusal: { code: 'no_boxes_yet' } });
    const number = await sold(gallery, 'sent');
    const { shipmentId: early } = await aPacked(gallery, { saleNumber: String(number) });
    expect(await noted(early, 'sent', { on: '2026-11-04' })).toMatchObject({
      refusal: { code: 'sent_before_sold', soldOn: '2026-11-05' },
    });
    const { shipmentId } = await aSent(gallery);
    expect(await noted(shipmentId, 'sent')).toMatchObject({
      refusal: { code: 'happened_already', on: '2026-11-12' },
    });
    expect(await noted(shipmentId, 'arrived', { on: '2026-11-11' })).toMatchObject({
      refusal: { code: 'before_it', kind: 'sent' },
    });
    done(await noted(bare, 'called_off', { words: 'they come for it' }));
    expect(await noted(bare, 'noted', { words: 'more' })).toMatchObject({
      refusal: { code: 'was_called_off' },
    });
  });

  test('of a shipment that is not, and by whoever keeps the books', async () => {
    expect(await noted(randomUUID(), 'packed')).toMatchObject({
      refusal: { code: 'no_such_shipment' },
    });
    const form = became(randomUUID(), 'packed');
    expect(await noteWay(doing(gallery.books), form)).toMatchObject({
      refusal: { code: 'not_allowed' },
    });
  });

  test.each([
    ['sent', { on: 'soon' }],
    ['fetched', { signedName: ' ' }],
    ['called_off', { words: '' }],
    ['noted', {}],
    ['lost', {}],
  ])('%s with %j does not read', (kind, fields) => {
    expect(() => became(randomUUID(), kind, fields)).toThrow();
  });
});

test('two who send it at once send it once', async () => {
  const { shipmentId, number } = await aPacked(gallery);
  const answers = await Promise.all([noted(shipmentId, 'sent'), noted(shipmentId, 'sent')]);
  expect(answers.map(({ ok }) => ok).toSorted()).toEqual([false, true]);
  const shipment = await findShipment(gallery.maker, number);
  expect(shipment?.events.map(({ kind }) => kind)).toEqual(['sent']);
});

test('the same touch twice is one', async () => {
  const { shipmentId } = await aPacked(gallery);
  const form = became(shipmentId, 'noted', { words: 'asked for a lift-gate' });
  const both = [await noteWay(packer(gallery), form), await noteWay(packer(gallery), form)];
  expect(both[0]).toEqual(both[1]);
  expect(await db().shipmentEvent.count({ where: { shipmentId } })).toBe(1);
});

describe('the database holds the way', () => {
  const event = (shipmentId: string, kind: 'arrived' | 'sent' | 'called_off') =>
    db().shipmentEvent.create({
      data: {
        ...{ shipmentId, kind, on: new Date('2026-11-20'), at: new Date() },
        staffId: gallery.maker.id,
      },
    });

  test('nothing arrives that did not leave, nothing leaves twice, nothing sent is called off', async () => {
    const { shipmentId: here } = await aPacked(gallery);
    const { shipmentId: gone } = await aSent(gallery);
    const tries = [event(here, 'arrived'), event(gone, 'sent'), event(gone, 'called_off')];
    for (const tried of tries) {
      await expect(tried).rejects.toSatisfy(
        (error) => constraintOf(error) === 'shipment_goes_its_way',
      );
    }
  });

  test('what happened is never changed', async () => {
    await aSent(gallery);
    const changed = db().shipmentEvent.updateMany({ data: { tracking: 'another' } });
    await expect(changed).rejects.toThrow();
  });
});
