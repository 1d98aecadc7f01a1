import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import type { Day } from '@/lib/dates/rules';
import { readLayaways } from '@/lib/layaway/reads/facts';
import type { OrderFact, PaperFacts } from '../rules/facts';
import type { SlipContent } from '../rules/slip';

const orderRow = z.object({
  id: z.string(),
  number: z.number(),
  title: z.string(),
  unitPriceCents: z.bigint(),
  heldCents: z.bigint(),
  hasEnded: z.boolean(),
});
/** The commissions, special orders and layaways that a slip takes money for, or hands over. */
export async function readPapers(
  from: Prisma.TransactionClient,
  { lines }: SlipContent,
  on: Day,
): Promise<PaperFacts> {
  const commissionIds = lines.flatMap((line) =>
    line.kind === 'instalment' ? [line.commissionId] : [],
  );
  const orderIds = lines.flatMap((line) => ('orderId' in line ? [line.orderId ?? ''] : []));
  const layawayIds = lines.flatMap((line) =>
    line.kind === 'layaway_payment' ? [line.layawayId] : [],
  );
  return {
    commissions: await readCommissions(from, commissionIds),
    orders: await readOrders(
      from,
      orderIds.filter((id) => id !== ''),
    ),
    layaways: await layawaysOf(from, layawayIds, on),
  };
}

async function readCommissions(
  from: Prisma.TransactionClient,
  ids: readonly string[],
): Promise<PaperFacts['commissions']> {
  if (ids.length === 0) return new Map();
  const rows = await from.commission.findMany({
    where: { id: { in: [...ids] } },
    select: {
      ...{ id: true, number: true, title: true },
      handOver: { select: { handedOn: true } },
      ending: { select: { endedOn: true } },
    },
  });
  return new Map(
    rows.map(({ id, number, title, handOver, ending }) => [
      id,
      { number, title, isHandedOver: handOver !== null || ending !== null },
    ]),
  );
}

async function readOrders(
  from: Prisma.TransactionClient,
  ids: readonly string[],
): Promise<ReadonlyMap<string, OrderFact>> {
  if (ids.length === 0) return new Map();
  const found = await from.$queryRaw`
    SELECT special.id, special.number, design.title, special."unitPriceCents",
      order_money(special.id)::bigint AS "heldCents", special."endedAt" IS NOT NULL AS "hasEnded"
    FROM "SpecialOrder" special
    JOIN "Sku" sku ON sku.id = special."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    WHERE special.id = ANY(${[...ids]}::uuid[])`;
  const rows = z.array(orderRow).parse(found);
  return new Map(rows.map(({ id, ...order }) => [id, order]));
}

async function layawaysOf(
  from: Prisma.TransactionClient,
  ids: readonly string[],
  on: Day,
): Promise<PaperFacts['layaways']> {
  if (ids.length === 0) return new Map();
  const wanted = { where: { id: { in: [...ids] } }, orderBy: [], most: ids.length };
  const layaways = await readLayaways(from, wanted, on);
  return new Map(
    layaways.map(({ id, number, money, endedAt }) => [
      id,
      { number, leftCents: money.remainingCents, hasEnded: endedAt !== null },
    ]),
  );
}
