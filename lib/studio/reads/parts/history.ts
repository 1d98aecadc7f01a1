import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { LossCause } from '@/lib/studio/rules';

/** A move of one part as its history tells it. */
export type PartMoveTold = {
  id: string;
  fromPosition: number;
  toPosition: number;
  movedOn: Day;
  undoesId: string | null;
  cause: LossCause | null;
  note: string;
  by: string;
  /** The firing after which it was moved. */
  firingNumber: number | null;
};

/** A firing that a part was laid into. */
export type PartFiring = {
  number: number;
  kiln: string;
  cone: string;
  isAgain: boolean;
  /** Null while it is only planned. */
  litOn: Day | null;
  openedOn: Day | null;
};

/** Coats that were laid on a part. */
export type PartGlazeTold = {
  id: string;
  bucket: string;
  glaze: string;
  coats: number;
  on: Day;
  by: string;
};

/** What happened to one piece of clay. */
export type PartTold = {
  id: string;
  moves: readonly PartMoveTold[];
  firings: readonly PartFiring[];
  glazes: readonly PartGlazeTold[];
};

const columns = {
  id: true,
  moves: {
    select: {
      move: {
        select: {
          ...{ id: true, fromPosition: true, toPosition: true, movedOn: true, undoesId: true },
          ...{ cause: true, note: true, staffId: true },
          firing: { select: { number: true } },
        },
      },
    },
    orderBy: { moveId: 'asc' },
  },
  lines: {
    select: {
      line: {
        select: {
          isAgain: true,
          firing: {
            select: {
              ...{ number: true, cone: true, calledOffAt: true, kiln: { select: { name: true } } },
              lit: { select: { litOn: true } },
              opened: { select: { openedOn: true } },
            },
          },
        },
      },
    },
    orderBy: { line: { firing: { number: 'asc' } } },
  },
  glazes: {
    select: {
      ...{ id: true, coats: true, on: true, staffId: true },
      batch: { select: { number: true, glaze: true } },
    },
    orderBy: [{ on: 'asc' }, { at: 'asc' }],
  },
} as const satisfies Prisma.PartSelect;

type Row = Prisma.PartGetPayload<{ select: typeof columns }>;

/** What happened to everything that was made for a number, the first make first. */
export async function listPartHistory(
  actor: Actor,
  of: { jobId: string; number: number },
): Promise<PartTold[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().part.findMany({ where: of, select: columns, orderBy: { make: 'asc' } });
  const names = await namesOf(rows);
  return rows.map((row) => readRow(row, names));
}

async function namesOf(rows: readonly Row[]): Promise<ReadonlyMap<string, string>> {
  const ids = rows.flatMap(({ moves, glazes }) => [
    ...moves.map(({ move }) => move.staffId),
    ...glazes.map(({ staffId }) => staffId),
  ]);
  const staff = await db().staff.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
  });
  return new Map(staff.map(({ id, name }) => [id, name]));
}

function readRow({ id, moves, lines, glazes }: Row, names: ReadonlyMap<string, string>): PartTold {
  const nameOf = (staffId: string) => names.get(staffId) ?? 'somebody';
  return {
    id,
    moves: moves.map(({ move: { staffId, firing, ...move } }) => ({
      ...move,
      id: move.id.toString(),
      undoesId: move.undoesId?.toString() ?? null,
      movedOn: dayFromDate(move.movedOn),
      by: nameOf(staffId),
      firingNumber: firing?.number ?? null,
    })),
    firings: lines.flatMap(({ line: { isAgain, firing } }) => {
      const { number, cone, kiln, lit, opened, calledOffAt } = firing;
      if (calledOffAt !== null) return [];
      const litOn = lit && dayFromDate(lit.litOn);
      const openedOn = opened && dayFromDate(opened.openedOn);
      return [{ number, cone, isAgain, kiln: kiln.name, litOn, openedOn }];
    }),
    glazes: glazes.map(({ staffId, batch, ...laid }) => ({
      ...{ id: laid.id, coats: laid.coats, bucket: batch.number, glaze: batch.glaze },
      ...{ on: dayFromDate(laid.on), by: nameOf(staffId) },
    })),
  };
}
