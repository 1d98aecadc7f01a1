import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { StudioFacts } from '@/lib/studio/rules/costs/facts';
import type { FiredLoad } from '@/lib/studio/rules/costs/firing-share';
import { roomOf } from '@/lib/studio/rules/kilns/energy';
import { kilnColumns, readKilnFacts } from '../kilns/facts';
import { getStudioSettings } from '../settings';

/** How many opened firings are read, for looking back at the last ones of each cone. */
const loadsRead = 60;

/** What holds for every piece of the studio: rates, kilns in use, what firings cost, clay bodies. */
export async function readStudioFacts(from: Prisma.TransactionClient): Promise<StudioFacts> {
  const settings = await getStudioSettings(from);
  const kilns = await from.kiln.findMany({
    where: { retiredOn: null },
    select: kilnColumns,
    orderBy: { name: 'asc' },
  });
  const bodies = await from.clayBody.findMany({
    select: {
      ...{ id: true, name: true, centsPerKg: true, densityGPerCm3: true },
      _count: { select: { jobs: true } },
    },
    orderBy: { name: 'asc' },
  });
  const { centsPerHour, overheadPercent, glazeCentsPerM2, roomAroundUm } = settings;
  return {
    ...{ centsPerHour, overheadPercent, glazeCentsPerM2, roomAroundUm },
    kilns: kilns.map(readKilnFacts),
    loads: await readLoads(from),
    bodies: bodies.map(({ id, name, centsPerKg, densityGPerCm3, _count }) => ({
      ...{ id, name, jobs: _count.jobs },
      centsPerKg: centsPerKg?.toString() ?? null,
      densityGPerCm3: densityGPerCm3?.toString() ?? null,
    })),
  };
}

async function readLoads(from: Prisma.TransactionClient): Promise<FiredLoad[]> {
  const opened = await from.firingOpened.findMany({
    select: {
      costCents: true,
      firing: {
        select: {
          ...{ peg: true, cone: true },
          lines: { select: { pieces: true, widthUm: true, depthUm: true, heightUm: true } },
        },
      },
    },
    orderBy: [{ openedOn: 'desc' }, { at: 'desc' }],
    take: loadsRead,
  });
  return opened.map(({ costCents, firing: { peg, cone, lines } }) => ({
    ...{ peg, cone, costCents },
    room: lines.reduce((sum, line) => sum + roomOf(line), 0n),
  }));
}
