import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudits } from '@/lib/audit/writes';
import { livingIds } from '@/lib/collectors/reads/group';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { EntryToPost } from '@/lib/ledger/rules';
import { saleEntry } from '@/lib/ledger/rules/sale-entry';
import { postEntries } from '@/lib/ledger/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { takeFromStock } from '@/lib/stock/writes';
import type { SaleDecision } from '../rules';
import type { Channel } from '../rules/refusals';

/** A decided sale with where, for whom and when; what is left out is the doer's. */
export type SaleToRecord = SaleDecision & {
  channel: Channel;
  placeId: string;
  taxPlaceId: string;
  collectorId: string | null;
  /** The day in the gallery's own zone. */
  soldOn: Day;
  soldAt?: Date;
  staffId?: string;
  /** The commission that is handed over by it; its deposit and debt are posted under it. */
  commissionId?: string;
  /** How the pieces leave; taken along when nothing is said. */
  delivery?: 'taken' | 'sent' | 'installed';
  /** Where it is sent or hung, as on the label. */
  deliverTo?: string;
  exemptWhy?: string;
  certificateId?: string | null;
  referredById?: string | null;
  fairId?: string | null;
  giftTo?: string;
  giftWords?: string;
};

/** A sale that was written, by its number; the ids of its lines in their order. */
export type RecordedSale = {
  saleId: string;
  number: number;
  entryId: string;
  lineIds: readonly string[];
};

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
  const under = await livingIds(tx, sales.flatMap(peopleOf));
  const named = sales.map((sale) => ({
    ...sale,
    collectorId: sale.collectorId && under(sale.collectorId),
    referredById: sale.referredById ? under(sale.referredById) : null,
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
  await tx.saleDiscount.createMany({ data: named.flatMap(discountRows) });
  await tx.saleTax.createMany({
    data: named.flatMap((sale) => sale.taxes.map((tax) => ({ saleId: sale.id, ...tax }))),
  });
  await tx.tender.createMany({
    data: named.flatMap((sale) =>
      sale.tenders.map((tender, at) => ({ saleId: sale.id, position: at + 1, ...tender })),
    ),
  });
  await moveCredits(tx, named);
  await endHolds(tx, named);
  await takePieces(tx, doer, named);

  const numbers = new Map(written.map((row) => [row.id, row.number]));
  const numbered = named.map((sale) => ({ ...sale, number: numbers.get(sale.id) ?? 0 }));
  await auditSales(tx, doer, numbered);
  return numbered.map(({ id, number, lines }, at) => ({
    saleId: id,
    number,
    entryId: entryIds[at] ?? '',
    lineIds: lines.map((line) => line.id),
  }));
}

function peopleOf({ collectorId, referredById }: SaleToRecord): (string | null)[] {
  return [collectorId, referredById ?? null];
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
  consigned: 'wrote down what another gallery sold',
  wholesale: 'sent to a shop',
} as const;

type NamedSale = Omit<SaleToRecord, 'lines'> & {
  id: string;
  soldAt: Date;
  staffId: string;
  lines: (SaleDecision['lines'][number] & { id: string })[];
};

function entryOf(sale: NamedSale): EntryToPost {
  const { lines, taxes, tenders, commissionId, collectorId } = sale;
  const titles = lines.map((line) => (line.quantity > 1 ? `${line.quantity} × ` : '') + line.title);
  const memo = sale.channel === 'commission' ? 'Handed over' : 'Sold';
  return {
    on: sale.soldOn,
    at: sale.soldAt,
    memo: `${memo}: ${titles.join(', ')}`.slice(0, 200),
    paper: 'Sale',
    paperId: sale.id,
    staffId: sale.staffId,
    postings: saleEntry({
      ...{ lines, taxes, tenders, collectorId },
      ...(commissionId ? { commissionId } : {}),
    }),
  };
}

function saleRow(sale: NamedSale, entryId: string | undefined) {
  invariant(entryId, 'Every sale has its entry in the journal.');
  const { id, channel, placeId, taxPlaceId, collectorId, staffId, soldAt } = sale;
  const { netCents, taxCents, totalCents, delivery, deliverTo, exemptWhy } = sale;
  const { certificateId, referredById, fairId, giftTo, giftWords } = sale;
  return {
    ...{ id, channel, placeId, taxPlaceId, collectorId, staffId, entryId, soldAt },
    soldOn: dateFromDay(sale.soldOn),
    ...{ netCents, taxCents, totalCents },
    delivery: delivery ?? ('taken' as const),
    deliverTo: deliverTo ?? '',
    exemptWhy: exemptWhy ?? '',
    certificateId: certificateId ?? null,
    referredById: referredById ?? null,
    fairId: fairId ?? null,
    giftTo: giftTo ?? '',
    giftWords: giftWords ?? '',
  };
}

function lineRows(sale: NamedSale) {
  return sale.lines.map((line, at) => {
    const { id, kind, skuId, designId, title, what, quantity, unitPriceCents } = line;
    const { discountCents, netCents, taxable, taxableCents, taxCents, unitCostCents } = line;
    return {
      ...{ id, saleId: sale.id, position: at + 1, kind, skuId, designId, title, what, quantity },
      ...{
        unitPriceCents,
        discountCents,
        netCents,
        taxable,
        taxableCents,
        taxCents,
        unitCostCents,
      },
      taxKind: line.taxKind ?? ('goods' as const),
      commissionId: line.commissionId ?? null,
      orderId: line.orderId ?? null,
      layawayId: line.layawayId ?? null,
      creditId: line.creditId ?? null,
    };
  });
}

function discountRows(sale: NamedSale) {
  return sale.lines.flatMap((line) =>
    (line.discounts ?? []).map((discount) => ({ lineId: line.id, ...discount })),
  );
}

/** Vouchers that are sold get their money; those that pay give it. */
async function moveCredits(tx: Tx, sales: readonly NamedSale[]): Promise<void> {
  const movements = sales.flatMap(({ id: saleId, staffId, soldAt: at, lines, tenders }) => [
    ...lines.flatMap(({ creditId, netCents: amountCents }) =>
      creditId === undefined ? [] : [{ creditId, amountCents, saleId, staffId, at }],
    ),
    ...tenders.flatMap(({ creditId, amountCents }) =>
      creditId === undefined ? [] : [{ creditId, amountCents: -amountCents, saleId, staffId, at }],
    ),
  ]);
  if (movements.length > 0) await tx.creditMovement.createMany({ data: movements });
}

/** Held pieces are free once their hold has ended: before they are taken. */
async function endHolds(tx: Tx, sales: readonly NamedSale[]): Promise<void> {
  for (const { lines, soldAt, staffId } of sales) {
    const ids = lines.flatMap((line) => line.endsHoldIds ?? []);
    if (ids.length === 0) continue;
    await tx.hold.updateMany({
      where: { id: { in: ids }, endedAt: null },
      data: { endedAt: soldAt, endedHow: 'sold', endedById: staffId },
    });
  }
}

async function takePieces(tx: Tx, doer: Doer, sales: readonly NamedSale[]): Promise<void> {
  const takings = sales.flatMap((sale) =>
    sale.lines.flatMap(({ id: saleLineId, kind, skuId, quantity, unitCostCents, numbers }) =>
      skuId === null || kind !== 'piece'
        ? []
        : [
            {
              ...{ skuId, placeId: sale.placeId, quantity, saleLineId, unitCostCents },
              ...{ at: sale.soldAt, staffId: sale.staffId, numbers: numbers ?? [] },
            },
          ],
    ),
  );
  if (takings.length === 0) return;
  const taken = await takeFromStock(tx, doer, takings);
  invariant(taken.ok, 'What was decided to be sold is here.');
}
