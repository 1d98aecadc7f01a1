import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { PieceKind } from '@/lib/catalogue/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { divideRounded } from '@/lib/money/rules/decimal';
import { db } from '@/lib/platform/db/client';
import type { Result } from '@/lib/platform/result';
import { costOfOne, type CostRefusal, type UnitCost } from '@/lib/studio/rules/costs/cost';
import { earnedWith, type Earned } from '@/lib/studio/rules/costs/earned';
import { costFactsOf, type CostSaid, type StudioFacts } from '@/lib/studio/rules/costs/facts';
import type { RouteStep, Technique } from '@/lib/studio/rules/routes';
import { readUsualRoutes } from '../routes';
import { readStudioFacts } from './facts';
import { costColumns, pieceOfSku } from './pieces';

/** Over how many days it is looked back at what pieces brought. */
export const soldLookedBackDays = 365;
/** The most pieces that the list of costs shows. */
export const costsListed = 400;

/** A piece with what it costs, and what it brings. */
export type CostSheet = {
  skuId: string;
  code: string;
  title: string;
  kind: PieceKind;
  technique: Technique;
  widthUm: number;
  heightUm: number;
  colourway: string;
  priceCents: Cents;
  /** What the catalogue says that making one costs; null while nobody said. */
  keptCents: Cents | null;
  cost: Result<UnitCost, CostRefusal>;
  said: readonly CostSaid[];
  steps: readonly RouteStep[];
  sold: { pieces: number; averageCents: Cents } | null;
  /** By what it brought on average, or else by today's price. */
  earned: Earned | null;
};

const listColumns = {
  ...costColumns,
  ...{ id: true, code: true, priceCents: true, costCents: true },
  design: { select: { title: true, moulds: costColumns.design.select.moulds } },
  colourway: { select: { name: true } },
} as const satisfies Prisma.SkuSelect;

type Row = Prisma.SkuGetPayload<{ select: typeof listColumns }>;

/** What every first of the catalogue costs and brings, by title and size. */
export async function listCosts(
  actor: Actor,
  today: Day,
): Promise<{ sheets: CostSheet[]; studio: StudioFacts }> {
  assertAllowed(actor, 'stock.value');
  return readSheets({ grade: 'first' }, today);
}

/** What one piece costs and brings, by its code; null when there is none. */
export async function findCost(
  actor: Actor,
  code: string,
  today: Day,
): Promise<{ sheet: CostSheet; studio: StudioFacts } | null> {
  assertAllowed(actor, 'stock.value');
  const { sheets, studio } = await readSheets({ code: code.trim().toUpperCase() }, today);
  return sheets[0] ? { sheet: sheets[0], studio } : null;
}

async function readSheets(where: Prisma.SkuWhereInput, today: Day) {
  const [studio, routes, rows] = await Promise.all([
    readStudioFacts(db()),
    readUsualRoutes(db()),
    db().sku.findMany({
      where,
      select: listColumns,
      orderBy: [{ design: { title: 'asc' } }, { widthUm: 'asc' }, { code: 'asc' }],
      take: costsListed,
    }),
  ]);
  const sold = await readSold(
    rows.map(({ id }) => id),
    today,
  );
  return {
    studio,
    sheets: rows.map((row) => sheetOf(row, { studio, routes, sold: sold.get(row.id) ?? null })),
  };
}

type Ground = {
  studio: StudioFacts;
  routes: Record<Technique, RouteStep[]>;
  sold: CostSheet['sold'];
};

function sheetOf(row: Row, { studio, routes, sold }: Ground): CostSheet {
  const piece = pieceOfSku(row, routes);
  const { facts, said, turns } = costFactsOf(studio, piece);
  const cost = costOfOne(facts);
  const { id: skuId, code, kind, widthUm, heightUm, priceCents } = row;
  const brings = sold?.averageCents ?? priceCents;
  return {
    ...{ skuId, code, kind, widthUm, heightUm, priceCents, cost, said, sold },
    ...{ title: row.design.title, colourway: row.colourway.name, keptCents: row.costCents },
    ...{ technique: piece.technique, steps: piece.steps },
    earned: cost.ok ? earnedWith(brings, turns, cost.value.borneMinuteHundredths) : null,
  };
}

const soldRow = z.object({ skuId: z.string(), pieces: z.bigint(), netCents: z.bigint() });

async function readSold(skuIds: readonly string[], today: Day) {
  const since = dateFromDay(addDays(today, -soldLookedBackDays));
  const rows = await db().$queryRaw`
    SELECT line."skuId", sum(line.quantity)::bigint AS pieces, sum(line."netCents")::bigint AS "netCents"
    FROM "SaleLine" line JOIN "Sale" sale ON sale.id = line."saleId"
    WHERE line."skuId" = ANY(${skuIds}::uuid[]) AND sale."soldOn" > ${since} AND line.quantity > 0
    GROUP BY line."skuId"`;
  return new Map(
    z
      .array(soldRow)
      .parse(rows)
      .map(({ skuId, pieces, netCents }) => [
        skuId,
        { pieces: Number(pieces), averageCents: divideRounded(netCents, pieces, 'half-up') },
      ]),
  );
}
