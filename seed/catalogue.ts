import { inStoreCode } from '@/lib/catalogue/rules';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import type { Result } from '@/lib/platform/result';
import { parseLength, type LengthRefusal } from '@/lib/units/rules';
import { colourways as glazes } from './pictures/colourways';
import { renderColourTile } from './pictures/papers';
import { renderPiece } from './pictures/piece';
import { designs, forms, range, type DesignCode, type FormKey } from './scenario/pieces';

/** A SKU of the demo, as the trade that is played needs to know it. */
export type DemoSku = {
  id: string;
  designId: string;
  design: DesignCode;
  form: FormKey;
  priceCents: bigint;
  costCents: bigint;
  /** How often it is picked up, against the others. */
  draw: number;
};

/** Micrometres of a length that the scenario gives in words. */
export function lengthOf(text: string): number {
  const length: Result<number, LengthRefusal> = parseLength(text, 'in');
  invariant(length.ok, `${text} is a length.`);
  return length.value;
}

/** The long side of a piece's picture: enough for a phone's fine screen, or half a desk's. */
const picturePx = 760;

type Drawn = { bytes: Uint8Array; widthPx: number; heightPx: number };

/** The pictures of the demo's pieces by SKU code and of its colourways by key; drawn, no database. */
export async function drawPieces(): Promise<{
  pieces: Map<string, Drawn>;
  tiles: Map<string, Drawn>;
}> {
  const pieces = new Map<string, Drawn>();
  for (const { design, form, colourways } of range) {
    for (const colourway of colourways) {
      const { motif } = designOf(design);
      const { kind, width, height } = forms[form];
      const code = skuCodeOf(design, form, colourway);
      const proportion = lengthOf(width) / lengthOf(height);
      const order = { motif, kind, colourway, seed: code, proportion, widthPx: picturePx };
      pieces.set(code, await renderPiece(order));
    }
  }
  const tiles = new Map<string, Drawn>();
  for (const { key } of glazes) tiles.set(key, await renderColourTile(key));
  return { pieces, tiles };
}

/** Writes designs, colourways and SKUs with their pictures. */
export async function fillCatalogue(
  tx: Tx,
  drawn: Awaited<ReturnType<typeof drawPieces>>,
  at: Date,
): Promise<DemoSku[]> {
  const pictureIds = new Map<string, string>();
  for (const [code, picture] of drawn.pieces) {
    pictureIds.set(code, (await keepFile(tx, { ...picture, mediaType: 'image/webp', at })).id);
  }
  const colourwayIds = new Map<string, string>();
  for (const { key, name, description } of glazes) {
    const tile = drawn.tiles.get(key);
    const pictureId = tile
      ? (await keepFile(tx, { ...tile, mediaType: 'image/webp', at })).id
      : null;
    const { id } = await tx.colourway.create({ data: { name, description, pictureId } });
    colourwayIds.set(key, id);
  }
  const skus: DemoSku[] = [];
  const rows = [];
  for (const { code, title, story } of designs) {
    const designId = newId();
    const offered = range.filter(({ design }) => design === code);
    const first = offered[0];
    const face = first && skuCodeOf(code, first.form, first.colourways[0] ?? '');
    const pictureId = (face && pictureIds.get(face)) ?? null;
    await tx.design.create({
      data: { id: designId, code, title, story, pictureId, createdAt: at },
    });
    for (const { form, colourways } of offered) {
      for (const [place, colourway] of colourways.entries()) {
        const sku = skuOf({ designId, design: code, form, place });
        skus.push(sku);
        rows.push({
          ...rowOf(sku, skuCodeOf(code, form, colourway), skus.length),
          pictureId: pictureIds.get(skuCodeOf(code, form, colourway)) ?? null,
          colourwayId: known(colourwayIds, colourway),
          createdAt: at,
        });
      }
    }
  }
  await tx.sku.createMany({ data: rows });
  return skus;
}

/** The design of that code. */
export function designOf(code: DesignCode): (typeof designs)[number] {
  const found = designs.find((design) => design.code === code);
  invariant(found, `${code} is a design of the demo.`);
  return found;
}

function skuOf(of: {
  designId: string;
  design: DesignCode;
  form: FormKey;
  place: number;
}): DemoSku {
  const { priceCents, costCents, pull } = forms[of.form];
  // The first colourway of a design sells best; each further one less well.
  const draw = (designOf(of.design).draw * pull) / (1 + of.place);
  const { designId, design, form } = of;
  return { id: newId(), designId, design, form, priceCents, costCents, draw };
}

function rowOf(sku: DemoSku, code: string, number: number) {
  const { kind, making, width, height, depth, weightG } = forms[sku.form];
  const { id, designId, priceCents, costCents } = sku;
  return {
    ...{ id, code, designId, kind, making, weightG, priceCents, costCents },
    widthUm: lengthOf(width),
    heightUm: lengthOf(height),
    depthUm: lengthOf(depth),
    gtin: inStoreCode('20', number),
  };
}

/** The code on the tag: design, form, and three letters of the colourway. */
export function skuCodeOf(design: DesignCode, form: FormKey, colourway: string): string {
  return `${design}-${form}-${colourway.slice(0, 3).toUpperCase()}`;
}

function known(ids: ReadonlyMap<string, string>, key: string): string {
  const id = ids.get(key);
  invariant(id, `${key} is a colourway of the demo.`);
  return id;
}
