import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import type { SaleInput } from './input';
import { readLastSold, readPiecesForSale, readTaxParts } from './reads';
import { decideSale, type SaleDecision } from './rules';
import { changeCents } from './rules/tenders';
import type { SaleRefusal } from './rules/refusals';
import { recordSales } from './writes/record-sales';

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
  const pieces = await readPiecesForSale(tx, skuIds, {
    placeId: gallery.counterId,
    on: soldOn,
    lengthUnit: gallery.lengthUnit,
  });
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
