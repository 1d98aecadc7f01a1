import { randomUUID } from 'node:crypto';
import { giveStep } from '@/lib/holds/writes/approvals';
import { waitForPiece } from '@/lib/holds/writes/waiting';
import { holdPieces } from '@/lib/holds/writes';
import { beginLayaway } from '@/lib/layaway/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { accounts } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { recordSales, type RecordedSale } from '@/lib/sales/writes/record-sales';
import { recordReferralFee } from '@/lib/sales/writes/referral-fee';
import { putOnSlip } from '@/lib/counter/writes';
import { noteWay } from '@/lib/sending/writes/way';
import { moveCredits, openCredit } from '@/lib/vouchers/writes';
import { aPacked, became } from '@/tests/database/sending/a-shipment';
import { asked as askedCommission, done } from '@/tests/database/commissions/a-commission';
import { asked as askedLayaway } from '@/tests/database/layaway/a-layaway';
import {
  aPieceHere,
  aSale,
  doing,
  noon,
  later,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';

/** Somebody with a row in every table that names a collector; each row tells of `mark`. */
export type WholeLife = { id: string; mark: string; piece: TestPiece };

let lives = 0;

/** Writes down a whole life with the gallery: everything that anybody can have with it. */
export async function aWholeLife(gallery: OpenGallery, mark: string): Promise<WholeLife> {
  const { id } = await db().collector.create({
    data: {
      ...{ kind: 'business', name: `Name ${mark}`, firm: `Firm ${mark}`, createdAt: noon },
      ...{ email: `${mark}@life.example`, phone: '555 010 0152', street: `1 ${mark} Lane` },
      ...{ city: `Town ${mark}`, state: 'WA', postcode: '00019', note: `Note of ${mark}` },
    },
  });
  lives += 1;
  const piece = await aPieceHere(gallery, {
    ...{ sku: `TERN-${lives}`, title: `Tern ${lives}`, priceCents: 10_000n, here: 40 },
  });
  const life = { id, mark, piece };
  await writeCard(gallery, life);
  await sellToThem(gallery, life);
  await keepForThem(gallery, life);
  await promiseThem(gallery, life);
  await shipToThem(gallery, life);
  return life;
}

async function writeCard(gallery: OpenGallery, { id: collectorId, mark }: WholeLife) {
  const staffId = gallery.clerk.id;
  const address = await db().collectorAddress.create({
    data: {
      ...{ collectorId, label: `House ${mark}`, street: `2 ${mark} Road`, city: 'Fernhollow' },
      at: noon,
    },
  });
  await db().collectorPerson.create({
    data: { collectorId, name: `Person ${mark}`, email: `p.${mark}@life.example`, at: noon },
  });
  await db().collectorNote.create({
    data: { collectorId, words: `Words on ${mark}`, staffId, at: noon },
  });
  await db().ownedPiece.create({
    data: {
      ...{ collectorId, title: `Told ${mark}`, addressId: address.id, hangs: `stairs ${mark}` },
      ...{ staffId, at: noon },
    },
  });
  await db().consent.create({
    data: {
      ...{ collectorId, to: 'letter', given: true, how: 'call', staffId, at: noon },
      saidOn: dateFromDay('2026-11-01'),
    },
  });
  await db().tradeTerms.create({
    data: {
      ...{ collectorId, way: 'referral_fee', percent: '10', note: `Terms ${mark}` },
      sinceOn: dateFromDay('2026-01-01'),
    },
  });
  await db().resaleCertificate.create({
    data: {
      ...{ collectorId, state: 'WA', permitNumber: `P-${mark}`, legalName: `Legal ${mark}` },
      ...{ fromOn: dateFromDay('2026-01-01'), staffId, at: noon },
    },
  });
}

async function sellToThem(gallery: OpenGallery, { id: collectorId, piece, mark }: WholeLife) {
  const doer = doing(gallery.clerk);
  const lines = [{ piece, quantity: 1 }];
  done(await sellNow(doer, aSale(lines, { collectorId })));
  const { number, saleId } = await soldToSomebodyElse(gallery, piece, collectorId);
  await inTransaction(async (tx) => {
    const fee = { saleId, saleNumber: number, collectorId, percent: '10', netCents: 10_000n };
    await recordReferralFee(tx, doer, { ...fee, on: '2026-11-20' });
    const credit = { kind: 'store_credit', collectorId, note: `For ${mark}` } as const;
    const { creditId } = await openCredit(tx, doer, { ...credit, expiresOn: null });
    await moveCredits(tx, doer, [{ creditId, amountCents: 4_000n }]);
    await postEntry(tx, {
      ...{ on: '2026-11-20', at: noon, staffId: gallery.clerk.id, memo: `Owed by ${mark}` },
      ...{ paper: 'Collector', paperId: collectorId },
      postings: [
        { account: accounts.owedByCollectors, amountCents: 700n, collectorId },
        { account: accounts.otherSales, amountCents: -700n },
      ],
    });
    return ok(null);
  });
  const line = { kind: 'piece' as const, skuId: piece.skuId, quantity: 1 };
  done(await putOnSlip(doer, { requestKey: randomUUID(), slipId: null, line, collectorId }));
  await db().slip.updateMany({ where: { collectorId, saleId: null }, data: { asideAs: mark } });
}

/** A sale to nobody in particular, who was brought by them. */
async function soldToSomebodyElse(gallery: OpenGallery, piece: TestPiece, designerId: string) {
  const sums = { netCents: 10_000n, taxCents: 0n, totalCents: 10_000n, taxes: [] };
  const line = {
    ...{ kind: 'typed' as const, skuId: null, designId: null, title: 'A tile', what: '' },
    ...{ quantity: 1, unitPriceCents: 10_000n, discountCents: 0n, netCents: 10_000n },
    ...{ taxable: false, taxKind: 'none' as const, taxableCents: 0n, taxCents: 0n },
    unitCostCents: null,
  };
  const sold = await inTransaction<RecordedSale[], never>(async (tx) =>
    ok(
      await recordSales(tx, doing(gallery.clerk), [
        {
          ...{ ...sums, lines: [line], channel: 'counter', soldOn: '2026-11-20' },
          ...{ placeId: gallery.counterId, taxPlaceId: gallery.taxPlaceId, collectorId: null },
          tenders: [{ kind: 'cash', amountCents: 10_000n, givenCents: null, reference: '' }],
          referredById: designerId,
        },
      ]),
    ),
  );
  const [sale] = done(sold);
  if (!sale) throw new Error(`Nothing of ${piece.sku} was sold.`);
  return sale;
}

async function keepForThem(gallery: OpenGallery, { id: collectorId, piece, mark }: WholeLife) {
  const doer = doing(gallery.clerk);
  const { skuId } = piece;
  await inTransaction(async (tx) => {
    const hold = { skuId, placeId: gallery.counterId, quantity: 1, editionNumber: null };
    const forWhom = { collectorId, forWhom: `Held for ${mark}`, phone: '', note: '' };
    done(await holdPieces(tx, doer, { ...hold, ...forWhom, untilAt: later(86_400) }));
    done(
      await giveStep(tx, doer, {
        ...{ collectorId, dueOn: '2026-11-27', valueCents: 10_000n, pictures: [] },
        ...{ chosen: [{ code: piece.sku, quantity: 1, editionNumber: null }] },
        ...{ condition: `as ${mark} saw it`, security: `a cheque of ${mark}` },
      }),
    );
    return ok(null);
  });
  const waits = { what: 'back_again' as const, forWhom: `Waits ${mark}`, phone: '', note: '' };
  done(await waitForPiece(doer, { requestKey: randomUUID(), skuId, collectorId, ...waits }));
  const layaway = { shownNet: '100.00', down: '27.00' };
  done(await beginLayaway(doer, askedLayaway(piece.sku, collectorId, layaway)));
}

/** Something is on its way to them. */
async function shipToThem(gallery: OpenGallery, { id: collectorId, mark }: WholeLife) {
  const words = { toName: `Sent to ${mark}`, toAddress: `1 Shore Walk of ${mark}` };
  const fields = { collectorId, ...words, note: `Stairs at ${mark}` };
  const { shipmentId } = await aPacked(gallery, fields);
  done(await noteWay(doing(gallery.clerk), became(shipmentId, 'sent')));
}

async function promiseThem(gallery: OpenGallery, { id: collectorId, piece, mark }: WholeLife) {
  const by = { staffId: gallery.clerk.id, at: noon };
  await db().specialOrder.create({
    data: {
      ...{ collectorId, skuId: piece.skuId, quantity: 1, unitPriceCents: 10_000n, ...by },
      ...{ depositCents: 0n, wish: `Wish of ${mark}`, readyAboutOn: dateFromDay('2027-02-01') },
      askedOn: dateFromDay('2026-11-01'),
    },
  });
  await db().wholesaleOrder.create({
    data: {
      ...{ collectorId, pricePercent: '50', netDays: 30, theirNumber: `N-${mark}`, ...by },
      askedOn: dateFromDay('2026-11-02'),
    },
  });
  await db().townPromise.create({
    data: {
      ...{ collectorId, town: `Town ${mark}`, state: 'WA' },
      fromOn: dateFromDay('2026-01-01'),
    },
  });
  const place = await db().place.create({ data: { name: `Shelf ${mark}`, kind: 'consignee' } });
  await db().consignee.create({
    data: {
      ...{ collectorId, placeId: place.id, sharePercent: '40', terms: `Share of ${mark}` },
      sinceOn: dateFromDay('2026-01-01'),
    },
  });
  const title = `Work ${mark}`;
  await askedCommission(gallery.maker, '2026-11-03', { collectorId, title, newName: '' });
  const brought = { title: 'Waves for a stair', newName: 'Kenji Aldersey' };
  const other = await askedCommission(gallery.maker, '2026-11-03', brought);
  await db().commission.update({
    where: { id: other.commissionId },
    data: { broughtById: collectorId, broughtPercent: '10', broughtKnown: true },
  });
}
