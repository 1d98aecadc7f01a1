import 'server-only';
import { createHash } from 'node:crypto';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { keepSkus } from '@/lib/catalogue/writes';
import { keepDatedPrices } from '@/lib/catalogue/writes/set-prices';
import { dayOf } from '@/lib/dates/rules';
import { keepFile } from '@/lib/files/writes';
import { db } from '@/lib/platform/db/client';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { fileNameFrom } from '../input';
import { readKnownStock } from '../reads/known-stock';
import { readListFile } from '../reads/list-file';
import { planStockList, type PlannedRow } from '../rules/list-plan';
import type { StockListRefusal } from '../rules/list-refusals';
import type { ReadRow } from '../rules/list-row';
import { countPlan, type ListCounts } from '../rules/list-summary';
import { bringIntoStock, type Arrival } from '../writes';
import { hashPlan } from '../reads/plan-hash';

/** A list of 50,000 lines is written in seconds; a slow disk gets ten minutes. */
const listLimits = { timeoutMs: 600_000 };
/** How many lines go between two looks at whether to stop. */
const linesAtOnce = 2_000;

/** Is told how many lines are written so far, and answers whether to stop. */
export type ListPulse = (linesDone: number) => Promise<boolean>;

/**
 * Looks at a stock list: keeps the file, and says what each line would do. Nothing of it is in the
 * catalogue or in stock before it is confirmed.
 *
 * @returns the list's id; refuses, in this order: not allowed, a file that cannot be read
 */
export async function showStockList(
  doer: Doer,
  input: { requestKey: string; fileName: string; bytes: Uint8Array },
): Promise<Result<{ stockListId: string }, StockListRefusal>> {
  const allowed = allow(doer.actor, 'stock.load');
  if (!allowed.ok) return allowed;
  const { lengthUnit, counterId: placeId } = await getGallery();
  const list = await readListFile(input.bytes, lengthUnit);
  if (!list.ok) return list;

  const sha256 = createHash('sha256').update(input.bytes).digest('hex');
  const command = { fileName: input.fileName, sha256 };
  return onceOnly(commandOf(doer, input.requestKey, 'showStockList', command), async (tx) => {
    const file = await keepFile(tx, { bytes: input.bytes, mediaType: 'text/csv', at: doer.at });
    const { counts, planSha256 } = await planNow(tx, list.value.rows, placeId);
    const stockListId = newId();
    const fileName = fileNameFrom(input.fileName);
    const kept = { id: stockListId, fileId: file.id, fileName, placeId, planSha256, ...counts };
    await tx.stockList.create({ data: { ...kept, staffId: doer.actor.id, shownAt: doer.at } });
    await auditList(tx, doer, 'looked at a stock list', { stockListId, fileName, ...counts });
    return ok({ stockListId });
  });
}

/**
 * Looks at a kept list once more, against the stock as it is now.
 *
 * @returns refuses, in this order: not allowed, an unknown list, one that was confirmed before
 */
export async function lookAgain(
  doer: Doer,
  input: { requestKey: string; stockListId: string },
): Promise<Result<{ stockListId: string }, StockListRefusal>> {
  const opened = await openList(doer, input.stockListId);
  if (!opened.ok) return opened;
  const { stockListId } = input;
  const command = commandOf(doer, input.requestKey, 'lookAgain', { stockListId });
  return onceOnly<{ stockListId: string }, StockListRefusal>(command, async (tx) => {
    const list = await findUnconfirmed(tx, stockListId);
    if (!list.ok) return list;
    const { counts, planSha256 } = await planNow(tx, opened.value, list.value.placeId);
    const data = { ...counts, planSha256, shownAt: doer.at };
    await tx.stockList.update({ where: { id: stockListId }, data });
    return ok({ stockListId });
  });
}

/**
 * Brings a list in, whole or not at all: exactly what was shown, in one transaction.
 *
 * A count that differs becomes one movement, `opening` for a new piece and `counted` for a known
 * one. Lines that were refused are left out only where the person said so.
 *
 * @returns the counts; refuses, in this order: not allowed, an unknown list, one that was confirmed
 *   before, a stock that changed since the list was looked at, refused lines, nothing to do, a wish
 *   to stop
 */
export async function confirmStockList(
  doer: Doer,
  input: {
    requestKey: string;
    stockListId: string;
    planSha256: string;
    leaveRefusedOut: boolean;
  },
  pulse: ListPulse = goOn,
): Promise<Result<ListCounts, StockListRefusal>> {
  const opened = await openList(doer, input.stockListId);
  if (!opened.ok) return opened;
  const { requestKey, ...command } = input;
  return onceOnly(
    commandOf(doer, requestKey, 'confirmStockList', command),
    async (tx) => {
      const list = await findUnconfirmed(tx, input.stockListId);
      if (!list.ok) return list;
      const { plan, counts, planSha256 } = await planNow(tx, opened.value, list.value.placeId);
      const agreed = decideConfirming({ counts, planSha256, input, shown: list.value });
      if (!agreed.ok) return agreed;

      const { placeId } = list.value;
      const carried = await carryOut(tx, doer, plan, { id: input.stockListId, placeId, pulse });
      if (!carried.ok) return carried;
      const data = { confirmedAt: doer.at };
      await tx.stockList.update({ where: { id: input.stockListId }, data });
      const { stockListId } = input;
      const { fileName } = list.value;
      await auditList(tx, doer, 'brought in a stock list', { stockListId, fileName, ...counts });
      return ok(counts);
    },
    listLimits,
  );
}

