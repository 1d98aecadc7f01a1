import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import { allow, type Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
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
    select: { id: true, kind: true, name: true, email: true, phone: true, city: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take: collectorsListed,
  });
}

async function collectorsWith(letters: string): Promise<CollectorFound[]> {
  const within = `%${letters.replace(/[\\%_]/g, '\\$&')}%`;
  const digits = letters.replace(/\D/g, '');
  const number = digits.length >= 3 ? `%${digits}%` : null;
  const rows = await db().$queryRaw`
    SELECT id, kind, name, email, phone, city FROM "Collector"
    WHERE name ILIKE ${within} OR ${letters} <% name OR email ILIKE ${within}
       OR (${number}::text IS NOT NULL AND regexp_replace(phone, '[^0-9]', '', 'g') LIKE ${number})
    ORDER BY (name ILIKE ${within}) DESC, word_similarity(${letters}, name) DESC, name, id
    LIMIT ${collectorsListed}`;
  return z.array(foundRow).parse(rows);
}

async function collectorsLike(letters: string): Promise<CollectorFound[]> {
  const rows = await db().$queryRaw`
    SELECT id, kind, name, email, phone, city FROM "Collector"
    WHERE word_similarity(${letters}, name) >= ${likenessLeast}
    ORDER BY word_similarity(${letters}, name) DESC, name, id
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
  id: string;
  kind: CollectorKind;
  name: string;
  note: string;
  addedAt: Date;
  purchases: Purchase[];
};

/**
 * A collector with everything they bought, the newest first.
 *
 * @returns null when nobody has that id
 */
export async function getCollector(actor: Actor, id: string): Promise<CollectorPage | null> {
  assertAllowed(actor, 'collectors.see');
  if (!z.uuid().safeParse(id).success) return null;
  const row = await db().collector.findUnique({
    where: { id },
    include: {
      sales: {
        select: {
          number: true,
          soldOn: true,
          totalCents: true,
          lines: { select: { title: true }, orderBy: { position: 'asc' } },
        },
        orderBy: [{ soldOn: 'desc' }, { number: 'desc' }],
        take: purchasesListed,
      },
    },
  });
  if (!row) return null;
  const seesReceipts = allow(actor, 'receipts.see').ok;
  const { createdAt, sales, ...who } = row;
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
