import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { newId } from '@/lib/platform/new-id';
import { invariant } from '@/lib/platform/invariant';
import type { Tx } from '@/lib/platform/db/transaction';
import { designCodeFrom, sameName, type CatalogueSku } from './rules/piece';

/** How many SKUs go into one statement. */
const skusAtOnce = 2_000;

/**
 * Keeps SKUs as they are given, new ones and changed ones; joins the caller's transaction. A design
 * or a colourway whose name is not known yet is made. A handful of statements for thousands.
 *
 * @param skus each code once; the database refuses, as `Sku_gtin_key`, a barcode that two would have
 * @returns the id of each, by its code
 */
export async function keepSkus(
  tx: Tx,
  doer: Doer,
  skus: readonly CatalogueSku[],
): Promise<Map<string, string>> {
  const designs = await keepDesigns(tx, doer, skus);
  const colourways = await keepColourways(tx, skus);
  const ids = new Map<string, string>();
  for (let from = 0; from < skus.length; from += skusAtOnce) {
    const some = skus.slice(from, from + skusAtOnce);
    for (const row of await upsert(tx, doer, some, { designs, colourways })) {
      ids.set(row.code, row.id);
    }
  }
  return ids;
}

type IdOfName = ReadonlyMap<string, string>;

async function keepDesigns(tx: Tx, doer: Doer, skus: readonly CatalogueSku[]): Promise<IdOfName> {
  const kept = await tx.design.findMany({ select: { id: true, title: true, code: true } });
  const idOf = new Map(kept.map((design) => [sameName(design.title), design.id]));
  const taken = new Set(kept.map((design) => design.code));
  const made: { id: string; title: string; code: string; createdAt: Date }[] = [];
  for (const sku of skus) {
    if (idOf.has(sameName(sku.title))) continue;
    const id = newId();
    const code = designCodeFrom(sku.code, taken);
    taken.add(code);
    idOf.set(sameName(sku.title), id);
    made.push({ id, title: sku.title, code, createdAt: doer.at });
  }
  if (made.length > 0) await tx.design.createMany({ data: made });
  return idOf;
}

async function keepColourways(tx: Tx, skus: readonly CatalogueSku[]): Promise<IdOfName> {
  const kept = await tx.colourway.findMany({ select: { id: true, name: true } });
  const idOf = new Map(kept.map((colourway) => [sameName(colourway.name), colourway.id]));
  const made: { id: string; name: string }[] = [];
  for (const { colourway } of skus) {
    if (idOf.has(sameName(colourway))) continue;
    const id = newId();
    idOf.set(sameName(colourway), id);
    made.push({ id, name: colourway });
  }
  if (made.length > 0) await tx.colourway.createMany({ data: made });
  return idOf;
}

async function upsert(
  tx: Tx,
  doer: Doer,
  skus: readonly CatalogueSku[],
  names: { designs: IdOfName; colourways: IdOfName },
): Promise<{ id: string; code: string }[]> {
  const rows = skus.map((sku) => ({
    ...sku,
    id: newId(),
    designId: idOf(names.designs, sku.title),
    colourwayId: idOf(names.colourways, sku.colourway),
    priceCents: sku.priceCents.toString(),
    costCents: sku.costCents?.toString() ?? null,
  }));
  // One text: a long array for each column costs many times its memory.
  return tx.$queryRaw`
    INSERT INTO "Sku"
      (id, code, "designId", "colourwayId", kind, making, "widthUm", "heightUm", "depthUm",
       "weightG", "priceCents", "costCents", gtin, "createdAt")
    SELECT *, ${doer.at.toISOString()}::timestamptz
    FROM json_to_recordset(${JSON.stringify(rows)}::json) AS listed (
      id uuid, code text, "designId" uuid, "colourwayId" uuid, kind "Kind", making "Making",
      "widthUm" int, "heightUm" int, "depthUm" int, "weightG" int, "priceCents" bigint,
      "costCents" bigint, gtin text)
    ON CONFLICT (code) DO UPDATE SET
      "designId" = excluded."designId", "colourwayId" = excluded."colourwayId",
      kind = excluded.kind, making = excluded.making, "widthUm" = excluded."widthUm",
      "heightUm" = excluded."heightUm", "depthUm" = excluded."depthUm",
      "weightG" = excluded."weightG", "priceCents" = excluded."priceCents",
      "costCents" = excluded."costCents", gtin = excluded.gtin
    RETURNING id, code`;
}

function idOf(names: IdOfName, name: string): string {
  const id = names.get(sameName(name));
  invariant(id, 'Every name of a list has its row before its pieces are written.');
  return id;
}
