import 'server-only';
import { readHolds } from '@/lib/holds/reads';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, type Result } from '@/lib/platform/result';
import { readNumbersAt } from '@/lib/stock/reads/numbers';
import type { KeptSlip } from '../reads/slip-row';
import { putOn } from '../rules/change';
import type { CounterRefusal } from '../rules/refusals';
import type { LineToPut, SlipContent } from '../rules/slip';

/**
 * Puts lines on a slip's content. A piece of an edition that comes without a number gets the
 * lowest one that is here, free, and not on the slip yet. Reads in the caller's transaction.
 */
export async function putLinesOn(
  tx: Tx,
  slip: KeptSlip,
  lines: readonly LineToPut[],
): Promise<Result<SlipContent, CounterRefusal>> {
  let { content } = slip;
  for (const line of lines) {
    const put = putOn(content, await withNumbers(tx, slip, content, line), newId());
    if (!put.ok) return put;
    content = put.value;
  }
  return ok(content);
}

async function withNumbers(
  tx: Tx,
  slip: KeptSlip,
  content: SlipContent,
  line: LineToPut,
): Promise<LineToPut> {
  if (line.kind !== 'piece' || (line.numbers ?? []).length > 0) return line;
  const where = { skuIds: [line.skuId], placeId: slip.placeId };
  const here = (await readNumbersAt(tx, where)).get(line.skuId) ?? [];
  if (here.length === 0) return line;
  const holds = await readHolds(tx, where);
  const taken = new Set<number>([
    ...content.lines.flatMap((each) =>
      each.kind === 'piece' && each.skuId === line.skuId ? each.numbers : [],
    ),
    ...holds.flatMap(({ id, editionNumber, collectorId }) => {
      const isTheirs =
        (line.holdIds ?? []).includes(id) ||
        (collectorId !== null && collectorId === slip.collectorId);
      return editionNumber === null || isTheirs ? [] : [editionNumber];
    }),
  ]);
  const numbers = here.filter((number) => !taken.has(number)).slice(0, line.quantity);
  return numbers.length === line.quantity ? { ...line, numbers } : line;
}
