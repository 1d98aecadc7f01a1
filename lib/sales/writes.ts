import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudits } from '@/lib/audit/writes';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import { saleEntry, type EntryToPost } from '@/lib/ledger/rules';
import { postEntries } from '@/lib/ledger/writes';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { takeFromStock } from '@/lib/stock/writes';
import type { SaleInput } from './input';
import { readLastSold, readPiecesForSale, readTaxParts } from './reads';
import { decideSale, type SaleDecision } from './rules';
import { changeCents } from './rules/tenders';
import type { SaleRefusal } from './rules/refusals';

/** What the counter is told: where the receipt is, and what goes back, in cents as text. */
export type SoldAnswer = { saleId: string; number: number; total: string; change: string };

/**
 * Sells what is on the slip: pieces leave, the money is told, the books know it, in one transaction.
 *
 * Prices, rates and stock are read again inside it.
 *
 * @returns the receipt's number; refuses, in this order: not allowed, a key used for something else,
 *   a collector nobody knows, and then what {@link decideSale} refuses
 */
export async function sellAtCounter(
  doer: Doer,
  input: SaleInput,
): Promise<Result<SoldAnswer, SaleRefusal | KeyRefusal | NotAllowed>> {
  const allowed = allow(doer.actor, 'counter.sell');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'sellAtCounter', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<SoldAnswer, SaleRefusal>(command, (tx) => sell(tx, doer, input));
}

async function sell(
  tx: Tx,
  doer: Doer,
  input: SaleInput,
): Promise<Result<SoldAnswer, SaleRefusal>> {
  const gallery = await getGallery(tx);
  const unknown = await unknownCollector(tx, input.collectorId);
  if (unknown) return refuse(unknown);

  const soldOn = dayOf(doer.at, gallery.timeZone);
  const decided = await decideAtCounter(tx, { gallery, soldOn, soldAt: doer.at, input });
  if (!decided.ok) return decided;

  const [sale] = await recordSales(tx, doer, [
    {
      ...decided.value,
      channel: 'counter',
      placeId: gallery.counterId,
      taxPlaceId: gallery.taxPlaceId,
      collectorId: input.collectorId,
      soldOn,
    },
  ]);
  invariant(sale, 'A sale that was decided is recorded.');
  const total = decided.value.totalCents.toString();
  const change = changeCents(decided.value.tenders).toString();
  return ok({ ...sale, total, change });
}

async function unknownCollector(tx: Tx, collectorId: string | null): Promise<SaleRefusal | null> {
  if (collectorId === null) return null;
  const found = await tx.collector.findUnique({
    where: { id: collectorId },
    select: { id: true },
  });
  return found ? null : { code: 'unknown_collector', collectorId };
}

type Asked = { gallery: Gallery; soldOn: Day; soldAt: Date; input: SaleInput };

async function decideAtCounter(tx: Tx, asked: Asked): Promise<Result<SaleDecision, SaleRefusal>> {
  const { gallery, soldAt, soldOn, input } = asked;
  const skuIds = input.lines.map((line) => line.skuId);
  const tax = await readTaxParts(gallery.taxPlaceId, soldOn, tx);
  const pieces = await readPiecesForSale(tx, skuIds, gallery.counterId, gallery.lengthUnit);
  const setting = {
    soldAt,
    soldOn,
    taxPlace: tax.name,
    taxParts: tax.parts,
    roundTaxBy: gallery.roundTaxBy,
  };
  const decided = decideSale(input, pieces, setting);
  if (decided.ok || decided.refusal.code !== 'not_enough_pieces') return decided;
  const { refusal } = decided;
  const short = Array.from(pieces.values()).find((piece) => piece.sku === refusal.sku);
  invariant(short, 'A piece that is short was on the slip.');
  const last = await readLastSold(tx, [short.skuId]);
  return refuse({ ...refusal, last: last.get(short.skuId) ?? null });
}

/** A decided sale with where, for whom and when; what is left out is the doer's. */
export type SaleToRecord = SaleDecision & {
  channel: 'counter' | 'fair' | 'shipped' | 'commission';
  placeId: string;
  taxPlaceId: string;
  collectorId: string | null;
  /** The day in the gallery's own zone. */
  soldOn: Day;
  soldAt?: Date;
  staffId?: string;
  /** The commission that is handed over by it; its deposit and debt are posted under it. */
  commissionId?: string;
};

/** A sale that was written, by its number. */
export type RecordedSale = { saleId: string; number: number };

