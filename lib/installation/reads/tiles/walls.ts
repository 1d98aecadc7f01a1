import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { tileWallAsked } from '@/lib/installation/input/tiles/wall';
import { db } from '@/lib/platform/db/client';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';

/** A wall with its tiles, as it was kept. */
export type TileWallShown = {
  number: number;
  title: string;
  asked: TileWallAsked;
  commission: { id: string; number: number; title: string } | null;
  by: string;
  at: Date;
};

const columns = {
  ...{ number: true, title: true, asked: true, staffId: true, at: true },
  commission: { select: { id: true, number: true, title: true } },
} as const satisfies Prisma.TileWallSelect;

type Row = Prisma.TileWallGetPayload<{ select: typeof columns }>;

/** The walls that were laid out, of one commission or of all, the newest first; at most 200. */
export async function listTileWalls(actor: Actor, commissionId?: string): Promise<TileWallShown[]> {
  assertAllowed(actor, 'installation.do');
  const rows = await db().tileWall.findMany({
    where: commissionId === undefined ? {} : { commissionId },
    select: columns,
    orderBy: { number: 'desc' },
    take: 200,
  });
  return shown(rows);
}

/** One wall with its tiles; null when there is none of that number. */
export async function findTileWall(actor: Actor, number: number): Promise<TileWallShown | null> {
  assertAllowed(actor, 'installation.do');
  const row = await db().tileWall.findUnique({ where: { number }, select: columns });
  const [one] = row ? await shown([row]) : [];
  return one ?? null;
}

/** The commission that a wall is laid out for; null when there is none of that number. */
export async function findWallCommission(
  actor: Actor,
  number: number,
): Promise<{ id: string; number: number; title: string } | null> {
  assertAllowed(actor, 'installation.do');
  return db().commission.findUnique({
    where: { number },
    select: { id: true, number: true, title: true },
  });
}

async function shown(rows: readonly Row[]): Promise<TileWallShown[]> {
  const staff = await db().staff.findMany({
    where: { id: { in: rows.map(({ staffId }) => staffId) } },
    select: { id: true, name: true },
  });
  const names = new Map(staff.map(({ id, name }) => [id, name]));
  return rows.map(({ staffId, asked, ...row }) => ({
    ...row,
    asked: tileWallAsked.parse(asked),
    by: names.get(staffId) ?? '',
  }));
}
