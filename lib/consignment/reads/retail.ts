import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import type { Day } from '@/lib/dates/rules';

const dayRow = z.object({ skuId: z.string(), sku: z.string(), retailCents: z.bigint() });

/** What these SKUs cost a visitor on a day, in cents; by SKU, one that nobody knows is left out. */
export async function readRetailOn(
  from: Prisma.TransactionClient,
  { codes, on }: { codes: readonly string[]; on: Day },
): Promise<Map<string, z.infer<typeof dayRow>>> {
  const rows = await from.$queryRaw`
    SELECT id AS "skuId", code AS sku, price_on(id, ${on}::date) AS "retailCents" FROM "Sku"
    WHERE code = ANY(${[...codes]}::text[])`;
  return new Map(
    z
      .array(dayRow)
      .parse(rows)
      .map((row) => [row.sku, row]),
  );
}

const thereRow = z.object({ skuId: z.string(), retailCents: z.bigint() });

/** The retail price of the newest note for each SKU that went to another gallery, by SKU id. */
export async function readRetailThere(
  from: Prisma.TransactionClient,
  { consigneeId }: { consigneeId: string },
): Promise<Map<string, bigint>> {
  const rows = await from.$queryRaw`
    SELECT DISTINCT ON (line."skuId") line."skuId", line."retailCents"
    FROM "ConsignmentNoteLine" line JOIN "ConsignmentNote" note ON note.id = line."noteId"
    WHERE note."consigneeId" = ${consigneeId}::uuid AND NOT note."isBack"
    ORDER BY line."skuId", note.number DESC, line.position DESC`;
  return new Map(
    z
      .array(thereRow)
      .parse(rows)
      .map((row) => [row.skuId, row.retailCents]),
  );
}
