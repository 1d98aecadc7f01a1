import { randomUUID } from 'node:crypto';
import type { Actor, Doer, Role } from '@/lib/access/rules';
import { putOnSlip, sellSlip, type SlipToSell } from '@/lib/counter/writes';
import { db } from '@/lib/platform/db/client';
import { bringIntoStock } from '@/lib/stock/writes';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';

/** An instant at the gallery's counter: four in the afternoon of 20 November 2026 there. */
export const noon = new Date('2026-11-21T00:00:00Z');

/** A later instant, in seconds after {@link noon}. */
export function later(seconds: number): Date {
  return new Date(noon.getTime() + seconds * 1_000);
}

/** A small gallery on the coast, with its tax, its counter and the people who work there. */
export type OpenGallery = {
  counterId: string;
  backRoomId: string;
  taxPlaceId: string;
  owner: Actor;
  clerk: Actor;
  second: Actor;
  maker: Actor;
  books: Actor;
};

/** Opens the gallery in a freshly migrated database: two tax authorities, 8 % together. */
export async function openGallery(): Promise<OpenGallery> {
  const counter = await db().place.create({ data: { name: 'Gallery floor' } });
  const backRoom = await db().place.create({ data: { name: 'Back room' } });
  const fromOn = new Date('2026-01-01');
  const taxPlace = await db().taxPlace.create({
    data: {
      name: 'Cedar Landing',
      state: 'WA',
      rates: {
        create: [
          { authority: 'State', ratePercent: '6.5', fromOn },
          { authority: 'Cedar Landing', ratePercent: '1.5', fromOn },
        ],
      },
    },
  });
  await db().gallery.create({
    data: {
      name: 'Tidewrack Clay',
      timeZone: 'America/Los_Angeles',
      returnTerms: 'Whole and with its receipt, a piece comes back within 14 days.',
      taxPlaceId: taxPlace.id,
      counterId: counter.id,
    },
  });
  const ids = { counterId: counter.id, backRoomId: backRoom.id, taxPlaceId: taxPlace.id };
  const [owner, clerk, second, maker, books] = await Promise.all([
    aPerson('Ines Vale', 'owner'),
    aPerson('Perrin Oday', 'gallery'),
    aPerson('Sunniva Rask', 'gallery'),
    aPerson('Tobias Fenn', 'maker'),
    aPerson('Hollis Dray', 'books'),
  ]);
  return { ...ids, owner, clerk, second, maker, books };
}

async function aPerson(name: string, role: Role): Promise<Actor> {
  const signInName = name.toLowerCase().replace(' ', '.');
  const passwordHash = '$argon2id$v=19$m=19456,t=2,p=1$c2FsdHNhbHQ$bm90IGEgcGFzc3dvcmQ';
  const data = { name, signInName, passwordHash, roles: [role], createdAt: noon };
  const { id } = await db().staff.create({ data });
  return { id, name, roles: [role] };
}

/** A SKU as the tests name it. */
export type TestPiece = { skuId: string; sku: string; priceCents: bigint };

/** Puts a tile into the catalogue and some of it on the gallery floor. */
export async function aPieceHere(
  gallery: OpenGallery,
  piece: { sku: string; title: string; priceCents: bigint; here: number },
): Promise<TestPiece> {
  const { sku, title, priceCents, here } = piece;
  const colourway = await db().colourway.upsert({
    where: { name: 'celadon over iron slip' },
    create: { name: 'celadon over iron slip' },
    update: {},
  });
  const design = await db().design.create({ data: { code: sku, title, createdAt: noon } });
  const size = { widthUm: 254_000, heightUm: 254_000 };
  const made = await db().sku.create({
    data: {
      ...{ code: sku, designId: design.id, colourwayId: colourway.id, kind: 'relief_tile' },
      ...{ ...size, priceCents, costCents: priceCents / 4n, createdAt: noon },
    },
  });
  if (here > 0) await bringHere(gallery, made.id, here);
  return { skuId: made.id, sku, priceCents };
}

/** Brings pieces to the gallery floor, as the studio does. */
export async function bringHere(
  gallery: OpenGallery,
  skuId: string,
  quantity: number,
): Promise<void> {
  const doer = { actor: gallery.owner, at: noon };
  const { counterId: placeId } = gallery;
  await inTransaction(async (tx) => {
    const arrival = { skuId, placeId, quantity, reason: 'made', unitCostCents: null } as const;
    await bringIntoStock(tx, doer, [arrival]);
    return ok(null);
  });
}

/** Pieces on a slip of their own, and how they are paid. */
export type TestSale = Omit<SlipToSell, 'slipVersion'> & {
  putKey: string;
  collectorId: string | null;
  lines: { skuId: string; quantity: number }[];
};

/** A sale for cash, just right at 8 %, of pieces as given. */
export function aSale(
  lines: readonly { piece: TestPiece; quantity: number }[],
  over: Partial<TestSale> = {},
): TestSale {
  const netCents = lines.reduce(
    (sum, { piece, quantity }) => sum + piece.priceCents * BigInt(quantity),
    0n,
  );
  const expectedTotalCents = netCents + (netCents * 8n + 50n) / 100n;
  return {
    ...{ requestKey: randomUUID(), putKey: randomUUID(), slipId: randomUUID() },
    collectorId: null,
    lines: lines.map(({ piece, quantity }) => ({ skuId: piece.skuId, quantity })),
    tenders: [{ kind: 'cash', givenCents: expectedTotalCents }],
    expectedTotalCents,
    ...over,
  };
}

/** Puts a sale's pieces on its slip and sells it; sent twice, both come again with their keys. */
export async function sellNow(doer: Doer, sale: TestSale): Promise<ReturnType<typeof sellSlip>> {
  const { putKey: requestKey, slipId, collectorId } = sale;
  const line = sale.lines.map((each) => ({ kind: 'piece' as const, ...each }));
  const put = await putOnSlip(doer, { requestKey, slipId, line, collectorId });
  if (!put.ok) return put;
  const { tenders, expectedTotalCents } = sale;
  const paid = { requestKey: sale.requestKey, tenders, expectedTotalCents };
  return sellSlip(doer, { ...paid, slipId, slipVersion: 2 });
}

/** Whoever acts, at an instant. */
export function doing(actor: Actor, at: Date = noon): Doer {
  return { actor, at };
}
