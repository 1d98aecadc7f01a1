import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import { allow, type Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { readGroup } from './reads/group';
import { collectorKinds, lettersOf, type CollectorKind, type Reach } from './rules';

/** The most collectors that a search or the list shows. */
export const collectorsListed = 60;
const purchasesListed = 100;
/** Below this likeness (0 to 1) letters are taken for somebody else's name. */
const likenessLeast = 0.3;

/** A collector as a list shows one. */
export type CollectorFound = {
  id: string;
  kind: CollectorKind;
  name: string;
  email: string | null;
  phone: string | null;
  city: string | null;
};

const foundRow = z.object({
  id: z.uuid(),
  kind: z.enum(collectorKinds),
  name: z.string(),
  email: z.string().nullable(),
  phone: z.string().nullable(),
  city: z.string().nullable(),
});

/**
 * Finds collectors by a few letters of their name, mail or telephone; a slip of the pen is forgiven.
 *
 * Without letters, those who were added last.
 *
 * @returns at most sixty, the likeliest first
 * @example findCollectors(actor, 'Olnad') // finds 'Marit Oland'
 */
export async function findCollectors(actor: Actor, letters: string): Promise<CollectorFound[]> {
  assertAllowed(actor, 'collectors.see');
  const looked = lettersOf(letters);
  if (looked === '') return newestCollectors();
  const close = await collectorsWith(looked);
  return close.length > 0 ? close : collectorsLike(looked);
}

async function newestCollectors(): Promise<CollectorFound[]> {
  return db().collector.findMany({
    where: { mergedIntoId: null, erasedAt: null },
    select: { id: true, kind: true, name: true, email: true, phone: true, city: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take: collectorsListed,
  });
}

/** Every name, firm, mail and telephone by which somebody is known, beside the entry that is kept. */
const known = Prisma.sql`(
  SELECT coalesce("mergedIntoId", id) AS "livingId", name, email, phone FROM "Collector"
  UNION ALL SELECT coalesce("mergedIntoId", id), firm, NULL, NULL FROM "Collector"
    WHERE firm IS NOT NULL
  UNION ALL SELECT coalesce(of_it."mergedIntoId", of_it.id), person.name, person.email, person.phone
    FROM "CollectorPerson" person JOIN "Collector" of_it ON of_it.id = person."collectorId")`;

async function collectorsWith(letters: string): Promise<CollectorFound[]> {
  const within = `%${letters.replace(/[\\%_]/g, '\\$&')}%`;
  const digits = letters.replace(/\D/g, '');
  const number = digits.length >= 3 ? `%${digits}%` : null;
  const rows = await db().$queryRaw`
    SELECT living.id, kind, living.name, living.email, living.phone, city
    FROM "Collector" living JOIN (
      SELECT "livingId", bool_or(name ILIKE ${within}) AS "isWithin",
        max(word_similarity(${letters}, name)) AS likeness
      FROM ${known} AS known
      WHERE name ILIKE ${within} OR ${letters} <% name OR email ILIKE ${within}
         OR (${number}::text IS NOT NULL
             AND regexp_replace(phone, '[^0-9]', '', 'g') LIKE ${number})
      GROUP BY "livingId") AS found ON found."livingId" = living.id
    WHERE living."erasedAt" IS NULL
    ORDER BY "isWithin" DESC, likeness DESC, living.name, living.id
    LIMIT ${collectorsListed}`;
  return z.array(foundRow).parse(rows);
}

async function collectorsLike(letters: string): Promise<CollectorFound[]> {
  const rows = await db().$queryRaw`
    SELECT living.id, kind, living.name, living.email, living.phone, city
    FROM "Collector" living JOIN (
      SELECT "livingId", max(word_similarity(${letters}, name)) AS likeness
      FROM ${known} AS known WHERE word_similarity(${letters}, name) >= ${likenessLeast}
      GROUP BY "livingId") AS found ON found."livingId" = living.id
    WHERE living."erasedAt" IS NULL
    ORDER BY likeness DESC, living.name, living.id
    LIMIT ${collectorsListed}`;
  return z.array(foundRow).parse(rows);
}

/** What a collector bought at once. */
export type Purchase = {
  receiptNumber: number;
  soldOn: Day;
  titles: string[];
  /** Cents with tax; null for those who do not see receipts. */
  totalCents: bigint | null;
};

/** A collector's page. */
export type CollectorPage = Reach & {
  /** Of the entry that is kept: another than the one asked for when the two were found to be one. */
  id: string;
  kind: CollectorKind;
  name: string;
  /** The firm of a designer or a business. */
  firm: string | null;
  note: string;
  addedAt: Date;
  /** When what was known of them was struck out; null for everybody else. */
  erasedAt: Date | null;
  purchases: Purchase[];
};

/**
 * A collector with everything they bought under any of their names, the newest first. One who was
 * found to be the same as another is looked up there.
 *
 * @returns null when nobody has that id
 */
export async function getCollector(actor: Actor, id: string): Promise<CollectorPage | null> {
  assertAllowed(actor, 'collectors.see');
  const group = await readGroup(db(), id);
  if (!group) return null;
  const [row, sales] = await Promise.all([
    db().collector.findUniqueOrThrow({
      where: { id: group.livingId },
      select: {
        ...{ id: true, kind: true, name: true, firm: true, email: true, phone: true },
        ...{ street: true, city: true, state: true, postcode: true, note: true },
        ...{ createdAt: true, erasedAt: true },
      },
    }),
    db().sale.findMany({
      where: { collectorId: { in: [...group.ids] } },
      select: {
        ...{ number: true, soldOn: true, totalCents: true },
        lines: { select: { title: true }, orderBy: { position: 'asc' } },
      },
      orderBy: [{ soldOn: 'desc' }, { number: 'desc' }],
      take: purchasesListed,
    }),
  ]);
  const seesReceipts = allow(actor, 'receipts.see').ok;
  const { createdAt, ...who } = row;
  return {
    ...who,
    addedAt: createdAt,
    purchases: sales.map((sale) => ({
      receiptNumber: sale.number,
      soldOn: dayFromDate(sale.soldOn),
      titles: sale.lines.map((line) => line.title),
      totalCents: seesReceipts ? sale.totalCents : null,
    })),
  };
}