/**
 * Writes decided sales with their lines, taxes, tenders, stock movements, journal entries and audit
 * lines, in a handful of statements however many they are; numbers go up in the order given.
 *
 * Joins the caller's transaction. The audit line of a hand-over is the commission's own.
 *
 * @throws Error when pieces are missing (the caller decided without looking), or the database's
 *   own refusal when a sale does not add up
 */
export async function recordSales(
  tx: Tx,
  doer: Doer,
  sales: readonly SaleToRecord[],
): Promise<RecordedSale[]> {
  const named = sales.map((sale) => ({
    ...sale,
    id: newId(),
    soldAt: sale.soldAt ?? doer.at,
    staffId: sale.staffId ?? doer.actor.id,
    lines: sale.lines.map((line) => ({ ...line, id: newId() })),
  }));
  const entryIds = await postEntries(tx, named.map(entryOf));
  const written = await tx.sale.createManyAndReturn({
    data: named.map((sale, at) => saleRow(sale, entryIds[at])),
    select: { id: true, number: true },
  });
  await tx.saleLine.createMany({ data: named.flatMap(lineRows) });
  await tx.saleTax.createMany({
    data: named.flatMap((sale) => sale.taxes.map((tax) => ({ saleId: sale.id, ...tax }))),
  });
  await tx.tender.createMany({
    data: named.flatMap((sale) =>
      sale.tenders.map((tender, at) => ({ saleId: sale.id, position: at + 1, ...tender })),
    ),
  });
  await takePieces(tx, doer, named);

  const numbers = new Map(written.map((row) => [row.id, row.number]));
  const numbered = named.map((sale) => ({ ...sale, number: numbers.get(sale.id) ?? 0 }));
  await auditSales(tx, doer, numbered);
  return numbered.map(({ id, number }) => ({ saleId: id, number }));
}

async function auditSales(
  tx: Tx,
  doer: Doer,
  sales: readonly (NamedSale & { number: number })[],
): Promise<void> {
  const told = sales.filter((sale) => sale.channel !== 'commission');
  if (told.length === 0) return;
  const lines = told.map((sale) => ({
    doer: { actor: { ...doer.actor, id: sale.staffId }, at: sale.soldAt },
    did: didWords[sale.channel],
    subject: 'Sale',
    subjectId: sale.id,
    facts: { number: sale.number, totalCents: sale.totalCents },
  }));
  await recordAudits(tx, lines);
}

const didWords = {
  counter: 'sold at the counter',
  fair: 'sold at the fair',
  shipped: 'sold, to be sent',
  commission: 'handed over',
} as const;

type NamedSale = Omit<SaleToRecord, 'lines'> & {
  id: string;
  soldAt: Date;
  staffId: string;
  lines: (SaleDecision['lines'][number] & { id: string })[];
};

function entryOf(sale: NamedSale): EntryToPost {
  const { lines, taxes, tenders, commissionId } = sale;
  const titles = lines.map((line) => (line.quantity > 1 ? `${line.quantity} × ` : '') + line.title);
  const memo = sale.channel === 'commission' ? 'Handed over' : 'Sold';
  return {
    on: sale.soldOn,
    at: sale.soldAt,
    memo: `${memo}: ${titles.join(', ')}`.slice(0, 200),
    paper: 'Sale',
    paperId: sale.id,
    staffId: sale.staffId,
    postings: saleEntry({ lines, taxes, tenders, ...(commissionId ? { commissionId } : {}) }),
  };
}

function saleRow(sale: NamedSale, entryId: string | undefined) {
  invariant(entryId, 'Every sale has its entry in the journal.');
  const { id, channel, placeId, taxPlaceId, collectorId, staffId, soldAt } = sale;
  const { netCents, taxCents, totalCents } = sale;
  const where = { id, channel, placeId, taxPlaceId, collectorId, staffId, entryId };
  return { ...where, soldAt, soldOn: dateFromDay(sale.soldOn), netCents, taxCents, totalCents };
}

function lineRows(sale: NamedSale) {
  return sale.lines.map((line, at) => ({ ...line, saleId: sale.id, position: at + 1 }));
}

async function takePieces(tx: Tx, doer: Doer, sales: readonly NamedSale[]): Promise<void> {
  const takings = sales.flatMap((sale) =>
    sale.lines.flatMap(({ id: saleLineId, skuId, quantity, unitCostCents }) =>
      skuId === null
        ? []
        : [
            {
              ...{ skuId, placeId: sale.placeId, quantity, saleLineId, unitCostCents },
              ...{ at: sale.soldAt, staffId: sale.staffId },
            },
          ],
    ),
  );
  if (takings.length === 0) return;
  const taken = await takeFromStock(tx, doer, takings);
  invariant(taken.ok, 'What was decided to be sold is here.');
}
