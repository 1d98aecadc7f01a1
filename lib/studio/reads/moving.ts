import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import type { BeginFacts, JobFacts, Move } from '@/lib/studio/rules';
import { coloursHaveYes } from '@/lib/studio/rules/colours';

/** A move with the parts that went with it. */
export type MoveOfParts = Move & { partIds: readonly string[]; makesGoodId: string | null };

/** A job as a move needs it: its route's names, all its moves in order, its parts. */
export type JobToMove = Omit<JobFacts, 'moves'> & {
  id: string;
  commissionId: string | null;
  skuId: string | null;
  moves: MoveOfParts[];
};

/** The columns of a move, for {@link readMove}. */
export const moveColumns = {
  id: true,
  fromPosition: true,
  toPosition: true,
  pieces: true,
  movedOn: true,
  undoesId: true,
} as const;

/** A move as the rules know it, from its row. */
export function readMove(row: {
  id: bigint;
  fromPosition: number;
  toPosition: number;
  pieces: number;
  movedOn: Date;
  undoesId: bigint | null;
}): Move {
  const { fromPosition, toPosition, pieces } = row;
  return {
    id: row.id.toString(),
    fromPosition,
    toPosition,
    pieces,
    movedOn: dayFromDate(row.movedOn),
    undoesId: row.undoesId?.toString() ?? null,
  };
}

const jobToMoveColumns = {
  ...{ id: true, number: true, pieces: true, wanted: true, commissionId: true, skuId: true },
  steps: { select: { name: true }, orderBy: { position: 'asc' } },
  moves: {
    select: { ...moveColumns, makesGoodId: true, parts: { select: { partId: true } } },
    orderBy: { id: 'asc' },
  },
  parts: {
    select: {
      ...{ id: true, number: true },
      lines: {
        where: { line: { firing: { lit: { isNot: null }, opened: null } } },
        select: { lineId: true },
        take: 1,
      },
    },
  },
} as const satisfies Prisma.JobSelect;

/**
 * One job for a move or its undoing.
 *
 * @returns null when there is none
 */
export async function loadJobToMove(
  from: Prisma.TransactionClient,
  where: Prisma.JobWhereInput,
): Promise<JobToMove | null> {
  const row = await from.job.findFirst({ where, select: jobToMoveColumns });
  if (!row) return null;
  const moves = row.moves.map(({ parts, makesGoodId, ...move }) => ({
    ...readMove(move),
    makesGoodId: makesGoodId?.toString() ?? null,
    partIds: parts.map(({ partId }) => partId),
  }));
  const stands = new Map<string, number>();
  for (const move of moves) {
    for (const partId of move.partIds) stands.set(partId, move.toPosition);
  }
  return {
    ...row,
    moves,
    parts: row.parts.map(({ id, number, lines }) => ({
      ...{ id, number, position: stands.get(id) ?? 0, isBurning: lines.length > 0 },
    })),
    burning: (await readBurning(from, [row.id])).get(row.id) ?? [],
  };
}

/** Pieces of a job at one of its steps that are in a kiln that was lit, and in which firing. */
export type Burning = {
  position: number;
  pieces: number;
  kiln: string;
  firingNumber: number;
  litOn: Day;
};

/** What of these jobs is in kilns that were lit and not opened yet, by job. */
export async function readBurning(
  from: Prisma.TransactionClient,
  jobIds: readonly string[],
): Promise<Map<string, Burning[]>> {
  if (jobIds.length === 0) return new Map();
  const rows = await from.$queryRaw`
    SELECT line."jobId", line.position, sum(line.pieces)::int AS pieces, kiln.name AS kiln,
      firing.number AS "firingNumber", lit."litOn"
    FROM "FiringLit" lit
    JOIN "Firing" firing ON firing.id = lit."firingId"
    JOIN "Kiln" kiln ON kiln.id = firing."kilnId"
    JOIN "FiringLine" line ON line."firingId" = firing.id
    LEFT JOIN "FiringOpened" opened ON opened."firingId" = firing.id
    WHERE opened."firingId" IS NULL AND line."jobId" = ANY(${[...jobIds]}::uuid[])
    GROUP BY 1, 2, 4, 5, 6 ORDER BY 1, 2, 5`;
  const burning = new Map<string, Burning[]>();
  for (const { jobId, ...here } of burningRows.parse(rows)) {
    burning.set(jobId, [...(burning.get(jobId) ?? []), here]);
  }
  return burning;
}

const burningRows = z.array(
  z.object({
    jobId: z.uuid(),
    position: z.number(),
    pieces: z.number(),
    kiln: z.string(),
    firingNumber: z.number(),
    litOn: z.date().transform(dayFromDate),
  }),
);

/** The columns of a commission that say whether its making may begin, for {@link readBegin}. */
export const beginColumns = {
  number: true,
  ending: { select: { commissionId: true } },
  startOverride: { select: { commissionId: true } },
  agreements: {
    select: { depositCents: true, clayFromOn: true },
    orderBy: { version: 'desc' },
    take: 1,
  },
  approvals: {
    select: {
      sketchId: true,
      colourTileId: true,
      sketch: { select: { areas: { select: { name: true }, orderBy: { position: 'asc' } } } },
      colourTile: { select: { areas: { select: { name: true } } } },
    },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  },
  payments: { select: { amountCents: true } },
  refunds: { select: { amountCents: true } },
} as const satisfies Prisma.CommissionSelect;

/**
 * What is known of a commission's beginning, from its row.
 *
 * @param today the day on which it would begin
 */
export function readBegin(
  row: Prisma.CommissionGetPayload<{ select: typeof beginColumns }>,
  today: Day,
): BeginFacts {
  const agreement = row.agreements[0];
  const sketch = row.approvals.find((approval) => approval.sketch !== null)?.sketch;
  const tiles = row.approvals.flatMap(({ colourTile }) => (colourTile ? [colourTile] : []));
  const areas = sketch?.areas.map(({ name }) => name) ?? [];
  return {
    commissionNumber: row.number,
    hasEnded: row.ending !== null,
    isLetBegin: row.startOverride !== null,
    depositCents: agreement?.depositCents ?? null,
    paidCents: sumCents(row.payments) - sumCents(row.refunds),
    sketchHasYes: sketch !== undefined,
    coloursHaveYes: coloursHaveYes(
      areas,
      tiles.map((tile) => tile.areas.map(({ name }) => name)),
    ),
    clayFromOn: agreement?.clayFromOn ? dayFromDate(agreement.clayFromOn) : null,
    today,
  };
}

function sumCents(rows: readonly { amountCents: bigint }[]): bigint {
  return rows.reduce((sum, { amountCents }) => sum + amountCents, 0n);
}

/** What is known of one commission's beginning. */
export async function loadBeginFacts(
  from: Prisma.TransactionClient,
  commissionId: string,
  today: Day,
): Promise<BeginFacts> {
  const row = await from.commission.findUnique({
    where: { id: commissionId },
    select: beginColumns,
  });
  invariant(row, 'The commission of a job exists.');
  return readBegin(row, today);
}
