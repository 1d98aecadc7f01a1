import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';
import { shapesInput } from '@/lib/studio/input/parts';
import type { AreaSpot } from '@/lib/studio/rules/parts/laying';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import type { ReliefSize } from '@/lib/studio/rules/parts/sizes';

/** The sketch that a drawing is made over. */
export type DrawnOver = {
  fileId: string;
  /** `the approved sketch B`, `sketch A`. */
  words: string;
  widthPx: number | null;
  heightPx: number | null;
  areas: readonly AreaSpot[];
};

/** The numbered drawing of a job, as it is kept. */
export type DrawingKept = ReliefSize & {
  version: number;
  shapes: readonly Shape[];
  by: string;
  at: Date;
};

/** A job as its drawing needs it. */
export type JobToDraw = {
  id: string;
  number: number;
  title: string;
  commissionNumber: number | null;
  /** Whether any of its pieces was moved: then the drawing stays as it is. */
  isBegun: boolean;
  /** The size that the commission has, where it is known. */
  wished: ReliefSize | null;
  bodyName: string | null;
  /** Of the job's clay body, or else the commission's; null while nobody measured it. */
  shrinkagePercent: string | null;
  over: DrawnOver | null;
  drawing: DrawingKept | null;
};

const bodyColumns = { name: true, shrinkagePercent: true } as const;

const jobColumns = {
  ...{ id: true, number: true, title: true, body: { select: bodyColumns } },
  moves: { select: { id: true }, take: 1 },
  partMap: true,
  shapes: { orderBy: { number: 'asc' } },
  parts: { select: { number: true }, where: { isSpare: true } },
  commission: {
    select: {
      ...{ number: true, widthUm: true, heightUm: true, body: { select: bodyColumns } },
      sketches: {
        select: {
          letter: true,
          file: { select: { id: true, widthPx: true, heightPx: true } },
          areas: { orderBy: { position: 'asc' } },
          approvals: { select: { at: true }, orderBy: { at: 'desc' }, take: 1 },
        },
        orderBy: { at: 'desc' },
      },
    },
  },
} as const satisfies Prisma.JobSelect;

type JobRow = Prisma.JobGetPayload<{ select: typeof jobColumns }>;

/** A job with its numbered drawing and the sketch that lies under it; null when there is none. */
export async function findJobToDraw(actor: Actor, number: number): Promise<JobToDraw | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().job.findUnique({ where: { number }, select: jobColumns });
  if (!row) return null;
  const { commission } = row;
  return {
    ...{ id: row.id, number: row.number, title: row.title },
    ...clayOf(row),
    commissionNumber: commission?.number ?? null,
    isBegun: row.moves.length > 0,
    wished: commission && wishedOf(commission),
    over: overOf(row),
    drawing: await drawingOf(row),
  };
}

function clayOf(row: Pick<JobRow, 'body' | 'commission'>) {
  const body = row.body ?? row.commission?.body;
  return {
    bodyName: body?.name ?? null,
    shrinkagePercent: body?.shrinkagePercent?.toString() ?? null,
  };
}

function wishedOf(asked: { widthUm: number | null; heightUm: number | null }): ReliefSize | null {
  const { widthUm, heightUm } = asked;
  return widthUm === null || heightUm === null ? null : { widthUm, heightUm };
}

/** The sketch that was approved last, or else the last one that was shown. */
function overOf({ commission }: JobRow): DrawnOver | null {
  const sketches = commission?.sketches ?? [];
  const yesAt = (sketch: (typeof sketches)[number]) => sketch.approvals[0]?.at.getTime() ?? 0;
  const [approved] = sketches
    .filter((sketch) => sketch.approvals.length > 0)
    .toSorted((a, b) => yesAt(b) - yesAt(a));
  const sketch = approved ?? sketches[0];
  if (!sketch) return null;
  const { file, letter, areas } = sketch;
  return {
    ...{ fileId: file.id, widthPx: file.widthPx, heightPx: file.heightPx },
    words: approved ? `the approved sketch ${letter}` : `sketch ${letter}`,
    areas: areas.map(({ name, xPermille, yPermille }) => ({ name, at: [xPermille, yPermille] })),
  };
}

async function drawingOf(row: JobRow): Promise<DrawingKept | null> {
  const { partMap, shapes, parts } = row;
  if (!partMap) return null;
  const { widthUm, heightUm, version, drawnById, drawnAt } = partMap;
  const by = await db().staff.findUnique({ where: { id: drawnById }, select: { name: true } });
  const spares = new Set(parts.map(({ number }) => number));
  return {
    ...{ widthUm, heightUm, version, at: drawnAt, by: by?.name ?? 'somebody' },
    shapes: readShapes(shapes, spares),
  };
}

/** Shapes from their rows. */
export function readShapes(
  rows: readonly { number: number; outline: unknown; area: string; note: string }[],
  spares: ReadonlySet<number>,
): Shape[] {
  const read = shapesInput.safeParse(
    rows.map(({ number, outline, area, note }) => ({
      ...{ number, outline, area, note, hasSpare: spares.has(number) },
    })),
  );
  invariant(read.success, 'A drawing that is kept can be read.');
  return read.data;
}
