import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';

/** The columns of a kiln without its history, for {@link readKilnFacts}. */
export const kilnColumns = {
  ...{ id: true, name: true, insideHeightUm: true, shelfWidthUm: true, shelfDepthUm: true },
  ...{ shelfThickUm: true, shelves: true, powerW: true, centsPerKwh: true, wearCents: true },
  ...{ cones: true, turnsAWeek: true, leastFillPercent: true, longestWaitDays: true },
  ...{ openBelowC: true, elementFirings: true, retiredOn: true, note: true },
} as const satisfies Prisma.KilnSelect;

type KilnRow = Prisma.KilnGetPayload<{ select: typeof kilnColumns }>;

/** A kiln as the rules know it, from its row. */
export function readKilnFacts(row: KilnRow): KilnFacts & { id: string; retiredOn: Day | null } {
  const retiredOn = row.retiredOn && dayFromDate(row.retiredOn);
  return { ...row, centsPerKwh: row.centsPerKwh.toString(), retiredOn };
}
