import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import type { DiscountKind } from '@/lib/ledger/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { readPiecesForSale } from '@/lib/sales/reads';
import type { PieceForSale } from '@/lib/sales/rules';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { readPiecesAt } from '@/lib/stock/reads/moves/shelf';
import type { ReportSoldInput } from '../input';
import { statementDue, type LineDue, type StatementDue } from '../rules';
import { dueOnOf } from '../rules/owed';
import type { ReportRefusal } from '../rules/refusals';
import { findLineFault } from '../rules/with-them';

/** A statement that was written, by its number; what is due, in cents as text. */
export type ReportAnswer = { reportId: string; number: number; due: string };

/** Why no tax is charged on what another gallery sold. */
export const exemptBecause = 'sold by another gallery, which charges the tax';

/**
 * Writes down what another gallery says it sold: pieces leave its place, their retail price is
 * earned, its share is taken off, and what is due goes on its account.
 *
 * The day of the sale in our books is the day on which it is written down.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a gallery nobody
 *   knows, nothing sold, days that are turned or yet to come, then for the first line that has a
 *   fault: {@link findLineFault} and {@link statementDue}
 */
export async function reportSold(
  doer: Doer,
  { requestKey: key, ...input }: ReportSoldInput,
): Promise<Result<ReportAnswer, ReportRefusal>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const command = { key, name: 'reportSold', staffId: doer.actor.id, input, at: doer.at };
  return onceOnly<ReportAnswer, ReportRefusal>(command, async (tx) => {
    const gallery = await getGallery(tx);
    const consignee = await findTerms(tx, input.consigneeId);
    if (!consignee) return refuse({ code: 'unknown_gallery' });
    const soldOn = dayOf(doer.at, gallery.timeZone);
    const decided = await decide(tx, { ...input, consignee, today: soldOn });
    if (!decided.ok) return decided;
    return record(tx, doer, { ...input, consignee, gallery, soldOn, due: decided.value });
  });
}

type Terms = {
  id: string;
  placeId: string;
  collectorId: string;
  sharePercent: string;
  payDays: number;
};

async function findTerms(tx: Tx, id: string): Promise<Terms | null> {
  const row = await tx.consignee.findUnique({
    where: { id },
    select: { id: true, placeId: true, collectorId: true, sharePercent: true, payDays: true },
  });
  return row && { ...row, sharePercent: row.sharePercent.toString() };
}

type Asked = Omit<ReportSoldInput, 'requestKey'> & { consignee: Terms; today: Day };

async function decide(tx: Tx, asked: Asked): Promise<Result<StatementDue, ReportRefusal>> {
  const { lines, fromOn, untilOn, today, consignee } = asked;
  if (lines.length === 0) return refuse({ code: 'nothing_sold' });
  if (fromOn > untilOn) return refuse({ code: 'days_turned' });
  if (untilOn > today) return refuse({ code: 'not_yet', today });
  const codes = lines.map((line) => line.sku);
  const there = await readPiecesAt(tx, { codes, placeId: consignee.placeId });
  const told = lines.map(({ retail: retailCents, ...line }) => ({
    ...{ ...line, retailCents, skuId: there.get(line.sku)?.skuId ?? '' },
  }));
  const fault = findLineFault(told, there);
  if (fault) return refuse(fault);
  return statementDue(told, { sharePercent: consignee.sharePercent, fromOn, untilOn });
}

type Decided = {
  consignee: Terms;
  gallery: Gallery;
  soldOn: Day;
  fromOn: Day;
  untilOn: Day;
  due: StatementDue;
};

async function record(
  tx: Tx,
  doer: Doer,
  decided: Decided,
): Promise<Result<ReportAnswer, ReportRefusal>> {
  const { consignee, soldOn, fromOn, untilOn, due } = decided;
  const sale = await recordSale(tx, doer, decided);
  const reportId = newId();
  const { number } = await tx.consignmentReport.create({
    data: {
      ...{ id: reportId, consigneeId: consignee.id, saleId: sale.saleId },
      ...{ fromOn: dateFromDay(fromOn), untilOn: dateFromDay(untilOn) },
      dueOn: dateFromDay(dueOnOf(untilOn, consignee.payDays)),
      ...{ dueCents: due.dueCents, staffId: doer.actor.id, at: doer.at },
      lines: { createMany: { data: due.lines.map(reportRow) } },
    },
    select: { number: true },
  });
  const facts = { number, saleNumber: sale.number, dueCents: due.dueCents, soldOn };
  const did = 'wrote a statement of another gallery';
  await recordAudit(tx, doer, { did, subject: 'ConsignmentReport', subjectId: reportId, facts });
  return ok({ reportId, number, due: due.dueCents.toString() });
}

async function recordSale(tx: Tx, doer: Doer, decided: Decided) {
  const { consignee, gallery, soldOn, due } = decided;
  const { placeId, collectorId, sharePercent } = consignee;
  const { lengthUnit, taxPlaceId, roundTaxBy } = gallery;
  const skuIds = due.lines.map((line) => line.skuId);
  const pieces = await readPiecesForSale(tx, skuIds, { placeId, on: soldOn, lengthUnit });
  const lines = due.lines.map((line) => {
    const piece = pieces.get(line.skuId);
    invariant(piece, 'What is with them is in the catalogue.');
    return saleLine(line, piece, { sharePercent, staffId: doer.actor.id });
  });
  const priced = priceSlip(lines, [], roundTaxBy);
  invariant(priced.totalCents === due.dueCents, 'What is due is what is left of the retail.');
  const owed = { kind: 'on_account' as const, givenCents: null, reference: '' };
  const tenders = due.dueCents > 0n ? [{ ...owed, amountCents: due.dueCents }] : [];
  const [sale] = await recordSales(tx, doer, [
    {
      ...{ ...priced, tenders, channel: 'consigned', placeId, taxPlaceId, collectorId, soldOn },
      exemptWhy: exemptBecause,
    },
  ]);
  invariant(sale, 'A sale that was decided is recorded.');
  return sale;
}

function saleLine(
  line: LineDue,
  piece: PieceForSale,
  terms: { sharePercent: string; staffId: string },
): LineToPrice {
  const { skuId, quantity, number } = line;
  const taken = (kind: DiscountKind, reason: string, amountCents: bigint) =>
    amountCents > 0n ? [{ kind, reason, amountCents, givenById: terms.staffId }] : [];
  return {
    ...{ kind: 'piece', skuId, quantity, designId: piece.designId, title: piece.title },
    what: number === null ? piece.what : `${piece.what} · number ${number}`,
    ...{ unitPriceCents: line.retailCents, taxable: false, unitCostCents: piece.costCents },
    discounts: [
      ...taken('line', 'given to their buyer, our part of it', line.ourDiscountCents),
      ...taken('gallery_share', `their share of ${terms.sharePercent}%`, line.shareCents),
    ],
    numbers: number === null ? [] : [number],
  };
}

function reportRow(line: LineDue, at: number) {
  const { skuId, quantity, number, retailCents, discountCents, borneBy, dueCents } = line;
  return {
    ...{ position: at + 1, skuId, quantity, editionNumber: number },
    ...{ soldOn: dateFromDay(line.soldOn), retailCents, discountCents, borneBy, dueCents },
  };
}
