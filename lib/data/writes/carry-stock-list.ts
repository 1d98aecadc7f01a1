import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { onceOnly } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { stockListRefusalMessage, type StockListRefusal } from '@/lib/stock/rules/list-refusals';
import { countsWords, type ListCounts } from '@/lib/stock/rules/list-summary';
import { confirmStockList } from '@/lib/stock/writes/stock-list';
import type { DataRefusal } from '../rules/refusals';
import { noteEnd, noteProgress } from './progress';

/**
 * Begins to bring a stock list in that was looked at: writes down that it is under way. What
 * follows is the work of {@link carryStockList}.
 *
 * @returns the id under which it goes; refuses, in this order: not allowed, a list that is not here
 */
export async function beginStockList(
  doer: Doer,
  input: { requestKey: string; stockListId: string },
): Promise<Result<{ loadId: string }, DataRefusal>> {
  const allowed = allow(doer.actor, 'stock.load');
  if (!allowed.ok) return allowed;
  const { requestKey, stockListId } = input;
  const { id: staffId } = doer.actor;
  const command = { key: requestKey, name: 'beginStockList', staffId, at: doer.at };
  return onceOnly<{ loadId: string }, DataRefusal>(
    { ...command, input: { stockListId } },
    async (tx) => {
      const list = await tx.stockList.findUnique({ where: { id: stockListId } });
      if (!list) return refuse({ code: 'unknown_load' });
      const { fileId, fileName, newRows, changedRows, sameRows, refusedRows } = list;
      const loadId = newId();
      const rowsTotal = newRows + changedRows + sameRows + refusedRows;
      const times = { startedAt: doer.at, seenAt: doer.at };
      const names = { kind: 'stock', fileId, fileName, rowsTotal };
      await tx.dataLoad.create({ data: { id: loadId, ...names, ...times, staffId } });
      return ok({ loadId });
    },
  );
}

/** What was said yes to. */
export type StockListAgreed = {
  loadId: string;
  stockListId: string;
  planSha256: string;
  leaveRefusedOut: boolean;
};

/**
 * Brings a stock list in that was begun, whole or not at all, and tells how far it is.
 *
 * @returns the counts; refuses what {@link confirmStockList} refuses
 */
export async function carryStockList(
  doer: Doer,
  agreed: StockListAgreed,
): Promise<Result<ListCounts, StockListRefusal>> {
  const { loadId, ...list } = agreed;
  const confirmed = await confirmStockList(doer, { ...list, requestKey: loadId }, (linesDone) =>
    noteProgress(loadId, linesDone),
  ).catch(async (fault: unknown) => {
    await noteEnd(loadId, 'It could not be brought in; nothing was kept.');
    throw fault;
  });
  const words = confirmed.ok
    ? `It was brought in: ${countsWords(confirmed.value)}`
    : stockListRefusalMessage(confirmed.refusal);
  await noteEnd(loadId, words);
  return confirmed;
}
