import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { changeShipmentInput } from '@/lib/sending/input/shipment';
import { listSalesToSend, readBeginning } from '@/lib/sending/reads/begin';
import { listTermsOn } from '@/lib/sending/reads/carriers';
import { findShipment, listShipmentsOf } from '@/lib/sending/reads/shipments';
import { changeShipment, startShipment } from '@/lib/sending/writes/shipments';
import { keepCarrierTerms } from '@/lib/sending/writes/carriers';
import { carrierTermsInput } from '@/lib/sending/input/carriers';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { asked, done } from '@/tests/database/commissions/a-commission';
import { doing, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aSent, aShipment, packer, sold, today, toStart } from './a-shipment';

let gallery: OpenGallery;
let commission: { commissionId: string; number: number };

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const logged = await asked(gallery.owner, '2026-11-02', {
    siteAddress: '1 Weir Lane, Fernhollow',
  });
  commission = { commissionId: logged.commissionId, number: logged.number };
});

const thrown = (error: unknown) => constraintOf(error);

describe('a shipment begins', () => {
  test('of a commission, and stands on its sheet', async () => {
    const known = await readBeginning(gallery.maker, {
      ...{ commissionNumber: commission.number, saleNumber: null },
    });
    expect(known).toMatchObject({ toName: 'Marit Oland', toAddress: '1 Weir Lane, Fernhollow' });
    const started = await aShipment(gallery, { commissionId: commission.commissionId });
    const shipment = await findShipment(gallery.maker, started.number);
    expect(shipment).toMatchObject({
      ...{ stage: 'to_pack', madeBy: 'Tobias Fenn', tracking: '' },
      forWhat: { commission: { number: commission.number }, sale: null },
    });
    expect(shipment?.collectorId).not.toBeNull();
    const { commissionId } = commission;
    const [listed] = await listShipmentsOf(gallery.maker, { commissionId }, today);
    expect(listed).toMatchObject({ number: started.number, asks: 'to_pack', boxes: 0 });
  });

  test('the narrowest place on the way is the one that was measured last', async () => {
    const { commissionId } = commission;
    const { number } = await aShipment(gallery, { commissionId });
    expect((await findShipment(gallery.maker, number))?.opening).toBeNull();
    const seen = { commissionId, surveyedOn: new Date('2026-11-10'), staffId: gallery.maker.id };
    for (const [version, narrowWidthUm] of [760_000, 810_000].entries()) {
      const narrow = { narrowWidthUm, narrowHeightUm: 2_000_000, at: new Date() };
      await db().wallSurvey.create({ data: { ...seen, ...narrow, version: version + 1 } });
    }
    expect((await findShipment(gallery.maker, number))?.opening).toEqual({
      ...{ widthUm: 810_000, heightUm: 2_000_000 },
    });
  });

  test('of a sale that is sent; then it waits no longer in the list of those', async () => {
    const number = await sold(gallery, 'sent');
    expect(await listSalesToSend(gallery.clerk)).toMatchObject([{ number }]);
    const begins = await readBeginning(gallery.clerk, {
      commissionNumber: null,
      saleNumber: number,
    });
    expect(begins).toMatchObject({ insuredCents: 9_000n, forWords: `receipt ${number}` });
    await aShipment(gallery, { saleNumber: String(number) });
    expect(await listSalesToSend(gallery.clerk)).toEqual([]);
  });

  test('sent twice with the same key it begins once; with something else in it, not at all', async () => {
    const form = toStart();
    const both = await Promise.all([
      startShipment(packer(gallery), form),
      startShipment(packer(gallery), form),
    ]);
    expect(both[0]).toEqual(both[1]);
    const other = await startShipment(packer(gallery), { ...form, toName: 'Perrin' });
    expect(other).toMatchObject({ refusal: { code: 'key_used_for_something_else' } });
  });

  test.each<[string, () => Promise<Record<string, string>>, string]>([
    [
      'no such commission',
      async () => Promise.resolve({ commissionId: randomUUID() }),
      'no_such_commission',
    ],
    ['no such receipt', async () => Promise.resolve({ saleNumber: '999999' }), 'no_such_receipt'],
    [
      'a receipt that was taken along',
      async () => ({ saleNumber: String(await sold(gallery, 'taken')) }),
      'receipt_was_taken_along',
    ],
    [
      'no such collector',
      async () => Promise.resolve({ collectorId: randomUUID() }),
      'no_such_collector',
    ],
    ['nobody to send to', async () => Promise.resolve({ toName: '  ' }), 'nobody_to_send_to'],
    ['nowhere to send to', async () => Promise.resolve({ toAddress: '' }), 'nowhere_to_send_to'],
    [
      'no such terms',
      async () => Promise.resolve({ carrierRuleId: randomUUID() }),
      'no_such_terms',
    ],
  ])('refuses %s', async (_label, fields, code) => {
    const refused = await startShipment(packer(gallery), toStart(await fields()));
    expect(refused).toMatchObject({ ok: false, refusal: { code } });
  });

  test('whoever keeps the books does not send', async () => {
    const refused = await startShipment(doing(gallery.books), toStart());
    expect(refused).toMatchObject({ refusal: { code: 'not_allowed', permission: 'sending.do' } });
  });

  test('what is fetched needs no address, and keeps no carrier', async () => {
    const started = await aShipment(gallery, { how: 'fetched', toAddress: '' });
    const shipment = await findShipment(gallery.maker, started.number);
    expect(shipment).toMatchObject({ how: 'fetched', carrier: '', terms: null });
  });

  test('the database sends nothing to nobody', async () => {
    const row = { how: 'carrier', toName: '', toAddress: '', madeById: gallery.maker.id } as const;
    await expect(db().shipment.create({ data: { ...row, at: new Date() } })).rejects.toSatisfy(
      (error) => thrown(error) === 'shipment_goes_somewhere',
    );
  });
});

