import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { postEntry } from '@/lib/ledger/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { getGallery } from '@/lib/platform/settings';
import { bringIntoStock, type Arrival } from '@/lib/stock/writes';
import { markAsSecondStep } from '@/lib/stock/writes/mark-as-second';
import { moveCredits, openCredit, type CreditChange } from '@/lib/vouchers/writes';
import type { DecidedReturn } from '../rules';
import { returnEntry } from '../rules/entry';
import type { DecidedLine } from '../rules/lines';
import type { ReturnKind } from '../rules/sold';

/** A return that was written, by its number; with the store credit that it opened, if it did. */
export type RecordedReturn = {
  returnId: string;
  number: number;
  credit: { creditId: string; code: string } | null;
};

type Named = Omit<DecidedReturn, 'lines'> & { id: string; lines: readonly NamedLine[] };
type NamedLine = DecidedLine & { id: string };

/**
 * Writes a decided return: its lines, taxes and refunds, the pieces that come to the counter's
 * place, the entry, the credits, the audit line. Joins the caller's transaction.
 *
 * @param into a store credit that is there already; otherwise one is opened when it is needed
 * @throws Error, or the database's own refusal, when the decision does not hold any more
 */
export async function recordReturn(
  tx: Tx,
  doer: Doer,
  decided: DecidedReturn,
  into: { creditId: string; code: string } | null = null,
): Promise<RecordedReturn> {
  const lines = decided.lines.map((line) => ({ ...line, id: newId() }));
  const named = { ...decided, id: newId(), lines };
  const credit = await creditFor(tx, doer, named, into);
  const entryId = await postEntry(tx, {
    ...{ on: decided.returnedOn, at: doer.at, staffId: doer.actor.id },
    ...{ memo: memoOf(named), paper: 'GoodsReturn', paperId: named.id },
    postings: returnEntry(decided, credit?.creditId ?? null),
  });
  const { number } = await writeReturn(tx, doer, named, entryId);
  await putMoneyBack(tx, doer, named, credit?.creditId ?? null);
  await putPiecesBack(tx, doer, named.lines);
  await takeOffTheWall(tx, doer, named);
  await recordAudit(tx, doer, {
    did: didWords[decided.kind],
    ...{ subject: 'GoodsReturn', subjectId: named.id },
    facts: {
      ...{ number, receipt: decided.sale.number, reason: decided.reason },
      ...{ totalCents: decided.totalCents, feeCents: decided.feeCents },
    },
  });
  return { returnId: named.id, number, credit };
}

const didWords: Readonly<Record<ReturnKind, string>> = {
  returned: 'took pieces back',
  exchanged: 'took pieces back for others',
  voided: 'struck out a sale of the day',
};

function memoOf({ kind, sale, reason, lines }: Named): string {
  const what = kind === 'voided' ? 'Struck out' : 'Brought back';
  const titles = lines.map((line) => line.line.title).join(', ');
  return `${what}, receipt ${sale.number}: ${titles}. ${reason}`.slice(0, 200);
}

async function creditFor(
  tx: Tx,
  doer: Doer,
  { sale, refunds }: Named,
  into: { creditId: string; code: string } | null,
): Promise<{ creditId: string; code: string } | null> {
  const isNeeded = refunds.some(({ kind, tender }) => isNewCredit(kind, tender.kind));
  if (!isNeeded) return null;
  if (into) return into;
  const note = `Receipt ${sale.number} was brought back`;
  const { collectorId } = sale;
  return openCredit(tx, doer, { kind: 'store_credit', collectorId, note, expiresOn: null });
}

/** Money of a store credit that was used goes back onto it; anything else onto a new one. */
function isNewCredit(kind: string, paidWith: string): boolean {
  return kind === 'store_credit' && paidWith !== 'store_credit';
}

