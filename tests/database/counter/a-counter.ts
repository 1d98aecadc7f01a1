import { randomUUID } from 'node:crypto';
import type { Doer } from '@/lib/access/rules';
import type { AnyCounterRefusal } from '@/lib/counter/rules/refusals';
import { slipContent, type LineToPut, type SlipContent } from '@/lib/counter/rules/slip';
import {
  changeOnSlip,
  putOnSlip,
  sellSlip,
  type SlipToSell,
  type ToChange,
} from '@/lib/counter/writes';
import { db } from '@/lib/platform/db/client';
import type { Result } from '@/lib/platform/result';

/** A slip as it stands in the database. */
export async function slipNow(
  slipId: string,
): Promise<{ version: number; content: SlipContent; asideAs: string | null }> {
  const row = await db().slip.findUniqueOrThrow({ where: { id: slipId } });
  return { ...row, content: slipContent.parse(row.content) };
}

/** A slip with these lines on it. */
export async function aSlipWith(
  doer: Doer,
  line: LineToPut | LineToPut[],
  collectorId: string | null = null,
): Promise<string> {
  const put = await putOnSlip(doer, { requestKey: randomUUID(), slipId: null, line, collectorId });
  if (!put.ok) throw new Error(`Not put on: ${put.refusal.code}`);
  return put.value.slipId;
}

/** Changes a slip in the state that it is in now, or in the state that is said. */
export async function change(
  doer: Doer,
  slipId: string,
  asked: ToChange['change'],
  version?: number,
): Promise<ReturnType<typeof changeOnSlip>> {
  const now = version ?? (await slipNow(slipId)).version;
  return changeOnSlip(doer, { requestKey: randomUUID(), slipId, version: now, change: asked });
}

/** Sells a slip in the state that it is in now; the rest in cash, unless it is said otherwise. */
export async function sellIt(
  doer: Doer,
  slipId: string,
  expectedTotalCents: bigint,
  over: Partial<SlipToSell> = {},
): Promise<ReturnType<typeof sellSlip>> {
  const { version: slipVersion } = await slipNow(slipId);
  return sellSlip(doer, {
    ...{ requestKey: randomUUID(), slipId, slipVersion, expectedTotalCents },
    tenders: [{ kind: 'cash', givenCents: null }],
    ...over,
  });
}

/** The name of the refusal, or how it went. */
export function toldBy(result: Result<unknown, AnyCounterRefusal>): string {
  return result.ok ? 'done' : result.refusal.code;
}

/** A collector, by name. */
export async function aCollector(name: string, over: object = {}): Promise<string> {
  const data = { name, createdAt: new Date('2026-11-01T00:00:00Z'), ...over };
  return (await db().collector.create({ data })).id;
}

/** The postings of an account, in cents, in their order. */
export async function postedTo(accountCode: string): Promise<bigint[]> {
  const rows = await db().posting.findMany({ where: { accountCode }, orderBy: { id: 'asc' } });
  return rows.map((row) => row.amountCents);
}
