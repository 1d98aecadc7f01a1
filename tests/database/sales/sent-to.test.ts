import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import type { Day } from '@/lib/dates/rules';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { strikeOut } from '@/lib/returns/writes';
import { listStatesWatched, readSentTo } from '@/lib/sales/reads/sent-to';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { startAfresh } from '@/tests/helpers/database';
import { doing, openGallery, type OpenGallery } from './open-gallery';

let gallery: OpenGallery;
let fenmark: string;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const place = await db().taxPlace.create({ data: { name: 'Gull Point', state: 'Fenmark' } });
  fenmark = place.id;
  await db().taxPlace.create({ data: { name: 'Heron Bar', state: 'Osterland' } });
  await db().taxState.create({
    data: { state: 'Fenmark', thresholdCents: 100_000n, window: 'this_or_last_calendar_year' },
  });
  await sold({ cents: 40_000n, on: '2026-03-01', delivery: 'sent' });
  await sold({ cents: 45_000n, on: '2026-11-20', delivery: 'installed' });
  await sold({ cents: 7_000n, on: '2026-11-20', delivery: 'taken' });
  await sold({ cents: 9_000n, on: '2025-12-31', delivery: 'sent' });
  await sold({ cents: 5_000n, on: '2026-05-01', delivery: 'sent', taxPlaceId: gallery.taxPlaceId });
});

type Sold = {
  cents: bigint;
  on: Day;
  delivery: 'taken' | 'sent' | 'installed';
  taxPlaceId?: string;
};

/** Sells something typed in, and freight of 10.00, untaxed, to be sent to Gull Point. */
async function sold({ cents, on, delivery, taxPlaceId = fenmark }: Sold): Promise<number> {
  const line = (kind: 'typed' | 'shipping', unitPriceCents: bigint): LineToPrice => ({
    ...{ kind, skuId: null, designId: null, title: kind, what: '', quantity: 1, unitPriceCents },
    ...{ taxable: false, unitCostCents: null },
    taxKind: kind === 'typed' ? 'goods' : 'shipping',
  });
  const slip = priceSlip([line('typed', cents - 1_000n), line('shipping', 1_000n)], [], 'invoice');
  const amountCents = slip.totalCents;
  const tenders = [{ kind: 'card' as const, amountCents, givenCents: null, reference: '' }];
  const done = await inTransaction<number, never>(async (tx) => {
    const sale = { channel: 'shipped', placeId: gallery.counterId, collectorId: null } as const;
    const [one] = await recordSales(tx, doing(gallery.clerk), [
      { ...slip, ...sale, tenders, taxPlaceId, soldOn: on, delivery },
    ]);
    return ok(one?.number ?? 0);
  });
  return done.ok ? done.value : 0;
}

describe('what was sent to a state', () => {
  test.each([
    ['a year', '2026-01-01', '2027-01-01', { cents: 85_000n, sales: 2 }],
    ['the year before', '2025-01-01', '2026-01-01', { cents: 9_000n, sales: 1 }],
    ['till a day that is not in it', '2026-03-01', '2026-11-20', { cents: 40_000n, sales: 1 }],
    ['a day without any', '2026-07-01', '2026-07-02', { cents: 0n, sales: 0 }],
  ] as const)('%s', async (_label, fromOn, untilOn, sent) => {
    expect(await readSentTo([{ state: 'Fenmark', fromOn, untilOn }])).toEqual([sent]);
  });

  test('is counted for several at once, in the order asked', async () => {
    const year = { fromOn: '2026-01-01', untilOn: '2027-01-01' } as const;
    const asked = ['Osterland', 'WA', 'Fenmark'].map((state) => ({ state, ...year }));
    expect((await readSentTo(asked)).map(({ cents }) => cents)).toEqual([0n, 5_000n, 85_000n]);
    expect(await readSentTo([])).toEqual([]);
  });
});

test('what came back is not counted, and a sale that came back whole is no sale', async () => {
  const number = await sold({ cents: 30_000n, on: '2026-11-20', delivery: 'sent' });
  const year = [{ state: 'Fenmark', fromOn: '2026-01-01', untilOn: '2027-01-01' }] as const;
  expect(await readSentTo(year)).toEqual([{ cents: 115_000n, sales: 3 }]);
  const struck = { requestKey: randomUUID(), saleNumber: number, reason: 'The wrong piece' };
  expect((await strikeOut(doing(gallery.owner), struck)).ok).toBe(true);
  expect(await readSentTo(year)).toEqual([{ cents: 85_000n, sales: 2 }]);
});

test('the states are listed with how far they have come, without the gallery’s own', async () => {
  const states = await listStatesWatched(gallery.clerk, '2026-11-20');
  expect(states).toMatchObject([
    {
      ...{ state: 'Fenmark', isKept: true, isRegistered: false },
      standing: { kind: 'near', words: '$850.00 of $1,000.00 and 2 sales this calendar year.' },
    },
    { state: 'Osterland', isKept: false, isRegistered: true, standing: { kind: 'nothing_kept' } },
  ]);
});