async function writeReturn(
  tx: Tx,
  doer: Doer,
  named: Named,
  entryId: string,
): Promise<{ number: number }> {
  const { id, sale, kind, reason, netCents, taxCents, feeCents, totalCents } = named;
  const { number } = await tx.goodsReturn.create({
    data: {
      ...{ id, saleId: sale.id, kind, reason, netCents, taxCents, feeCents, totalCents, entryId },
      ...{ staffId: doer.actor.id, at: doer.at, returnedOn: dateFromDay(named.returnedOn) },
    },
    select: { number: true },
  });
  const { counterId } = await getGallery(tx);
  await tx.goodsReturnLine.createMany({
    data: named.lines.map(({ id: lineId, line, pieces: quantity, editionNumber, to, ...sums }) => ({
      ...{ id: lineId, returnId: id, saleLineId: line.id, quantity, editionNumber, to },
      ...{ netCents: sums.netCents, taxCents: sums.taxCents },
      placeId: to === 'nothing' ? null : counterId,
    })),
  });
  await tx.goodsReturnTax.createMany({
    data: named.taxes.map((tax) => ({ returnId: id, ...tax })),
  });
  await tx.refund.createMany({
    data: named.refunds.map((refund) => ({
      ...{ returnId: id, tenderId: refund.tender.id, kind: refund.kind },
      amountCents: refund.amountCents,
    })),
  });
  return { number };
}

/** What a voucher paid goes back onto it; a sold voucher that is taken back loses its money. */
async function putMoneyBack(
  tx: Tx,
  doer: Doer,
  { id: returnId, refunds, lines }: Named,
  storeCreditId: string | null,
): Promise<void> {
  const onto = refunds.flatMap(({ tender, kind, amountCents }) => {
    if (kind !== 'voucher' && kind !== 'store_credit') return [];
    const creditId = kind === tender.kind ? tender.creditId : storeCreditId;
    invariant(creditId, 'Money that goes back onto a credit has one.');
    return [{ creditId, amountCents, returnId }];
  });
  const off = lines.flatMap(({ line, netCents }) =>
    line.creditId === null ? [] : [{ creditId: line.creditId, amountCents: -netCents, returnId }],
  );
  await moveCredits(tx, doer, addChanges([...onto, ...off]));
}

/** One movement for each credit, however many tenders it came from. */
function addChanges(changes: readonly CreditChange[]): CreditChange[] {
  const sums = new Map<string, CreditChange>();
  for (const change of changes) {
    const before = sums.get(change.creditId)?.amountCents ?? 0n;
    sums.set(change.creditId, { ...change, amountCents: before + change.amountCents });
  }
  return [...sums.values()];
}

async function putPiecesBack(tx: Tx, doer: Doer, lines: readonly NamedLine[]): Promise<void> {
  const { counterId: placeId } = await getGallery(tx);
  const arrivals = lines.flatMap((each): Arrival[] => {
    const { line, pieces, editionNumber, to } = each;
    if (line.skuId === null || to === 'nothing') return [];
    const { skuId, unitCostCents } = line;
    const moved = {
      ...{ skuId, placeId, unitCostCents, returnLineId: each.id },
      ...(editionNumber === null ? {} : { editionNumber }),
    };
    const comes = { ...moved, quantity: pieces, reason: 'returned' as const };
    if (to !== 'broken') return [comes];
    return [comes, { ...moved, quantity: -pieces, reason: 'broken' as const }];
  });
  if (arrivals.length > 0) await bringIntoStock(tx, doer, arrivals);
  for (const { line, pieces: quantity, editionNumber, to, flaw } of lines) {
    if (line.skuId === null || to !== 'second') continue;
    const numbered = editionNumber === null ? {} : { editionNumber };
    const piece = { skuId: line.skuId, placeId, quantity, flaw, priceCents: null, ...numbered };
    const marked = await markAsSecondStep(tx, doer, { ...piece, grade: 'second' });
    invariant(marked.ok, 'A piece that has just come back can be marked as a second.');
  }
}

/** What hung here sold, waiting to be collected, and came back whole, waits no longer. */
async function takeOffTheWall(tx: Tx, doer: Doer, { sale, lines }: Named): Promise<void> {
  const backNow = (lineId: string): number =>
    lines.filter(({ line }) => line.id === lineId).reduce((sum, each) => sum + each.pieces, 0);
  const whole = sale.lines.filter((line) => {
    const now = backNow(line.id);
    return now > 0 && line.back.quantity + now === line.quantity;
  });
  await tx.toCollect.updateMany({
    where: { saleLineId: { in: whole.map((line) => line.id) }, collectedAt: null },
    data: { collectedAt: doer.at, collectedById: doer.actor.id },
  });
}
