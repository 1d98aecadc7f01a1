import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Lab } from '@/lib/colour/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { labOf, pictureColumns, pictureOf, type KeptPicture } from './shown';

/** A test tile with everything on its back. */
export type TileShown = {
  id: string;
  number: number;
  glazeId: string;
  glaze: string;
  /** The glaze's own colour, to hold it against; null where it was not measured. */
  glazeLab: Lab | null;
  recipeVersion: number | null;
  body: string | null;
  cone: string;
  coats: number;
  firing: { id: string; number: number } | null;
  madeOn: Day;
  raw: KeptPicture | null;
  fired: KeptPicture | null;
  lab: Lab | null;
  note: string;
};

const tileColumns = {
  ...{ id: true, number: true, glazeId: true, cone: true, coats: true, madeOn: true, note: true },
  ...{ lStar: true, aStar: true, bStar: true },
  glaze: { select: { name: true, lStar: true, aStar: true, bStar: true } },
  recipe: { select: { version: true } },
  body: { select: { name: true } },
  firing: { select: { id: true, number: true } },
  rawFile: pictureColumns,
  firedFile: pictureColumns,
} as const satisfies Prisma.TestTileSelect;

type TileRow = Prisma.TestTileGetPayload<{ select: typeof tileColumns }>;

/** The most test tiles of one glaze that a page shows. */
export const tilesListed = 200;

/** The test tiles of a glaze, the newest first. */
export async function listTiles(actor: Actor, glazeId: string): Promise<TileShown[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().testTile.findMany({
    where: { glazeId },
    select: tileColumns,
    orderBy: { number: 'desc' },
    take: tilesListed,
  });
  return rows.map(tileOf);
}

/** One test tile by its number; null when there is none. */
export async function findTile(actor: Actor, number: number): Promise<TileShown | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().testTile.findUnique({ where: { number }, select: tileColumns });
  return row && tileOf(row);
}

function tileOf(row: TileRow): TileShown {
  const { id, number, glazeId, cone, coats, note, firing } = row;
  return {
    ...{ id, number, glazeId, cone, coats, note, firing },
    glaze: row.glaze.name,
    glazeLab: labOf(row.glaze),
    recipeVersion: row.recipe?.version ?? null,
    body: row.body?.name ?? null,
    madeOn: dayFromDate(row.madeOn),
    raw: pictureOf(row.rawFile),
    fired: pictureOf(row.firedFile),
    lab: labOf(row),
  };
}

/** An opened firing that a tile can have been in. */
export type FiringNamed = { id: string; number: number; cone: string; kiln: string; openedOn: Day };

/** What a form of a test tile offers: clay bodies, and the firings that were opened last. */
export async function readTileChoices(
  actor: Actor,
): Promise<{ bodies: { id: string; name: string }[]; firings: FiringNamed[] }> {
  assertAllowed(actor, 'studio.see');
  const [bodies, opened] = await Promise.all([
    db().clayBody.findMany({ select: { id: true, name: true }, orderBy: { name: 'asc' } }),
    db().firingOpened.findMany({
      select: {
        openedOn: true,
        firing: {
          select: { id: true, number: true, cone: true, kiln: { select: { name: true } } },
        },
      },
      orderBy: { at: 'desc' },
      take: 60,
    }),
  ]);
  return {
    bodies,
    firings: opened.map(({ openedOn, firing: { kiln, ...firing } }) => ({
      ...firing,
      kiln: kiln.name,
      openedOn: dayFromDate(openedOn),
    })),
  };
}

/** A glaze and its recipes, for a list to choose from. */
export type GlazeNamed = {
  id: string;
  name: string;
  recipes: readonly { id: string; version: number }[];
};

/** The glazes that are still mixed, by name, each with its recipes, the newest first. */
export async function listGlazeNames(actor: Actor, today: Day): Promise<GlazeNamed[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().glaze.findMany({
    where: { OR: [{ endedOn: null }, { endedOn: { gt: new Date(`${today}T00:00:00Z`) } }] },
    select: {
      ...{ id: true, name: true },
      recipes: { select: { id: true, version: true }, orderBy: { version: 'desc' } },
    },
    orderBy: { name: 'asc' },
  });
  return rows;
}
