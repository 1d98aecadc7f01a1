import type { Doer } from '@/lib/access/rules';
import { collectorFields } from '@/lib/collectors/input';
import { addCollector } from '@/lib/collectors/writes';
import { beginWithGalleryInput, consignInput, reportSoldInput } from '@/lib/consignment/input';
import { beginWithGallery } from '@/lib/consignment/writes';
import { reportSold } from '@/lib/consignment/writes/report';
import { sendToGallery } from '@/lib/consignment/writes/send';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok } from '@/lib/platform/result';
import { settleAccountInput } from '@/lib/sales/input/settling';
import { settleAccount } from '@/lib/sales/writes/settle-account';
import { bookCountInput } from '@/lib/stock/input/counts';
import { movePiecesInput } from '@/lib/stock/input/places';
import { hashDifferences, readDifferences } from '@/lib/stock/reads/moves/differences';
import { beginCount, bookCount } from '@/lib/stock/writes/count';
import { movePieces } from '@/lib/stock/writes/move';
import { addPlace, renamePlace } from '@/lib/stock/writes/places';
import { scanInCount, setCounted } from '@/lib/stock/writes/scan';
import { done } from '@/seed/done';
import { backRoomName, gallery } from '@/seed/scenario/gallery';
import { kilnShed, noteWords, otherGalleries } from '@/seed/scenario/stockroom';
import type { SetUp } from '@/seed/set-up';

type Demo = { today: Day; setUp: SetUp };

type AtHand = { skuId: string; code: string; priceCents: bigint };

/**
 * The stock room behind the counter: places and a move, a count that was booked and one still open,
 * and two other galleries, one of which owes us and lets some pieces sit too long.
 */
export async function playStockroom({ today, setUp }: Demo): Promise<void> {
  const at = (days: number, time: string): Doer => ({
    actor: setUp.owner,
    at: instantOf(addDays(today, -days), time, gallery.timeZone),
  });
  const pieces = await piecesAtHand(setUp.floorId);
  await namePlaces(at(500, '09:00'), setUp.backRoomId);
  const ready = pieces.slice(0, 3).map(({ code }) => `${code}*2`);
  done(
    await movePieces(
      at(34, '17:20'),
      movePiecesInput.parse({
        ...{ requestKey: newId(), fromId: setUp.floorId, toId: setUp.backRoomId },
        ...{ ready: ready.join('.'), note: noteWords.toBackRoom },
      }),
    ),
  );
  await countBackRoom({ today, setUp }, pieces);
  await playSaltgrass({ today, setUp }, pieces.slice(2, 7));

  const loft = await begin(at(80, '11:00'), otherGalleries.netLoft, addDays(today, -80));
  await sendThem(at(79, '10:10'), setUp, {
    ...{ consigneeId: loft, note: '' },
    ready: pieces.slice(0, 2).map(({ code }) => code),
  });
}

/** What stands on the floor in plenty and is free, the most of it first. */
async function piecesAtHand(placeId: string): Promise<AtHand[]> {
  const levels = await db().stockLevel.findMany({
    where: {
      ...{ placeId, onHand: { gte: 5 }, held: 0 },
      sku: { making: 'open_stock', grade: 'first', edition: null },
    },
    select: { sku: { select: { id: true, code: true, priceCents: true } } },
    orderBy: [{ onHand: 'desc' }, { sku: { code: 'asc' } }],
    take: 8,
  });
  invariant(levels.length >= 7, 'The demo has plenty of seven pieces.');
  return levels.map(({ sku: { id, ...sku } }) => ({ skuId: id, ...sku }));
}

async function namePlaces(doer: Doer, backRoomId: string): Promise<void> {
  const back = { requestKey: newId(), placeId: backRoomId, name: backRoomName };
  done(await renamePlace(doer, { ...back, kind: 'storeroom' }));
  done(await addPlace(doer, { requestKey: newId(), name: kilnShed, kind: 'studio' }));
}

