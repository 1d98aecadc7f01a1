import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { agreed, asked } from '@/tests/database/commissions/a-commission';
import { startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';
import { aCollector, aSlipWith, change, postedTo, sellIt, slipNow, toldBy } from './a-counter';

let gallery: OpenGallery;
let fern: TestPiece;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  fern = await aPieceHere(gallery, {
    ...{ sku: 'SF-08-MW', title: 'Sword Fern', priceCents: 10_000n, here: 5 },
  });
});

const clerk = () => doing(gallery.clerk);
const aFern = () => ({ kind: 'piece', skuId: fern.skuId, quantity: 1 }) as const;

async function anAgreedCommission() {
  const { commissionId } = await asked(gallery.maker, '2026-11-02');
  const what = { commissionId, day: '2026-11-03', priceCents: 500_000n, depositCents: 250_000n };
  await agreed(gallery, { ...what, day: '2026-11-03' });
  return commissionId;
}

test('a payment for a commission beside a tile is taken once, untaxed, and is a deposit', async () => {
  const commissionId = await anAgreedCommission();
  const slipId = await aSlipWith(clerk(), [
    aFern(),
    { kind: 'instalment', commissionId, cents: 250_000n },
  ]);
  const tenders = [{ kind: 'card', amountCents: null, reference: '000482' }] as const;
  expect(toldBy(await sellIt(clerk(), slipId, 260_800n, { tenders }))).toBe('done');
  expect(await postedTo('2000')).toEqual([-250_000n]);
  expect(await postedTo('1010')).toEqual([260_800n]);
  expect(await postedTo('2100')).toEqual([-150n, -650n]);
  const payments = await db().commissionPayment.findMany();
  expect(payments).toMatchObject([{ commissionId, amountCents: 250_000n, kind: 'card' }]);
  const sale = await db().sale.findFirstOrThrow();
  expect(payments[0]?.entryId).toBe(sale.entryId);
});

test('more than the commission owes is refused, and the tile stays on the slip', async () => {
  const commissionId = await anAgreedCommission();
  const slipId = await aSlipWith(clerk(), [
    aFern(),
    { kind: 'instalment', commissionId, cents: 600_000n },
  ]);
  expect(toldBy(await sellIt(clerk(), slipId, 610_800n))).toBe('payment_refused');
  expect(await db().sale.count()).toBe(0);
  expect((await slipNow(slipId)).content.lines).toHaveLength(2);
});

test('a sale for resale is exempt with a certificate that is good here, and keeps which', async () => {
  const shop = await aCollector('Driftline Goods', { kind: 'business' });
  const paper = { state: 'WA', permitNumber: 'W-1', legalName: 'Driftline Goods LLC' };
  const since = new Date('2026-01-01');
  const kept = { ...paper, fromOn: since, staffId: gallery.owner.id, at: since };
  const { id: certificateId } = await db().resaleCertificate.create({
    data: { ...kept, collectorId: shop, untilOn: new Date('2026-11-20') },
  });
  const slipId = await aSlipWith(clerk(), aFern(), shop);
  expect(toldBy(await change(clerk(), slipId, { does: 'resale', forResale: true }))).toBe('done');
  expect(toldBy(await sellIt(clerk(), slipId, 10_000n))).toBe('done');
  const sale = await db().sale.findFirstOrThrow();
  expect(sale).toMatchObject({ certificateId, taxCents: 0n });
  expect(sale.exemptWhy).toContain('W-1');
});

test('a certificate that ran out, or is of another state, exempts nothing', async () => {
  const shop = await aCollector('Driftline Goods', { kind: 'business' });
  const since = new Date('2025-01-01');
  const paper = { permitNumber: 'W-1', legalName: 'Driftline Goods LLC', collectorId: shop };
  const kept = { ...paper, fromOn: since, staffId: gallery.owner.id, at: since };
  const ranOut = { ...kept, state: 'WA', untilOn: new Date('2026-11-19') };
  await db().resaleCertificate.createMany({ data: [ranOut, { ...kept, state: 'OR' }] });
  const slipId = await aSlipWith(clerk(), aFern(), shop);
  await change(clerk(), slipId, { does: 'resale', forResale: true });
  expect(toldBy(await sellIt(clerk(), slipId, 10_000n))).not.toBe('done');
  expect(await db().sale.count()).toBe(0);
});
