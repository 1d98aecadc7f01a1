import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { invariant } from '@/lib/platform/invariant';
import { db } from '@/lib/platform/db/client';

/** How the studio works: days, certainties, and what its hours are reckoned at. */
export type StudioSettings = {
  /** 1 is Monday. */
  closedWeekdays: readonly number[];
  /** How long clay dries by the month, from January, in percent of the route's days. */
  dryingPercents: readonly number[];
  /** A promise is the day by which a job is ready in so many of 100. */
  promiseInHundred: number;
  /** How sure it is to be that enough come out good, in percent: a decimal string. */
  startInHundred: string;
  /** Room that a piece takes in a kiln beside its own, on each side, in whole micrometres. */
  roomAroundUm: number;
  centsPerHour: bigint;
  /** In percent: a decimal string. */
  overheadPercent: string;
  glazeCentsPerM2: bigint;
  /** How the kilns' displays read. */
  degrees: 'F' | 'C';
};

/** How the studio works. */
export async function getStudioSettings(
  from: Prisma.TransactionClient = db(),
): Promise<StudioSettings> {
  const row = await from.studioSettings.findUnique({ where: { id: 1 }, omit: { id: true } });
  invariant(row, 'A gallery has its studio’s settings from the beginning.');
  return {
    ...row,
    startInHundred: row.startInHundred.toString(),
    overheadPercent: row.overheadPercent.toString(),
    degrees: row.degrees === 'C' ? 'C' : 'F',
  };
}