/** One piece was missing three weeks ago; today somebody counts again, and is not done. */
async function countBackRoom({ today, setUp }: Demo, pieces: readonly AtHand[]): Promise<void> {
  const at = (days: number, time: string): Doer => ({
    actor: setUp.seller,
    at: instantOf(addDays(today, -days), time, gallery.timeZone),
  });
  const { backRoomId: placeId } = setUp;
  const begun = done(
    await beginCount(at(21, '08:40'), { requestKey: newId(), placeId, how: 'part' }),
  );
  const { id: countId } = await db().stockCount.findUniqueOrThrow({
    where: { number: begun.number },
    select: { id: true },
  });
  for (const [place, { skuId }] of pieces.slice(0, 3).entries()) {
    const line = { requestKey: newId(), countId, skuId, counted: place === 1 ? 1 : 2 };
    done(await setCounted(at(21, '08:50'), line));
  }
  const startedAt = at(21, '08:40').at;
  const counted = { id: countId, placeId, partOnly: true, startedAt };
  const shownSha256 = hashDifferences(await readDifferences(db(), counted));
  const book = { requestKey: newId(), countId, shownSha256, whyForAll: 'missing' };
  done(await bookCount(at(21, '09:05'), bookCountInput.parse(book)));

  const open = done(await beginCount(at(0, '00:20'), { requestKey: newId(), placeId, how: 'all' }));
  const now = await db().stockCount.findUniqueOrThrow({
    where: { number: open.number },
    select: { id: true },
  });
  for (const { code } of pieces.slice(0, 2)) {
    done(await scanInCount(at(0, '00:21'), { requestKey: newId(), countId: now.id, code }));
  }
}

/** Pieces that went out five months ago, a statement that was paid, and one that is late. */
async function playSaltgrass({ today, setUp }: Demo, pieces: readonly AtHand[]): Promise<void> {
  const on = (days: number) => addDays(today, -days);
  const at = (days: number, time: string): Doer => ({
    actor: setUp.owner,
    at: instantOf(on(days), time, gallery.timeZone),
  });
  const id = await begin(at(160, '14:00'), otherGalleries.saltgrass, on(160));
  const codes = pieces.map(({ code }) => code);
  const first = { consigneeId: id, note: noteWords.first };
  await sendThem(at(155, '09:30'), setUp, { ...first, ready: codes.map((code) => `${code}*2`) });
  const second = { consigneeId: id, note: noteWords.second };
  await sendThem(at(60, '09:30'), setUp, { ...second, ready: codes.slice(0, 2) });

  const [heron, fern, reed] = pieces;
  invariant(heron && fern && reed, 'Saltgrass Rooms has some of our pieces.');
  const march = { consigneeId: id, fromOn: on(120), untilOn: on(91) };
  const discounted = { discount: '10%', borneBy: 'gallery' };
  const paid = await report(at(88, '12:00'), march, [
    { piece: heron, soldOn: on(110), ...discounted },
    { piece: fern, soldOn: on(95) },
  ]);
  const { dueCents, saleId } = await db().consignmentReport.findUniqueOrThrow({
    where: { number: paid },
    select: { dueCents: true, saleId: true },
  });
  const money = { requestKey: newId(), saleId, kind: 'cheque', reference: '2217' };
  const amount = plainCents(dueCents);
  const payment = settleAccountInput.parse({ ...money, amount, receivedOn: on(74) });
  done(await settleAccount(at(74, '15:15'), payment));
  await report(at(28, '12:00'), { consigneeId: id, fromOn: on(60), untilOn: on(31) }, [
    { piece: reed, soldOn: on(44), discount: '5.00', borneBy: 'both' },
    { piece: heron, soldOn: on(36) },
  ]);
}

type GalleryWords = (typeof otherGalleries)[keyof typeof otherGalleries];

async function begin(doer: Doer, words: GalleryWords, sinceOn: Day): Promise<string> {
  const { sharePercent, payDays, terms, ...who } = words;
  const added = await inTransaction<string, never>(async (tx) =>
    ok(await addCollector(tx, doer, collectorFields.parse(who))),
  );
  const agreed = { collectorId: done(added), sharePercent, payDays, terms, sinceOn };
  const input = beginWithGalleryInput.parse({ requestKey: newId(), ...agreed });
  return done(await beginWithGallery(doer, input)).consigneeId;
}

async function sendThem(
  doer: Doer,
  setUp: SetUp,
  note: { consigneeId: string; ready: readonly string[]; note: string },
): Promise<void> {
  const ready = note.ready.join('.');
  const input = { ...note, requestKey: newId(), placeId: setUp.floorId, ready };
  done(await sendToGallery(doer, consignInput.parse(input)));
}

type SoldWords = { piece: AtHand; soldOn: Day; discount?: string; borneBy?: string };

async function report(
  doer: Doer,
  of: { consigneeId: string; fromOn: Day; untilOn: Day },
  sold: readonly SoldWords[],
): Promise<number> {
  const lines = sold.map(({ piece, soldOn, discount = '', borneBy = 'nobody' }) => ({
    ...{ sku: piece.code, quantity: '1', soldOn, discount, borneBy },
    retail: plainCents(piece.priceCents),
  }));
  const input = reportSoldInput.parse({ requestKey: newId(), ...of, lines });
  return done(await reportSold(doer, input)).number;
}
