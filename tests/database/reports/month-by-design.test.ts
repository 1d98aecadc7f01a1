import { beforeEach, expect, test } from 'vitest';
import type { Month } from '@/lib/dates/rules';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { monthByDesign } from '@/lib/reports/reads';
import { linesBehind } from '@/lib/reports/reads/lines-behind';
import { decideCommissionSale } from '@/lib/sales/rules';
import { priceSlip } from '@/lib/sales/rules/pricing';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { aCommissionSale } from '@/tests/rules/sales/a-commission-sale';

let gallery: OpenGallery;
let tern: TestPiece;
let fern: TestPiece;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const ternFacts = { sku: 'TERN-10', title: 'Tern over Shoals', priceCents: 13_800n, here: 50 };
  tern = await aPieceHere(gallery, ternFacts);
  const fernFacts = { sku: 'FERN-5', title: 'Sword Fern', priceCents: 4_250n, here: 50 };
  fern = await aPieceHere(gallery, fernFacts);
});

async function sell(at: string, ...lines: { piece: TestPiece; quantity: number }[]) {
  const sold = await sellNow(doing(gallery.clerk, new Date(at)), aSale(lines));
  if (!sold.ok) throw new Error(sold.refusal.code);
  return sold.value.number;
}

async function handOver(at: string, soldOn: '2026-11-12', priceCents: bigint) {
  const parts = [{ name: 'State', ratePercent: '6.5' }];
  const commission = aCommissionSale({ priceCents, paidCents: 0n });
  const decided = decideCommissionSale({ ...commission, title: 'Estuary wall' }, parts, 'invoice');
  const where = { placeId: gallery.counterId, taxPlaceId: gallery.taxPlaceId, collectorId: null };
  const sale = { ...decided, ...where, channel: 'commission' as const, soldOn };
  await inTransaction(async (tx) => {
    await recordSales(tx, doing(gallery.owner, new Date(at)), [sale]);
    return ok(null);
  });
}

const of = (month: Month) => monthByDesign(gallery.owner, month);

/** The zone is Pacific: November 2026 begins there at 07:00 UTC on the first. */
async function aNovember() {
  await sell('2026-11-01T06:59:59Z', { piece: tern, quantity: 1 });
  await sell('2026-11-01T07:00:00Z', { piece: tern, quantity: 2 });
  await sell('2026-11-15T20:00:00Z', { piece: tern, quantity: 1 }, { piece: fern, quantity: 3 });
  await handOver('2026-11-12T20:00:00Z', '2026-11-12', 164_000n);
  await sell('2026-12-01T07:59:59Z', { piece: fern, quantity: 1 });
  await sell('2026-12-01T08:00:00Z', { piece: fern, quantity: 5 });
}

test('a month has what hand-written numbers say: units, net and shares by design', async () => {
  await aNovember();
  const november = await of('2026-11');
  expect(november.designs).toMatchObject([
    { code: 'TERN-10', title: 'Tern over Shoals', units: 3, netCents: 41_400n, shareTenths: 186 },
    { code: 'FERN-5', title: 'Sword Fern', units: 4, netCents: 17_000n, shareTenths: 77 },
  ]);
  expect(november.commissions).toEqual({ units: 1, netCents: 164_000n, shareTenths: 737 });
  expect(november).toMatchObject({ units: 8, netCents: 222_400n, sales: 4 });
  expect(november.netCents).toBe(november.salesNetCents);
});

test('a sale counts in the month of its day in the gallery, not of its day in Greenwich', async () => {
  await aNovember();
  expect((await of('2026-10')).designs).toMatchObject([{ units: 1, netCents: 13_800n }]);
  expect((await of('2026-12')).designs).toMatchObject([{ units: 5, netCents: 21_250n }]);
  const all = await Promise.all((['2026-10', '2026-11', '2026-12'] as const).map(of));
  const [sum] = await sql('select sum("netCents")::text as net from "SaleLine"');
  expect(sum).toEqual({ net: String(all.reduce((net, each) => net + each.netCents, 0n)) });
});

