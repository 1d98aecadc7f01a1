import 'server-only';
import { isAllowed, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { livingId } from '@/lib/collectors/reads/group';
import { dateFromDay } from '@/lib/dates/rules';
import { readChosen, type Chosen } from '@/lib/holds/rules/chosen';
import { endHold, holdPieces } from '@/lib/holds/writes';
import { sumCents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { readPiecesForSale } from '@/lib/sales/reads';
import type { PieceForSale } from '@/lib/sales/rules';
import { readTaxSetting } from '@/lib/tax/reads';
import type { BeginLayawayInput } from './input';
import { priceLayaway, scheduleOf, type AgreedLine, type Due } from './rules';
import { checkPlan, shareDiscount } from './rules/begin';
import type { AnyLayawayRefusal, LayawayRefusal } from './rules/refusals';
import { carryOut, type Setting } from './writes/carry-out';

/** A layaway that was begun, by its number. */
export type LayawayBegun = { layawayId: string; number: number };

/**
 * Puts pieces away for a collector who pays them off in parts: the statement with its dues is
 * written, and the pieces are kept back. No money is taken by it.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an unknown
 *   collector, nothing chosen, a piece that is not in the catalogue, one without a price, what
 *   {@link shareDiscount} refuses, a price other than the one shown, no tax rate kept, what
 *   {@link checkPlan} refuses, and a piece that is not free
 */
export async function beginLayaway(
  doer: Doer,
  input: BeginLayawayInput,
): Promise<Result<LayawayBegun, AnyLayawayRefusal>> {
  const command = { name: 'beginLayaway', input };
  return carryOut<LayawayBegun, LayawayRefusal>(doer, command, async (tx, setting) => {
    const statement = await writeOut(tx, doer, { input, setting });
    if (!statement.ok) return statement;
    const begun = await keepStatement(tx, doer, { input, setting, statement: statement.value });
    if (input.holdId !== '') {
      const freed = await endHold(tx, doer, { holdId: input.holdId, how: 'sold' });
      if (!freed.ok) return refuse({ code: 'not_held', hold: freed.refusal });
    }
    const kept = await putAway(tx, doer, { input, setting, statement: statement.value, begun });
    return kept.ok ? ok(begun) : kept;
  });
}

type Asked = { input: BeginLayawayInput; setting: Setting };
type Statement = { lines: AgreedLine[]; dues: Due[]; netCents: bigint; totalCents: bigint };

async function writeOut(
  tx: Tx,
  doer: Doer,
  asked: Asked,
): Promise<Result<Statement, LayawayRefusal>> {
  const { input, setting } = asked;
  const { gallery, todayOn: agreedOn } = setting;
  if ((await livingId(tx, input.collectorId)) === null) {
    return refuse({ code: 'unknown_collector' });
  }
  const lines = await agreedLines(tx, doer, asked);
  if (!lines.ok) return lines;
  const tax = await readTaxSetting(tx, { taxPlaceId: gallery.taxPlaceId, on: agreedOn });
  const { netCents, totalCents } = priceLayaway(lines.value, tax, gallery.roundTaxBy);
  if (netCents !== input.shownNet) {
    return refuse({ code: 'price_changed', shownCents: input.shownNet, nowCents: netCents });
  }
  if (tax.parts.length === 0 && tax.isRegistered) {
    return refuse({ code: 'no_tax_rate', place: tax.place });
  }
  const { down: downCents, payments, finalOn } = input;
  const plan = { totalCents, downCents, payments, agreedOn, finalOn };
  const possible = checkPlan(plan);
  if (!possible.ok) return possible;
  return ok({ lines: lines.value, dues: scheduleOf(plan), netCents, totalCents });
}

async function agreedLines(
  tx: Tx,
  doer: Doer,
  { input, setting }: Asked,
): Promise<Result<AgreedLine[], LayawayRefusal>> {
  const { counterId: placeId, lengthUnit, staffDiscountPercent } = setting.gallery;
  const chosen = readChosen(input.pieces);
  if (chosen.length === 0) return refuse({ code: 'nothing_chosen' });
  const skus = await tx.sku.findMany({
    where: { code: { in: chosen.map((each) => each.code) } },
    select: { id: true, code: true },
  });
  const ids = new Map(skus.map((sku) => [sku.code, sku.id]));
  const from = { placeId, on: setting.todayOn, lengthUnit };
  const pieces = await readPiecesForSale(tx, [...ids.values()], from);
  const found: { piece: PieceForSale; one: Chosen }[] = [];
  for (const one of chosen) {
    const piece = pieces.get(ids.get(one.code) ?? '');
    if (!piece) return refuse({ code: 'unknown_piece_chosen', sku: one.code });
    if (piece.priceCents === 0n) return refuse({ code: 'no_price', title: piece.title });
    found.push({ piece, one });
  }
  const gross = found.map(({ piece, one }) => piece.priceCents * BigInt(one.quantity));
  const { discount: discountCents, discountReason: reason } = input;
  const mayGoBeyond = isAllowed(doer.actor.roles, 'counter.discount_beyond');
  const percentMost = mayGoBeyond ? null : staffDiscountPercent;
  const shares = shareDiscount(gross, { discountCents, reason, percentMost });
  if (!shares.ok) return shares;
  return ok(
    found.map(({ piece, one }, at) => ({
      ...{ skuId: piece.skuId, designId: piece.designId, title: piece.title, what: piece.what },
      ...{ quantity: one.quantity, editionNumber: one.editionNumber },
      ...{ unitPriceCents: piece.priceCents, discountCents: shares.value[at] ?? 0n },
      ...{ discountReason: reason, givenById: doer.actor.id, unitCostCents: piece.costCents },
      ...{ weightG: piece.weightG, holdIds: [] },
    })),
  );
}

async function keepStatement(
  tx: Tx,
  doer: Doer,
  { input, setting, statement }: Asked & { statement: Statement },
): Promise<LayawayBegun> {
  const { gallery, todayOn } = setting;
  const { lines, dues, netCents, totalCents } = statement;
  const { down: downCents, finalOn } = input;
  const collectorId = (await livingId(tx, input.collectorId)) ?? input.collectorId;
  const layawayId = newId();
  const { number } = await tx.layaway.create({
    data: {
      ...{ id: layawayId, collectorId, taxPlaceId: gallery.taxPlaceId, downCents, netCents },
      ...{ totalCents, terms: gallery.layawayTerms, staffId: doer.actor.id, at: doer.at },
      ...{ agreedOn: dateFromDay(todayOn), finalOn: dateFromDay(finalOn) },
    },
    select: { number: true },
  });
  await tx.layawayLine.createMany({
    data: lines.map((line, at) => {
      const { skuId, quantity, editionNumber, unitPriceCents, discountCents } = line;
      return {
        ...{ layawayId, position: at + 1, skuId, placeId: gallery.counterId, quantity },
        ...{ editionNumber, unitPriceCents, discountCents, discountReason: line.discountReason },
      };
    }),
  });
  await tx.layawayDue.createMany({
    data: dues.map(({ dueOn, amountCents }, at) => ({
      ...{ layawayId, position: at + 1, dueOn: dateFromDay(dueOn), amountCents },
    })),
  });
  await recordAudit(tx, doer, {
    ...{ did: 'began a layaway', subject: 'Layaway', subjectId: layawayId },
    facts: { number, totalCents, discountCents: sumCents(lines.map((l) => l.discountCents)) },
  });
  return { layawayId, number };
}

type ToPutAway = Asked & { statement: Statement; begun: LayawayBegun };

async function putAway(
  tx: Tx,
  doer: Doer,
  { input, setting, statement, begun }: ToPutAway,
): Promise<Result<true, LayawayRefusal>> {
  const collectorId = (await livingId(tx, input.collectorId)) ?? input.collectorId;
  const collector = await tx.collector.findUniqueOrThrow({
    where: { id: collectorId },
    select: { name: true, phone: true },
  });
  for (const { skuId, quantity, editionNumber } of statement.lines) {
    const held = await holdPieces(tx, doer, {
      ...{ skuId, placeId: setting.gallery.counterId, quantity, editionNumber, collectorId },
      ...{ forWhom: collector.name, phone: collector.phone ?? '', untilAt: null },
      ...{ note: '', layawayId: begun.layawayId },
    });
    if (!held.ok) return refuse({ code: 'not_held', hold: held.refusal });
  }
  return ok(true);
}