function decideConfirming(facts: {
  counts: ListCounts;
  planSha256: string;
  input: { planSha256: string; leaveRefusedOut: boolean };
  shown: { planSha256: string };
}): Result<true, StockListRefusal> {
  const { counts, planSha256, input, shown } = facts;
  if (planSha256 !== input.planSha256 || planSha256 !== shown.planSha256) {
    return refuse({ code: 'stock_changed' });
  }
  if (counts.refusedRows > 0 && !input.leaveRefusedOut) {
    return refuse({ code: 'lines_refused', lines: counts.refusedRows });
  }
  return counts.newRows + counts.changedRows === 0 ? refuse({ code: 'nothing_to_do' }) : ok(true);
}

async function openList(
  doer: Doer,
  stockListId: string,
): Promise<Result<ReadRow[], StockListRefusal>> {
  const allowed = allow(doer.actor, 'stock.load');
  if (!allowed.ok) return allowed;
  const list = await db().stockList.findUnique({
    where: { id: stockListId },
    select: { file: { select: { bytes: true } } },
  });
  if (!list) return refuse({ code: 'unknown_list' });
  const { lengthUnit } = await getGallery();
  const read = await readListFile(list.file.bytes, lengthUnit);
  return read.ok ? ok(read.value.rows) : read;
}

async function findUnconfirmed(tx: Tx, id: string) {
  const list = await tx.stockList.findUnique({
    where: { id },
    select: { placeId: true, fileName: true, planSha256: true, confirmedAt: true },
  });
  if (!list) return refuse({ code: 'unknown_list' as const });
  return list.confirmedAt ? refuse({ code: 'confirmed_before' as const }) : ok(list);
}

async function planNow(tx: Tx, rows: readonly ReadRow[], placeId: string) {
  const plan = planStockList(rows, await readKnownStock(tx, rows, placeId));
  return { plan, counts: countPlan(plan), planSha256: hashPlan(plan) };
}

/** Goes on to the end, for whoever does not ask how far it is. */
async function goOn(): Promise<boolean> {
  return Promise.resolve(false);
}

type KeptRow = Extract<PlannedRow, { verdict: 'new' | 'changed' }>;

async function carryOut(
  tx: Tx,
  doer: Doer,
  plan: readonly PlannedRow[],
  list: { id: string; placeId: string; pulse: ListPulse },
): Promise<Result<true, StockListRefusal>> {
  for (let from = 0; from < plan.length; from += linesAtOnce) {
    if (await list.pulse(from)) return refuse({ code: 'stopped' });
    const some = plan.slice(from, from + linesAtOnce);
    const kept = some.flatMap((row) =>
      row.verdict === 'new' || row.verdict === 'changed' ? [row] : [],
    );
    if (kept.length > 0) await keepRows(tx, doer, kept, list);
  }
  return (await list.pulse(plan.length)) ? refuse({ code: 'stopped' }) : ok(true);
}

async function keepRows(
  tx: Tx,
  doer: Doer,
  kept: readonly KeptRow[],
  list: { id: string; placeId: string },
): Promise<void> {
  const { timeZone } = await getGallery(tx);
  const pieces = kept.map((row) => row.piece);
  const listed = await keepDatedPrices(tx, doer, { pieces, on: dayOf(doer.at, timeZone) });
  const idOf = await keepSkus(tx, doer, listed);
  const arrivals = kept.flatMap((row): Arrival[] => {
    const quantity = arrivingOf(row);
    if (quantity === 0) return [];
    const skuId = idOf.get(row.piece.code);
    invariant(skuId, 'Every piece that was kept has its id.');
    const reason = row.verdict === 'new' ? 'opening' : 'counted';
    const where = { skuId, placeId: list.placeId, stockListId: list.id };
    return [{ ...where, quantity, reason, unitCostCents: row.piece.costCents }];
  });
  await bringIntoStock(tx, doer, arrivals);
}

function arrivingOf(row: KeptRow): number {
  if (row.verdict === 'new') return row.here;
  const counted = row.changes.find((change) => change.fact === 'here');
  return typeof counted?.to === 'number' ? counted.to - row.known.here : 0;
}

function commandOf(doer: Doer, key: string, name: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}

async function auditList(
  tx: Tx,
  doer: Doer,
  did: string,
  { stockListId, ...facts }: ListCounts & { stockListId: string; fileName: string },
): Promise<void> {
  await recordAudit(tx, doer, { did, subject: 'StockList', subjectId: stockListId, facts });
}
