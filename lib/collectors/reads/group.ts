import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';

/** Somebody's place in the address book: the entry that is kept, and those found to be the same. */
export type Group = Readonly<{
  /** The entry that everything is looked up under. */
  livingId: string;
  /** That one and those merged into it, the kept one first. */
  ids: readonly string[];
  erasedAt: Date | null;
}>;

/**
 * The whole of somebody: the kept entry and those that were found to be the same.
 *
 * @param id of any of them
 * @returns null when nobody has that id
 */
export async function readGroup(from: Prisma.TransactionClient, id: string): Promise<Group | null> {
  if (!z.uuid().safeParse(id).success) return null;
  const living = await readLiving(from, id);
  if (!living) return null;
  const merged = await from.collector.findMany({
    where: { mergedIntoId: living.id },
    select: { id: true },
    orderBy: { id: 'asc' },
  });
  const ids = [living.id, ...merged.map((each) => each.id)];
  return { livingId: living.id, ids, erasedAt: living.erasedAt };
}

/** The ids that somebody's papers may stand under; the given one alone when nobody has it. */
export async function idsOf(
  from: Prisma.TransactionClient,
  id: string,
): Promise<readonly string[]> {
  return (await readGroup(from, id))?.ids ?? [id];
}

/**
 * Under whom something new is written down: the entry that is kept, when the given one was found
 * to be the same as another.
 *
 * @returns null when nobody has that id, or when they asked to be struck out
 */
export async function livingId(from: Prisma.TransactionClient, id: string): Promise<string | null> {
  const living = await readLiving(from, id);
  return living && living.erasedAt === null ? living.id : null;
}

type Living = { id: string; erasedAt: Date | null };

/** Follows from entry to entry; the database keeps the way short and lets none go in circles. */
async function readLiving(
  from: Prisma.TransactionClient,
  id: string,
  before: readonly string[] = [],
): Promise<Living | null> {
  const row = await from.collector.findUnique({
    where: { id },
    select: { id: true, mergedIntoId: true, erasedAt: true },
  });
  if (!row || before.includes(id)) return null;
  if (row.mergedIntoId !== null) return readLiving(from, row.mergedIntoId, [...before, id]);
  return { id: row.id, erasedAt: row.erasedAt };
}

/**
 * For many at once, under whom each is looked up; an id that nobody has stands for itself.
 *
 * @example (await livingIds(tx, ids))(goneId) // the kept one's id
 */
export async function livingIds(
  from: Prisma.TransactionClient,
  ids: readonly (string | null)[],
): Promise<(id: string) => string> {
  const known = [...new Set(ids.filter((id) => id !== null))];
  const merged =
    known.length === 0
      ? []
      : await from.collector.findMany({
          where: { id: { in: known }, mergedIntoId: { not: null } },
          select: { id: true, mergedIntoId: true },
        });
  const into = new Map(merged.map(({ id, mergedIntoId }) => [id, mergedIntoId]));
  return (id) => into.get(id) ?? id;
}
