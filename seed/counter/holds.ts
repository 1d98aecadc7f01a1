import { randomUUID } from 'node:crypto';
import type { Doer } from '@/lib/access/rules';
import { addDays, dateFromDay, dayOf, instantOf, type Day } from '@/lib/dates/rules';

import { giveStep } from '@/lib/holds/writes/approvals';
import { holdForSomebody } from '@/lib/holds/writes/keep';
import { waitForPiece } from '@/lib/holds/writes/waiting';
import { readLayaway } from '@/lib/layaway/reads/running';
import { beginLayaway } from '@/lib/layaway/writes';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok } from '@/lib/platform/result';
import { readPiecesForSale } from '@/lib/sales/reads';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { pieceLine, type PieceForSale } from '@/lib/sales/rules';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { readTaxSetting } from '@/lib/tax/reads';
import { planByDefault } from '@/lib/layaway/rules/begin';
import { done } from '@/seed/done';
import { gallery } from '@/seed/scenario/gallery';
import * as scenario from '@/seed/scenario/holds';
import type { SetUp } from '@/seed/set-up';

type Demo = { today: Day; setUp: SetUp; collectors: ReadonlyMap<string, string> };
type Shelf = { pieces: PieceForSale[]; gone: string };

/**
 * Plays what is kept back for people: holds that lapse, who waits, layaways that are late, running
 * and paid off, pieces that are tried at home, and sold ones that still hang here.
 */
export async function keepForPeople(demo: Demo): Promise<void> {
  const shelf = await freePieces(demo);
  await playHolds(demo, shelf);
  for (const [at, one] of scenario.layaways.entries()) {
    await playLayaway(demo, one, pieceAt(shelf, scenario.holds.length + at));
  }
  const before = scenario.holds.length + scenario.layaways.length;
  for (const [at, one] of scenario.approvals.entries()) {
    await playApproval(demo, one, pieceAt(shelf, before + at));
  }
  for (const [at, one] of scenario.stillHere.entries()) {
    await playStillHere(demo, one, pieceAt(shelf, before + scenario.approvals.length + at));
  }
}

/** Pieces with a few free ones on the floor, one of each design first, and one that is gone. */
async function freePieces({ today, setUp }: Demo): Promise<Shelf> {
  const levels = await db().stockLevel.findMany({
    where: { placeId: setUp.floorId, sku: { making: 'open_stock', priceCents: { gt: 9_000n } } },
    orderBy: { sku: { code: 'desc' } },
    select: { skuId: true, onHand: true, held: true, sku: { select: { designId: true } } },
  });
  const plenty = levels.filter((level) => level.onHand - level.held >= 3);
  const firsts = plenty.filter(
    ({ sku }, at) => plenty.findIndex((each) => each.sku.designId === sku.designId) === at,
  );
  const rest = plenty.filter((level) => !firsts.includes(level));
  const free = [...firsts, ...rest].map((level) => level.skuId);
  const gone = levels.find((level) => level.onHand === 0) ?? levels.at(-1);
  const from = { placeId: setUp.floorId, on: today, lengthUnit: 'in' } as const;
  const pieces = await readPiecesForSale(db(), free, from);
  const inOrder = free.flatMap((id) => pieces.get(id) ?? []);
  return { pieces: inOrder, gone: gone?.skuId ?? pieceAt({ pieces: inOrder, gone: '' }, 0).skuId };
}

function pieceAt({ pieces }: Shelf, at: number): PieceForSale {
  const piece = pieces[at % Math.max(pieces.length, 1)];
  invariant(piece, 'The demo has a few pieces on the floor.');
  return piece;
}

function doerAt({ setUp }: Demo, at: Date): Doer {
  return { actor: setUp.owner, at };
}

function onDay({ today }: Demo, daysAgo: number): Date {
  return instantOf(addDays(today, -daysAgo), '11:20', gallery.timeZone);
}

function inHours(hours: number): Date {
  return new Date(now().getTime() + hours * 3_600_000);
}

function idOf({ collectors }: Demo, name: string): string {
  const id = collectors.get(name);
  invariant(id, `${name} is in the address book.`);
  return id;
}

async function playHolds(demo: Demo, shelf: Shelf): Promise<void> {
  for (const [at, one] of scenario.holds.entries()) {
    const held = await holdForSomebody(doerAt(demo, inHours(-one.heldHoursAgo)), {
      ...{ requestKey: randomUUID(), skuId: pieceAt(shelf, at).skuId, placeId: demo.setUp.floorId },
      ...{ editionNumber: null, forWhom: one.who, phone: phoneOf(at) },
      quantity: isWaitedFor(at) && shelf.pieces.length > 11 ? freeOf(pieceAt(shelf, at)) : 1,
      collectorId: one.known ? idOf(demo, one.who) : null,
      ...{ untilOn: addDays(demo.today, one.untilInDays), untilTime: one.untilTime },
      note: one.note,
    });
    done(held);
  }
  for (const [at, { who, what, hold, note, hoursAgo }] of scenario.waiting.entries()) {
    const skuId = hold === null ? shelf.gone : pieceAt(shelf, hold).skuId;
    const wish = { requestKey: randomUUID(), skuId, what, note };
    const named = { forWhom: who, phone: phoneOf(at + 20), collectorId: null };
    done(await waitForPiece(doerAt(demo, inHours(-hoursAgo)), { ...wish, ...named }));
  }
}

