import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { aboutWeightG, partsToGo, usualDepthUm } from '@/lib/sending/rules/to-go';
import type { PieceToGo } from '@/lib/sending/rules/typed/pieces';
import { readShapes } from '@/lib/studio/reads/parts/drawing';

/** What is to go, as far as it is known. */
export type ToGo = {
  readonly pieces: readonly PieceToGo[];
  /** The same as numbered parts; null where no drawing is kept, or more than one. */
  readonly parts: readonly PieceToGo[] | null;
  /** Whether a weight was taken from the scale, and is no reckoning. */
  readonly isWeighed: boolean;
};

/** What a shipment is for, as a list of pieces that somebody may correct; empty for neither. */
export async function readToGo(
  actor: Actor,
  of: { commissionId: string | null; saleId: string | null },
): Promise<ToGo> {
  assertAllowed(actor, 'sending.do');
  if (of.commissionId !== null) return ofCommission(of.commissionId);
  const none: ToGo = { pieces: [], parts: null, isWeighed: true };
  return of.saleId === null ? none : ofSale(of.saleId);
}

async function ofSale(saleId: string): Promise<ToGo> {
  const lines = await db().saleLine.findMany({
    where: { saleId, kind: 'piece', sku: { isNot: null } },
    orderBy: { position: 'asc' },
    select: {
      ...{ title: true, quantity: true, returned: { select: { quantity: true } } },
      sku: {
        select: { code: true, widthUm: true, heightUm: true, depthUm: true, weightG: true },
      },
    },
  });
  const pieces = lines.flatMap(({ title, quantity, returned, sku }): PieceToGo[] => {
    const left = quantity - returned.reduce((sum, back) => sum + back.quantity, 0);
    if (!sku || left < 1) return [];
    const { widthUm, heightUm } = sku;
    const sides = { widthUm, heightUm, depthUm: sku.depthUm ?? usualDepthUm };
    const weightG = sku.weightG ?? aboutWeightG(sides);
    return [{ pieces: left, words: `${title}, ${sku.code}`, partNumber: null, ...sides, weightG }];
  });
  return {
    pieces,
    parts: null,
    isWeighed: lines.every(({ sku }) => typeof sku?.weightG === 'number'),
  };
}

const commissionColumns = {
  ...{ title: true, widthUm: true, heightUm: true, depthUm: true },
  progress: {
    where: { kind: 'weight', weightG: { not: null } },
    select: { weightG: true },
    orderBy: [{ on: 'desc' }, { at: 'desc' }],
    take: 1,
  },
  jobs: {
    where: { partMap: { isNot: null } },
    select: {
      partMap: { select: { widthUm: true, heightUm: true } },
      shapes: { orderBy: { number: 'asc' } },
    },
  },
} as const satisfies Prisma.CommissionSelect;

type CommissionRow = Prisma.CommissionGetPayload<{ select: typeof commissionColumns }>;

async function ofCommission(id: string): Promise<ToGo> {
  const row = await db().commission.findUniqueOrThrow({
    where: { id },
    select: commissionColumns,
  });
  const weighedG = row.progress[0]?.weightG ?? null;
  const isWeighed = weighedG !== null;
  const [job, ...more] = row.jobs;
  const drawn = job && more.length === 0 ? job : null;
  const sides = sidesOf(row, drawn);
  if (!sides) return { pieces: [], parts: null, isWeighed };
  const relief = { ...sides, weightG: weighedG ?? aboutWeightG(sides) };
  const named = { pieces: 1, words: row.title.replaceAll(';', ','), partNumber: null };
  return {
    pieces: [{ ...named, ...relief }],
    parts: drawn && partsToGo(readShapes(drawn.shapes, new Set()), relief),
    isWeighed,
  };
}

/** The sides of the drawing, or else of the commission; null while nobody knows them. */
function sidesOf(row: CommissionRow, drawn: CommissionRow['jobs'][number] | null) {
  const widthUm = drawn?.partMap?.widthUm ?? row.widthUm;
  const heightUm = drawn?.partMap?.heightUm ?? row.heightUm;
  if (widthUm === null || heightUm === null) return null;
  return { widthUm, heightUm, depthUm: row.depthUm ?? usualDepthUm };
}
