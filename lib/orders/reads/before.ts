import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { kindWords, type PieceKind } from '@/lib/catalogue/rules';
import { readMouldsOf } from '@/lib/catalogue/reads/mould-rows';
import { mouldWarning } from '@/lib/catalogue/rules/moulds';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { readUsualRoutes } from '@/lib/studio/reads/routes';
import type { Technique } from '@/lib/studio/rules/routes';
import {
  comesFromMould,
  piecesATurn,
  readySpan,
  saidBefore,
  usualTechnique,
  type BeforeFacts,
  type SaidBefore,
} from '../rules/before';

/** A piece as one orders it, with what of it can be chosen otherwise. */
export type PieceToOrder = {
  skuId: string;
  code: string;
  title: string;
  what: string;
  kind: PieceKind;
  making: 'open_stock' | 'one_off' | 'edition';
  grade: 'first' | 'second' | 'irregular';
  designId: string;
  colourwayId: string;
  widthUm: number;
  heightUm: number;
  depthUm: number | null;
  weightG: number | null;
  costCents: bigint | null;
};

const pieceColumns = {
  ...{ id: true, code: true, kind: true, making: true, grade: true, designId: true },
  ...{ colourwayId: true, widthUm: true, heightUm: true, depthUm: true, weightG: true },
  ...{ costCents: true, design: { select: { title: true } } },
  colourway: { select: { name: true } },
} as const satisfies Prisma.SkuSelect;

/** A piece by its id or its SKU, for an order; null when there is none. */
export async function readPieceToOrder(
  from: Prisma.TransactionClient,
  where: { id: string } | { code: string },
): Promise<PieceToOrder | null> {
  const row = await from.sku.findUnique({ where, select: pieceColumns });
  if (!row) return null;
  const { id, design, colourway, ...piece } = row;
  const what = `${kindWords(piece.kind)}, ${colourway.name}`;
  return { ...piece, skuId: id, title: design.title, what };
}

/** What is wanted of a piece: how many, in which glaze, how made, by when. */
export type WantedBefore = {
  designId: string;
  kind: PieceKind;
  colourwayId: string;
  quantity: number;
  /** Null for the way that is usual here. */
  technique: Technique | null;
  wantedOn: Day | null;
};

/** What is known before money is taken, and how it is said. */
export type Before = { facts: BeforeFacts; technique: Technique; said: SaidBefore[] };

/**
 * Looks at mould, glaze and kiln before money is taken; null when nobody knows the colourway.
 */
export async function readBefore(
  from: Prisma.TransactionClient,
  wanted: WantedBefore,
  todayOn: Day,
): Promise<Before | null> {
  const { colourwayId, quantity, wantedOn } = wanted;
  const colourway = await from.colourway.findUnique({
    where: { id: colourwayId },
    select: { name: true, endedOn: true },
  });
  if (!colourway) return null;
  const [mould] = await readMouldsOf(from, wanted.designId);
  const technique = wanted.technique ?? usualTechnique(wanted.kind, mould !== undefined);
  const turnsWaiting = await readTurnsWaiting(from);
  const facts: BeforeFacts = {
    ...{ quantity, wantedOn, turnsWaiting },
    mould: mould ? { code: mould.code, left: mould.left, said: mouldWarning(mould) } : null,
    needsMould: comesFromMould(technique),
    colourway: {
      name: colourway.name,
      endedOn: colourway.endedOn && dayFromDate(colourway.endedOn),
    },
    span: readySpan((await readUsualRoutes(from))[technique], turnsWaiting, todayOn),
  };
  return { facts, technique, said: saidBefore(facts, todayOn) };
}

/**
 * How many turns of the kiln the open jobs still need: their pieces that have not left a kiln
 * step, over the pieces of a load. Loads are shared, so that parts of turns add up.
 */
export async function readTurnsWaiting(from: Prisma.TransactionClient): Promise<number> {
  const rows = await from.$queryRaw`
    SELECT coalesce(sum(greatest(job.pieces - moved.left, 0)), 0)::int AS pieces
    FROM "JobStep" step
    JOIN "Job" job ON job.id = step."jobId"
    LEFT JOIN "CommissionEnding" ending ON ending."commissionId" = job."commissionId"
    CROSS JOIN LATERAL (
      SELECT coalesce(sum(CASE WHEN move."fromPosition" <= step.position
          AND move."toPosition" > step.position THEN move.pieces
        WHEN move."fromPosition" > step.position AND move."toPosition" <= step.position
          THEN -move.pieces ELSE 0 END), 0)::int AS left
      FROM "JobMove" move WHERE move."jobId" = job.id
    ) moved
    WHERE step.kind = 'fire' AND ending."commissionId" IS NULL`;
  const [row] = z.tuple([z.object({ pieces: z.number() })]).parse(rows);
  return row.pieces / piecesATurn;
}
