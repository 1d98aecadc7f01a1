import { beforeAll, expect, test } from 'vitest';
import { listOpenPapers } from '@/lib/collectors/reads/papers';
import { dateFromDay } from '@/lib/dates/rules';
import { endHold, holdPieces } from '@/lib/holds/writes';
import { db } from '@/lib/platform/db/client';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { moveCredits, openCredit } from '@/lib/vouchers/writes';
import {
  aPieceHere,
  doing,
  later,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;
let collectorId: string;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const data = { name: 'Marit Oland', createdAt: new Date(0) };
  collectorId = (await db().collector.create({ data })).id;
  const fern = await aPieceHere(gallery, {
    ...{ sku: 'SF-08-MW', title: 'Sword Fern', priceCents: 10_000n, here: 5 },
  });
  await whole((tx) => holdTwo(tx, fern));
  await whole((tx) => leaveCredits(tx));
  const days = { readyAboutOn: dateFromDay('2027-02-01'), askedOn: dateFromDay('2026-11-01') };
  await db().specialOrder.create({
    data: {
      ...{ collectorId, skuId: fern.skuId, quantity: 2, unitPriceCents: 10_000n },
      ...{ depositCents: 0n, staffId: gallery.clerk.id, at: later(0), ...days },
    },
  });
});

async function whole(work: (tx: Tx) => Promise<void>): Promise<void> {
  await inTransaction(async (tx) => ok(await work(tx)));
}

/** One hold that stands, and one that was released. */
async function holdTwo(tx: Tx, { skuId }: TestPiece): Promise<void> {
  const doer = doing(gallery.clerk);
  const hold = {
    ...{ skuId, placeId: gallery.counterId, quantity: 1, editionNumber: null, collectorId },
    ...{ forWhom: 'Marit Oland', phone: '', untilAt: later(3_600), note: '' },
  };
  await holdPieces(tx, doer, hold);
  const second = await holdPieces(tx, doer, hold);
  if (second.ok) await endHold(tx, doer, { holdId: second.value.holdId, how: 'released' });
}

/** A store credit with money on it, and one without. */
async function leaveCredits(tx: Tx): Promise<void> {
  const doer = doing(gallery.clerk);
  const credit = { kind: 'store_credit', collectorId, note: '', expiresOn: null } as const;
  const { creditId } = await openCredit(tx, doer, credit);
  await openCredit(tx, doer, credit);
  await moveCredits(tx, doer, [{ creditId, amountCents: 4_000n }]);
}

test('what is open stands in their name, and what has ended does not', async () => {
  const papers = await listOpenPapers(gallery.clerk, collectorId);
  expect(papers).toMatchObject({
    holds: [{ title: 'Sword Fern', untilAt: later(3_600) }],
    orders: [{ title: 'Sword Fern', untilOn: '2027-02-01', totalCents: 20_000n }],
    credits: [{ kind: 'store_credit', balanceCents: 4_000n, expiresOn: null }],
    ...{ layaways: [], approvals: [] },
  });
});

test('everybody sees what their part lets them see', async () => {
  const counts = async (who: 'maker' | 'books') => {
    const { holds, orders, credits } = await listOpenPapers(gallery[who], collectorId);
    return [holds, orders, credits].map((each) => each.length);
  };
  expect(await counts('maker')).toEqual([0, 1, 0]);
  expect(await counts('books')).toEqual([0, 0, 0]);
  const { orders } = await listOpenPapers(gallery.maker, collectorId);
  expect(orders).toMatchObject([{ totalCents: null }]);
});
