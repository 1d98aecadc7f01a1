import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { monthOf, type Day } from '@/lib/dates/rules';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import { driedShort } from '@/lib/studio/rules/firings/dried';
import type { LineToLight, LoadToLight, TooFresh } from '@/lib/studio/rules/firings/lighting';
import type { FiringToChange } from '@/lib/studio/rules/firings/planning';
import type { FiringKind } from '@/lib/studio/rules/firings/schedule';
import { namesOf } from './names';
import { readAtKilns, type AtKiln } from './waiting';

type FiringMeant = FiringToChange & {
  id: string;
  cone: string;
  kind: FiringKind;
  kilnId: string;
  kiln: string;
};

/** A load with all that is asked before it is lit. */
export async function loadToLight(
  from: Prisma.TransactionClient,
  firing: FiringMeant,
): Promise<LoadToLight> {
  const { id: firingId, cone, kind } = firing;
  const lines = await from.firingLine.findMany({
    where: { firingId },
    select: {
      ...{ jobId: true, position: true, pieces: true },
      parts: { select: { partId: true } },
      job: { select: { number: true, title: true } },
    },
    orderBy: [{ job: { number: 'asc' } }, { position: 'asc' }],
  });
  const jobIds = lines.map(({ jobId }) => jobId);
  const here = await readAtKilns(from, { cone, kind, jobIds, exceptFiringId: firingId });
  const settings = await getStudioSettings(from);
  const burning = await readBurningIn(from, firing.kilnId, firingId);
  const percentOf = (day: Day): number =>
    settings.dryingPercents[Number(monthOf(day).slice(5)) - 1] ?? 100;
  const told = lines.map((line) => {
    const there = here.find(
      ({ jobId, position }) => jobId === line.jobId && position === line.position,
    );
    return { line, there };
  });
  return {
    ...{ ...firing, burning },
    lines: told.map(({ line, there }) => lineToLight(line, there)),
    tooFresh: told.flatMap(({ line, there }) => tooFresh(line, there, percentOf) ?? []),
  };
}

type LineRow = {
  pieces: number;
  parts: readonly { partId: string }[];
  job: { number: number; title: string };
};

function lineToLight(line: LineRow, there: AtKiln | undefined): LineToLight {
  const free = there?.freeParts.map(({ partId }) => partId) ?? [];
  return {
    ...{ jobNumber: line.job.number, title: line.job.title, pieces: line.pieces },
    free: there ? there.standing - there.inFire : 0,
    partsAreThere: line.parts.every(({ partId }) => free.includes(partId)),
  };
}

function tooFresh(
  line: LineRow,
  there: AtKiln | undefined,
  percentOf: (day: Day) => number,
): TooFresh | null {
  if (!there) return null;
  const { steps, moves, standings: standing, position, inFire } = there;
  const of = { position, pieces: line.pieces, inFire, percentOf };
  const short = driedShort({ steps, moves, standing }, of);
  return short && { ...short, jobNumber: line.job.number, title: line.job.title };
}

async function readBurningIn(
  from: Prisma.TransactionClient,
  kilnId: string,
  exceptFiringId: string,
): Promise<{ number: number; by: string } | null> {
  const row = await from.firing.findFirst({
    where: { kilnId, id: { not: exceptFiringId }, lit: { isNot: null }, opened: null },
    select: { number: true, lit: { select: { staffId: true } } },
  });
  if (!row?.lit) return null;
  const names = await namesOf(from, [row.lit.staffId]);
  return { number: row.number, by: names.get(row.lit.staffId) ?? 'Somebody' };
}