/** Whoever is second in line waits for all that there is. */
function isWaitedFor(hold: number): boolean {
  return scenario.waiting.some((each) => each.hold === hold && each.what === 'second_in_line');
}

function freeOf({ onHand, held }: PieceForSale): number {
  return onHand - held;
}

function phoneOf(at: number): string {
  return `(555) 010-0${String(310 + at)}`;
}

type LayawayPlayed = (typeof scenario.layaways)[number];

async function playLayaway(demo: Demo, one: LayawayPlayed, piece: PieceForSale): Promise<void> {
  const begunAt = onDay(demo, one.begunDaysAgo);
  const agreedOn = dayOf(begunAt, gallery.timeZone);
  const from = { placeId: demo.setUp.floorId, on: agreedOn, lengthUnit: 'in' } as const;
  const priced = (await readPiecesForSale(db(), [piece.skuId], from)).get(piece.skuId);
  invariant(priced, 'A piece that is here has its price.');
  const terms = { layawayDownPercent: '25', layawayDays: one.days };
  const plan = planByDefault(priced.priceCents, agreedOn, terms);
  const begun = await beginLayaway(doerAt(demo, begunAt), {
    ...{ requestKey: randomUUID(), collectorId: idOf(demo, one.who), pieces: piece.sku },
    ...{ holdId: '', discount: 0n, discountReason: '', down: plan.downCents },
    ...{ payments: one.payments, finalOn: plan.finalOn, shownNet: priced.priceCents },
  });
  const { layawayId } = done(begun);
  for (const daysAgo of one.paidDaysAgo) await payNext(demo, layawayId, daysAgo);
}

/** Takes what is due next, by card, as a slip does. */
async function payNext(demo: Demo, layawayId: string, daysAgo: number): Promise<void> {
  const paidAt = onDay(demo, daysAgo);
  const soldOn = dayOf(paidAt, gallery.timeZone);
  const paid = await inTransaction(async (tx) => {
    const layaway = await readLayaway(tx, layawayId, soldOn);
    if (!layaway.ok) return layaway;
    const { money, number, collector } = layaway.value;
    const amountCents = money.next?.amountCents ?? money.remainingCents;
    const line = { ...moneyLine(amountCents, `Layaway ${number}`), layawayId };
    const sale = { ...priceSlip([line], [], 'invoice'), ...placesOf(demo), soldOn };
    const tenders = [{ kind: 'card' as const, amountCents, givenCents: null, reference: '' }];
    const who = { collectorId: collector.id };
    const recorded = { ...sale, ...who, channel: 'counter' as const, tenders };
    return ok(await recordSales(tx, doerAt(demo, paidAt), [recorded]));
  });
  done(paid);
}

function placesOf({ setUp }: Demo) {
  return { placeId: setUp.floorId, taxPlaceId: setUp.taxPlaceId };
}

function moneyLine(cents: bigint, title: string): LineToPrice {
  return {
    ...{ kind: 'layaway_payment', skuId: null, designId: null, title, what: 'A payment' },
    ...{ quantity: 1, unitPriceCents: cents, taxable: false, taxKind: 'none', unitCostCents: null },
  };
}

type ApprovalPlayed = (typeof scenario.approvals)[number];

async function playApproval(demo: Demo, one: ApprovalPlayed, piece: PieceForSale): Promise<void> {
  const { condition, security } = one;
  const doer = doerAt(demo, onDay(demo, one.daysAgo));
  const given = await inTransaction((tx) =>
    giveStep(tx, doer, {
      ...{ collectorId: idOf(demo, one.who), condition, security, pictures: [] },
      chosen: [{ code: piece.sku, quantity: 1, editionNumber: null }],
      dueOn: addDays(demo.today, one.dueInDays),
      valueCents: piece.priceCents,
    }),
  );
  done(given);
}

type StillHerePlayed = (typeof scenario.stillHere)[number];

async function playStillHere(demo: Demo, one: StillHerePlayed, piece: PieceForSale): Promise<void> {
  const soldAt = onDay(demo, one.soldDaysAgo);
  const soldOn = dayOf(soldAt, gallery.timeZone);
  const { placeId, taxPlaceId } = placesOf(demo);
  const sold = await inTransaction(async (tx) => {
    const tax = await readTaxSetting(tx, { taxPlaceId, on: soldOn });
    const priced = priceSlip([pieceLine(piece, 1)], tax.parts, 'invoice');
    const paid = { amountCents: priced.totalCents, givenCents: null, reference: '' };
    const tenders = [{ kind: 'card' as const, ...paid }];
    const where = { placeId, taxPlaceId, soldOn, collectorId: idOf(demo, one.who) };
    const sale = { ...priced, ...where, channel: 'counter' as const, tenders };
    const [recorded] = await recordSales(tx, doerAt(demo, soldAt), [sale]);
    const untilOn = dateFromDay(addDays(demo.today, one.untilInDays));
    const saleLineId = recorded?.lineIds[0] ?? '';
    await tx.toCollect.create({ data: { saleLineId, placeId, untilOn, note: one.note } });
    return ok(true);
  });
  invariant(sold.ok, 'The demo sells what is here.');
}
