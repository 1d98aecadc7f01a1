import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

/** The names of people who work here, by their ids. */
export async function namesOf(
  from: Prisma.TransactionClient,
  staffIds: readonly string[],
): Promise<Map<string, string>> {
  if (staffIds.length === 0) return new Map();
  const rows = await from.staff.findMany({
    where: { id: { in: [...new Set(staffIds)] } },
    select: { id: true, name: true },
  });
  return new Map(rows.map((row) => [row.id, row.name]));
}
