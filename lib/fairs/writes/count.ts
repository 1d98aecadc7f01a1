import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { isHomePlace } from '@/lib/stock/reads/home-places';
import type { StockRefusal } from '@/lib/stock/rules';
import { bringIntoStock, moveStock } from '@/lib/stock/writes';
import type { CountFairInput } from '../input';
import { readTakeList, standingRows, type TakenPiece } from '../reads/standing';
import type { FairRefusal } from '../rules';
import { decideFairCount, fairCountWords, type CountedPiece, type FairCount } from '../rules/count';
import { openFairById, type FairAnswer } from '../writes';

/** What a count did, in words; whether the fair is closed by it. */
export type CountedAnswer = { words: string; isClosed: boolean };

/**
 * Counts a fair back in: what came back moves home, what broke or is missing is written off, in one
 * transaction; when nothing stands there any more the fair and its place are closed.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a fair nobody knows
 *   or one that is closed, a place that is not ours, and what {@link decideFairCount} refuses
 */
export async function countFairBack(
  doer: Doer,
  input: CountFairInput,
): Promise<FairAnswer<CountedAnswer>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'countFairBack', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<CountedAnswer, FairRefusal>(command, (tx) => countBack(tx, doer, input));
}

async function countBack(
  tx: Tx,
  doer: Doer,
  input: CountFairInput,
): Promise<Result<CountedAnswer, FairRefusal>> {
  const { fairId, toId, rows } = input;
  const fair = await openFairById(tx, fairId);
  if (!fair.ok) return fair;
  if (!(await isHomePlace(tx, toId))) return refuse({ code: 'unknown_place' });
  const { timeZone, lengthUnit } = await getGallery(tx);
  const on = dayOf(doer.at, timeZone);
  const { placeId, number, name } = fair.value;
  const list = await readTakeList(tx, { fairId, placeId, on, lengthUnit });
  const decided = decideFairCount(standingRows(list), rows);
  if (!decided.ok) return decided;

  const { back } = decided.value;
  if (back.length > 0) {
    const transfer = {
      fromId: placeId,
      toId,
      pieces: back,
      movedOn: on,
      note: `Back from ${name}`,
    };
    const moved = await moveStock(tx, doer, transfer);
    if (!moved.ok) return refuse(heldThere(moved.refusal, list));
  }
  await writeOff(tx, doer, { placeId, number }, decided.value);
  const isClosed = decided.value.stillThere === 0;
  if (isClosed) await close(tx, doer, { fairId, placeId });
  const words = fairCountWords(decided.value);
  const did = isClosed ? 'counted a fair back in and closed it' : 'counted a fair back in';
  await recordAudit(tx, doer, {
    did,
    subject: 'Fair',
    subjectId: fairId,
    facts: { number, words },
  });
  return ok({ words, isClosed });
}

/** What is held at the fair for somebody does not come back before the hold has ended. */
function heldThere(refusal: StockRefusal, list: readonly TakenPiece[]): FairRefusal {
  const { skuId, wanted, onHand, held } = refusal;
  const short = list.find((piece) => piece.skuId === skuId);
  if (!short) return { code: 'fair_has_changed' };
  const { title, sku } = short;
  return { code: 'not_enough', title, sku, wanted, free: onHand - held, held };
}

async function writeOff(
  tx: Tx,
  doer: Doer,
  { placeId, number }: { placeId: string; number: number },
  { broken, missing }: FairCount,
): Promise<void> {
  const costOf = await costsOf(tx, [...broken, ...missing]);
  const lost = (pieces: readonly CountedPiece[], reason: 'broken' | 'missing') =>
    pieces.map(({ quantity, ...piece }) => ({
      ...{ ...piece, placeId, quantity: -quantity, reason, note: `At fair ${number}` },
      unitCostCents: costOf.get(piece.skuId) ?? null,
    }));
  const arrivals = [...lost(broken, 'broken'), ...lost(missing, 'missing')];
  if (arrivals.length > 0) await bringIntoStock(tx, doer, arrivals);
}

async function costsOf(
  tx: Tx,
  pieces: readonly CountedPiece[],
): Promise<Map<string, bigint | null>> {
  const ids = [...new Set(pieces.map((piece) => piece.skuId))];
  if (ids.length === 0) return new Map();
  const rows = await tx.sku.findMany({
    where: { id: { in: ids } },
    select: { id: true, costCents: true },
    take: ids.length,
  });
  return new Map(rows.map((row) => [row.id, row.costCents]));
}

async function close(
  tx: Tx,
  doer: Doer,
  { fairId, placeId }: { fairId: string; placeId: string },
): Promise<void> {
  const data = { closedAt: doer.at };
  await tx.fair.update({ where: { id: fairId }, data, select: { id: true } });
  await tx.place.update({ where: { id: placeId }, data, select: { id: true } });
}
