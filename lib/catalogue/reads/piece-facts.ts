import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { FoodUse } from '../rules/food-use';

/** The most designs and colourways that a form offers. */
const namesMost = 500;

/** What the catalogue knows of a piece beyond its tag. */
export type PieceFacts = {
  grade: 'first' | 'second' | 'irregular';
  flaw: string;
  foodUse: FoodUse;
  madeInYear: number | null;
  medium: string;
  colourway: { id: string; name: string; endedOn: Day | null };
  /** For a second: what it would have been. */
  first: { code: string } | null;
  /** Its seconds and irregulars, by SKU. */
  seconds: readonly { code: string; grade: 'first' | 'second' | 'irregular'; flaw: string }[];
  /** The sets that it belongs to and that are offered. */
  sets: readonly { code: string; title: string }[];
  /** The next price that is to come, in cents. */
  nextPrice: { priceCents: bigint; fromOn: Day } | null;
  /** Whether anything of it ever moved: then no edition can be stated any more. */
  hasCome: boolean;
};

/** The facts of a piece; null when there is no such piece. */
export async function findPieceFacts(
  actor: Actor,
  skuId: string,
  todayOn: Day,
): Promise<PieceFacts | null> {
  assertAllowed(actor, 'stock.see');
  const row = await db().sku.findUnique({
    where: { id: skuId },
    select: {
      ...{ grade: true, flaw: true, foodUse: true, madeInYear: true, medium: true },
      colourway: { select: { id: true, name: true, endedOn: true } },
      firstSku: { select: { code: true } },
      seconds: {
        select: { code: true, grade: true, flaw: true },
        orderBy: { code: 'asc' },
        take: 50,
      },
      inSets: {
        where: { set: { endedAt: null } },
        select: { set: { select: { code: true, title: true } } },
        orderBy: { set: { code: 'asc' } },
        take: 50,
      },
      priceChanges: {
        where: { fromOn: { gt: dateFromDay(todayOn) } },
        select: { priceCents: true, fromOn: true },
        orderBy: { fromOn: 'asc' },
        take: 1,
      },
      movements: { select: { id: true }, take: 1 },
    },
  });
  if (!row) return null;
  const { firstSku, inSets, priceChanges, movements, colourway, ...facts } = row;
  const [next] = priceChanges;
  return {
    ...facts,
    colourway: { ...colourway, endedOn: colourway.endedOn && dayFromDate(colourway.endedOn) },
    first: firstSku,
    sets: inSets.map((each) => each.set),
    nextPrice: next ? { priceCents: next.priceCents, fromOn: dayFromDate(next.fromOn) } : null,
    hasCome: movements.length > 0,
  };
}

/** The names that a form for a new piece offers: designs and colourways, by name. */
export async function listNames(
  actor: Actor,
): Promise<{ titles: readonly string[]; colourways: readonly string[] }> {
  assertAllowed(actor, 'stock.see');
  const [designs, colourways] = await Promise.all([
    db().design.findMany({
      select: { title: true },
      orderBy: [{ title: 'asc' }, { id: 'asc' }],
      take: namesMost,
    }),
    db().colourway.findMany({
      select: { name: true },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
      take: namesMost,
    }),
  ]);
  return {
    titles: designs.map((each) => each.title),
    colourways: colourways.map((each) => each.name),
  };
}

/** The designs, by title: for a form that asks which. */
export async function listDesigns(actor: Actor): Promise<{ id: string; title: string }[]> {
  assertAllowed(actor, 'stock.see');
  return db().design.findMany({
    select: { id: true, title: true },
    orderBy: [{ title: 'asc' }, { id: 'asc' }],
    take: namesMost,
  });
}
