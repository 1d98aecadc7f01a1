import { db } from '@/lib/platform/db/client';
import type { DrawPartsInput } from '@/lib/studio/input/parts';
import { gridOf } from '@/lib/studio/rules/parts/laying';
import { drawParts } from '@/lib/studio/writes/parts/draw';
import { aJob, aKey, monday, type TestStudio } from './a-studio';

/** The parts of a relief in two rows of three. */
export const sixParts = gridOf({ rows: 2, columns: 3, isOffset: false });

/** A drawing as its form sends it. */
export function drawing(jobId: string, more: Partial<DrawPartsInput> = {}): DrawPartsInput {
  return {
    ...{ requestKey: aKey(), jobId, version: 0, over: null, fileId: null },
    ...{ widthUm: 900_000, heightUm: 600_000, shapes: sixParts },
    ...more,
  };
}

/** The same, with a spare of number 2. */
export const withSpareOfTwo = sixParts.map((shape) => ({ ...shape, hasSpare: shape.number === 2 }));

/** A relief of six parts, of which number 2 has a spare. */
export async function aDrawnJob(studio: TestStudio) {
  const job = await aJob(studio.maker, { technique: 'slab_relief', pieces: 1 });
  const drawn = await drawParts(studio.maker, drawing(job.id, { shapes: withSpareOfTwo }));
  if (!drawn.ok) throw new Error(drawn.refusal.code);
  const rows = await db().part.findMany({
    where: { jobId: job.id },
    orderBy: [{ number: 'asc' }, { make: 'asc' }],
  });
  const idOf = (number: number, make = 1) => {
    const part = rows.find((row) => row.number === number && row.make === make);
    if (!part) throw new Error(`No part ${number}, ${make}`);
    return part.id;
  };
  return { ...job, idOf, all: rows.map(({ id }) => id) };
}

/** Chosen parts as a form sends them. */
export function chosen(jobId: string, partIds: string[]) {
  return { requestKey: aKey(), jobId, partIds };
}

/** Lights a kiln with one part in it, by the rows themselves. */
export async function intoALitKiln(studio: TestStudio, jobId: string, partId: string) {
  const side = { shelfWidthUm: 500_000, shelfDepthUm: 500_000, shelfThickUm: 20_000 };
  const kiln = await db().kiln.create({
    data: {
      ...{ name: 'the tall kiln', insideHeightUm: 600_000, ...side, shelves: 6, powerW: 9_000 },
      ...{ centsPerKwh: '15', cones: ['04'] },
    },
  });
  const by = { madeById: studio.maker.actor.id, at: monday };
  const firing = await db().firing.create({
    data: {
      ...{ kilnId: kiln.id, cone: '04', peg: 'bisque', schedule: {}, ...by },
      plannedOn: new Date('2026-05-04'),
      lines: {
        create: {
          ...{ jobId, position: 5, pieces: 1, widthUm: 1, depthUm: 1, heightUm: 1 },
          parts: { create: { partId } },
        },
      },
    },
  });
  const lit = { firingId: firing.id, litOn: new Date('2026-05-04'), at: monday };
  await db().firingLit.create({
    data: { ...lit, staffId: studio.maker.actor.id, saidOfDry: 'dry to the cheek' },
  });
}
