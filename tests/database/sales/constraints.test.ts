import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Tx } from '@/lib/platform/db/transaction';
import { startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  noon,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from './open-gallery';
import { ruleMetBy } from './rule-met';

let gallery: OpenGallery;
let fern: TestPiece;
let saleId: string;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  fern = await aPieceHere(gallery, {
    sku: 'SF-08-MW',
    title: 'Sword Fern',
    priceCents: 9_650n,
    here: 3,
  });
  const sold = await sellNow(doing(gallery.clerk), aSale([{ piece: fern, quantity: 1 }]));
  if (!sold.ok) throw new Error('The fern is here and can be sold.');
  saleId = sold.value.saleId;
});

async function anEntry(tx: Tx, amounts: readonly bigint[]): Promise<string> {
  const id = randomUUID();
  const paper = { memo: 'by hand', paper: 'Sale', paperId: saleId };
  await tx.journalEntry.create({ data: { id, on: noon, at: noon, ...paper } });
  await tx.posting.createMany({
    data: amounts.map((amountCents) => ({ entryId: id, accountCode: '1000', amountCents })),
  });
  return id;
}

async function aHandmadeSale(tx: Tx, totalCents: bigint, paidCents: bigint): Promise<void> {
  const entryId = await anEntry(tx, [5n, -5n]);
  const at = { soldAt: noon, soldOn: noon };
  const { counterId: placeId, taxPlaceId, clerk } = gallery;
  const sums = { netCents: totalCents, taxCents: 0n, totalCents };
  const sale = await tx.sale.create({
    data: { channel: 'counter', placeId, taxPlaceId, staffId: clerk.id, entryId, ...at, ...sums },
  });
  await tx.saleLine.create({
    data: {
      ...{ saleId: sale.id, position: 1, kind: 'piece', skuId: fern.skuId, title: 'Sword Fern' },
      ...{ what: 'relief tile', quantity: 1, unitPriceCents: totalCents, netCents: totalCents },
      ...{ taxable: true, taxCents: 0n },
    },
  });
  await tx.tender.create({
    data: { saleId: sale.id, position: 1, kind: 'cash', amountCents: paidCents },
  });
}

describe('the database itself says no, by name', () => {
  test.each<[string, string, (tx: Tx) => Promise<unknown>]>([
    ['more pieces leave than are here', 'stock_never_below_zero', (tx) => move(tx, -3)],
    ['a movement of nothing', 'movement_moves_something', (tx) => move(tx, 0)],
    [
      'what is on hand is written over',
      'level_only_by_movement',
      (tx) => tx.stockLevel.updateMany({ data: { onHand: 99 } }),
    ],
    ['an entry a cent out', 'entry_balances', (tx) => anEntry(tx, [500n, -499n])],
    ['an entry of one posting', 'entry_balances', (tx) => anEntry(tx, [500n])],
    ['an entry without postings', 'entry_balances', (tx) => anEntry(tx, [])],
    ['a posting of nothing', 'posting_is_not_zero', (tx) => anEntry(tx, [500n, -500n, 0n])],
    ['a sale paid short', 'sale_adds_up', (tx) => aHandmadeSale(tx, 9_650n, 9_649n)],
    ['a sale whose piece stays here', 'sale_adds_up', (tx) => aHandmadeSale(tx, 9_650n, 9_650n)],
    [
      'a tender under a sale that is done',
      'sale_adds_up',
      (tx) => tx.tender.create({ data: { saleId, position: 2, kind: 'cash', amountCents: 1n } }),
    ],
    [
      'a posting under an entry that is done',
      'entry_balances',
      async (tx) => {
        const { id: entryId } = await tx.journalEntry.findFirstOrThrow();
        await tx.posting.create({ data: { entryId, accountCode: '1000', amountCents: 1n } });
      },
    ],
    [
      'a sale is changed',
      'never_changed',
      (tx) => tx.sale.update({ where: { id: saleId }, data: { totalCents: 1n } }),
    ],
    ['a sale is deleted', 'never_changed', (tx) => tx.sale.deleteMany()],
    ['a movement is deleted', 'never_changed', (tx) => tx.stockMovement.deleteMany()],
    [
      'a posting is changed',
      'never_changed',
      (tx) => tx.posting.updateMany({ data: { amountCents: 1n } }),
    ],
    ['an audit line is deleted', 'never_changed', (tx) => tx.auditLine.deleteMany()],
    [
      'the sales are emptied at once',
      'never_changed',
      (tx) => tx.$executeRaw`TRUNCATE "Tender" CASCADE`,
    ],
    [
      'less cash given than taken',
      'cash_given_covers_its_amount',
      (tx) =>
        tx.tender.create({
          data: { saleId, position: 3, kind: 'cash', amountCents: 5n, givenCents: 4n },
        }),
    ],
  ])('%s: %s', async (_label, rule, work) => {
    expect(await ruleMetBy(work)).toBe(rule);
  });

  test('and nothing of all that was kept', async () => {
    const { sales, levels } = await readBack();
    expect([sales, levels]).toEqual([1, [{ onHand: 2 }]]);
  });
});

function move(tx: Tx, quantity: number) {
  const { skuId } = fern;
  const { counterId: placeId } = gallery;
  return tx.stockMovement.create({
    data: { skuId, placeId, quantity, reason: 'broken', at: noon },
  });
}

async function readBack() {
  const { db } = await import('@/lib/platform/db/client');
  return {
    sales: await db().sale.count(),
    levels: await db().stockLevel.findMany({ select: { onHand: true } }),
  };
}
