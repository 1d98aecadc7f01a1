import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import type { BeginFacts, JobRoute, Move } from '@/lib/studio/rules';
import { coloursHaveYes } from '@/lib/studio/rules/colours';

/** A job as a move needs it: its route's names and all its moves, in the order they happened. */
export type JobToMove = JobRoute & {
  id: string;
  number: number;
  commissionId: string | null;
  moves: Move[];
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

/**
 * One job for a move or its undoing.
 *
 * @returns null when there is none
 */
export async function loadJobToMove(
  from: Prisma.TransactionClient,
  where: Prisma.JobWhereInput,
): Promise<JobToMove | null> {
  const row = await from.job.findFirst({
    where,
    select: {
      id: true,
      number: true,
      pieces: true,
      commissionId: true,
      steps: { select: { name: true }, orderBy: { position: 'asc' } },
      moves: { select: moveColumns, orderBy: { id: 'asc' } },
    },
  });
  return row && { ...row, moves: row.moves.map(readMove) };
}

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
