import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { listPiecesById, type Piece } from '../../reads';

/** How many moves the list shows. */
const movesListed = 40;
const linesMost = 1_000;

/** A move in the list of moves. */
export type MoveListed = {
  number: number;
  from: string;
  to: string;
  movedOn: Day;
  by: string;
  pieces: number;
};

/**
 * The latest moves, the newest first; at most 40.
 *
 * @param wish with a place, those from there and to there
 */
export async function listMoves(
  actor: Actor,
  wish: { placeId?: string } = {},
): Promise<MoveListed[]> {
  assertAllowed(actor, 'stock.see');
  const { placeId } = wish;
  const rows = await db().stockTransfer.findMany({
    ...(placeId === undefined ? {} : { where: { OR: [{ fromId: placeId }, { toId: placeId }] } }),
    select: {
      ...{ number: true, movedOn: true, staffId: true },
      from: { select: { name: true } },
      to: { select: { name: true } },
      movements: { where: { quantity: { gt: 0 } }, select: { quantity: true } },
    },
    orderBy: { number: 'desc' },
    take: movesListed,
  });
  const names = await namesOf(rows.map((row) => row.staffId));
  return rows.map(({ number, movedOn, staffId, from, to, movements }) => ({
    ...{ number, from: from.name, to: to.name, movedOn: dayFromDate(movedOn) },
    by: names.get(staffId) ?? '',
    pieces: movements.reduce((sum, each) => sum + each.quantity, 0),
  }));
}

/** A line of a move's paper. */
export type MoveLine = { piece: Piece; quantity: number; numbers: number[] };

/** A move with what it moved, as its paper shows it. */
export type MovePaper = Omit<MoveListed, 'pieces'> & {
  at: Date;
  note: string;
  lines: MoveLine[];
  pieces: number;
  /** The consignment note that stands on it. */
  consignmentNote: number | null;
};

/**
 * The paper of a move by its number.
 *
 * @returns null when no move has that number
 */
export async function findMove(actor: Actor, number: number): Promise<MovePaper | null> {
  assertAllowed(actor, 'stock.see');
  const row = await db().stockTransfer.findUnique({
    where: { number },
    select: {
      ...{ number: true, movedOn: true, at: true, note: true, staffId: true },
      from: { select: { name: true } },
      to: { select: { name: true } },
      consigned: { select: { number: true } },
      movements: {
        where: { quantity: { gt: 0 } },
        select: { skuId: true, quantity: true, editionNumber: true },
        orderBy: { id: 'asc' },
        take: linesMost,
      },
    },
  });
  if (!row) return null;
  const names = await namesOf([row.staffId]);
  const lines = await linesOf(actor, row.movements);
  return {
    ...{ number: row.number, from: row.from.name, to: row.to.name, at: row.at, note: row.note },
    movedOn: dayFromDate(row.movedOn),
    by: names.get(row.staffId) ?? '',
    lines,
    pieces: lines.reduce((sum, line) => sum + line.quantity, 0),
    consignmentNote: row.consigned?.number ?? null,
  };
}

async function linesOf(
  actor: Actor,
  moved: readonly { skuId: string; quantity: number; editionNumber: number | null }[],
): Promise<MoveLine[]> {
  const pieces = await listPiecesById(actor, [...new Set(moved.map((each) => each.skuId))]);
  return pieces.map((piece) => {
    const own = moved.filter((each) => each.skuId === piece.id);
    return {
      piece,
      quantity: own.reduce((sum, each) => sum + each.quantity, 0),
      numbers: own.flatMap((each) => (each.editionNumber === null ? [] : [each.editionNumber])),
    };
  });
}

/** The names of people by their ids; for this area's own reads. */
export async function namesOf(ids: readonly string[]): Promise<Map<string, string>> {
  const rows = await db().staff.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
    take: 500,
  });
  return new Map(rows.map((row) => [row.id, row.name]));
}