test('the report equals the sum that plain SQL makes of the sale lines', async () => {
  await aNovember();
  const november = await of('2026-11');
  const rows = await sql<{ code: string; units: number; net: string }>(
    `select d.code, sum(l.quantity)::int as units, sum(l."netCents")::text as net
     from "SaleLine" l join "Design" d on d.id = l."designId"
     where l."saleId" in (select id from "Sale"
       where ("soldAt" at time zone 'America/Los_Angeles')::date
         between '2026-11-01' and '2026-11-30')
     group by d.code order by 3 desc`,
  );
  const told = november.designs.map(({ code, units, netCents }) => ({
    ...{ code, units, net: String(netCents) },
  }));
  expect(told).toEqual(rows);
});

test('each figure opens to its sale lines, and these add up to it', async () => {
  await aNovember();
  const november = await of('2026-11');
  for (const design of november.designs) {
    const behind = await linesBehind(gallery.owner, '2026-11', { design: design.code });
    expect(behind).toMatchObject({ units: design.units, netCents: design.netCents });
  }
  const commissions = await linesBehind(gallery.owner, '2026-11', { beside: 'commissions' });
  expect(commissions).toMatchObject({
    ...{ units: 1, netCents: 164_000n },
    lines: [{ title: 'Estuary wall', soldOn: '2026-11-12' }],
  });
  expect(await linesBehind(gallery.owner, '2026-11', { design: 'NONE' })).toBeNull();
});

test('a month without a sale is empty, and not refused', async () => {
  expect(await of('2026-02')).toMatchObject({ designs: [], commissions: null, netCents: 0n });
});

test('whoever may not see the month does not get it', async () => {
  await expect(monthByDesign(gallery.maker, '2026-11')).rejects.toThrow();
  await expect(linesBehind(gallery.clerk, '2026-11', { beside: 'commissions' })).rejects.toThrow();
});

test('what has no design stands beside; money for later is no part of the month', async () => {
  await sell('2026-11-15T20:00:00Z', { piece: tern, quantity: 1 });
  const doer = doing(gallery.owner, new Date('2026-11-16T20:00:00Z'));
  const nothing = { skuId: null, designId: null, what: '', quantity: 1, unitCostCents: null };
  await inTransaction(async (tx) => {
    const credit = await tx.credit.create({
      data: { code: 'FOGHORN7', kind: 'voucher', createdAt: doer.at },
    });
    const kinds = [
      { kind: 'shipping', unitPriceCents: 1_800n, taxable: true },
      { kind: 'typed', unitPriceCents: 2_200n, taxable: true },
      { kind: 'voucher', unitPriceCents: 10_000n, taxable: false, creditId: credit.id },
    ] as const;
    const lines = kinds.map((line) => ({ ...nothing, title: line.kind, ...line }));
    const priced = priceSlip(lines, [{ name: 'State', ratePercent: '6.5' }], 'invoice');
    const paid = { kind: 'card', amountCents: priced.totalCents, givenCents: null } as const;
    await recordSales(tx, doer, [
      {
        ...priced,
        ...{ tenders: [{ ...paid, reference: '' }], channel: 'counter', soldOn: '2026-11-16' },
        ...{ placeId: gallery.counterId, taxPlaceId: gallery.taxPlaceId, collectorId: null },
      },
    ]);
    return ok(null);
  });
  const november = await of('2026-11');
  expect(november.other).toEqual({ units: 2, netCents: 4_000n, shareTenths: 225 });
  expect(november).toMatchObject({ netCents: 17_800n, salesNetCents: 17_800n, units: 1 });
  const behind = await linesBehind(gallery.owner, '2026-11', { beside: 'other' });
  expect(behind?.lines.map((line) => line.title)).toEqual(['shipping', 'typed']);
});