describe('how and where to', () => {
  const change = (shipmentId: string, fields: Record<string, string> = {}) =>
    changeShipmentInput.parse({
      ...{ requestKey: randomUUID(), shipmentId, how: 'by_us', toName: 'Perrin Oday' },
      ...{ toAddress: '3 Shore Walk', insuredCents: '1,200', ...fields },
    });

  test('is changed while it is here', async () => {
    const { shipmentId, number } = await aShipment(gallery);
    done(await changeShipment(packer(gallery), change(shipmentId)));
    expect(await findShipment(gallery.maker, number)).toMatchObject({
      ...{ how: 'by_us', carrier: '', toName: 'Perrin Oday', insuredCents: 120_000n },
    });
  });

  test('stays once it left, and for a shipment that is not', async () => {
    const { shipmentId } = await aSent(gallery);
    const after = await changeShipment(packer(gallery), change(shipmentId));
    expect(after).toMatchObject({ refusal: { code: 'left_already' } });
    const none = await changeShipment(packer(gallery), change(randomUUID()));
    expect(none).toMatchObject({ refusal: { code: 'no_such_shipment' } });
  });
});

describe('terms of carriers', () => {
  const terms = (fields: Record<string, string> = {}) =>
    carrierTermsInput.parse({
      ...{ requestKey: randomUUID(), name: 'Parcel by size', counts: 'size' },
      ...{ divisorIn3: '150', reportDays: '3', claimDays: '30', cover: '50' },
      ...{ holdsFromOn: '2026-11-18', ...fields },
    });

  test('some come with the gallery; new ones of the same name take their place from their day', async () => {
    const before = await listTermsOn(gallery.maker, today);
    expect(before.length).toBeGreaterThanOrEqual(3);
    expect(before.find(({ divisorIn3 }) => divisorIn3 === 166)?.sides).toBe('nearest');
    const old = before.find(({ divisorIn3 }) => divisorIn3 === 139)?.name ?? '';
    done(await keepCarrierTerms(doing(gallery.owner), terms({ name: old })));
    const named = (all: typeof before) => all.find(({ name }) => name === old);
    expect(named(await listTermsOn(gallery.maker, today))?.divisorIn3).toBe(150);
    expect(named(await listTermsOn(gallery.maker, '2026-11-17'))?.divisorIn3).toBe(139);
  });

  test.each([
    [
      'the same day again',
      { name: 'Art handlers, by the scale', holdsFromOn: '2025-01-01' },
      'holds_already',
    ],
    [
      'size without a divisor',
      { holdsFromOn: '2026-11-19', divisorIn3: '' },
      'size_without_divisor',
    ],
  ])('refuses %s', async (_label, fields, code) => {
    const refused = await keepCarrierTerms(doing(gallery.owner), terms(fields));
    expect(refused).toMatchObject({ ok: false, refusal: { code } });
  });

  test('are the owner’s, and never changed', async () => {
    const refused = await keepCarrierTerms(doing(gallery.maker), terms());
    expect(refused).toMatchObject({ refusal: { permission: 'settings.keep' } });
    await expect(db().carrierRule.updateMany({ data: { reportDays: 99 } })).rejects.toThrow(
      /never|change/i,
    );
  });

  test.each([
    [{ divisorIn3: '0' }],
    [{ divisorIn3: 'many' }],
    [{ reportDays: '-1' }],
    [{ reportDays: '99999' }],
    [{ counts: 'weather' }],
    [{ holdsFromOn: '2026-02-30' }],
    [{ name: '' }],
  ])('%j does not read', (fields) => {
    expect(() => terms(fields)).toThrow();
  });
});
