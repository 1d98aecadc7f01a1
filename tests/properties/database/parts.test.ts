import { fc, test } from '@fast-check/vitest';
import { beforeAll, expect } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { findPartMap } from '@/lib/studio/reads/parts/map';
import { undoMove } from '@/lib/studio/writes';
import { loseParts, movePartsOn } from '@/lib/studio/writes/parts/move';
import { aDrawnJob, chosen } from '../../database/studio/a-drawn-job';
import { aKey, aStudio, type TestStudio } from '../../database/studio/a-studio';
import { sql } from '../../helpers/database';

let studio: TestStudio;

beforeAll(async () => {
  studio = await aStudio();
});

const wish = fc.record({
  what: fc.constantFrom('move', 'move', 'move', 'lose', 'undo'),
  which: fc.array(fc.nat(11), { minLength: 1, maxLength: 5 }),
});
type Wish = { what: string; which: number[] };

async function fulfil(jobId: string, wishes: readonly Wish[]): Promise<void> {
  const made: string[] = [];
  for (const { what, which } of wishes) {
    const rows = await db().part.findMany({ where: { jobId }, orderBy: { id: 'asc' } });
    const ids = [...new Set(which.flatMap((at) => rows[at % rows.length]?.id ?? []))];
    const moveId = made[(which[0] ?? 0) % Math.max(made.length, 1)];
    if (what === 'undo' && moveId) {
      await undoMove(studio.maker, { requestKey: aKey(), moveId });
      continue;
    }
    const touch = chosen(jobId, ids);
    const done =
      what === 'lose'
        ? await loseParts(studio.maker, { ...touch, cause: 'joint', note: '' })
        : await movePartsOn(studio.maker, touch);
    if (done.ok) made.push(...done.value.moves.map(({ undoId }) => undoId));
  }
}

test.prop([fc.array(wish, { minLength: 4, maxLength: 16 })], { numRuns: 8, endOnFailure: true })(
  'whatever is done to parts, as many stand at each place by number as by count, and no number is forgotten',
  async (wishes) => {
    const job = await aDrawnJob(studio);
    await fulfil(job.id, wishes);
    const differ = await sql<{ position: number }>(
      `select position from (
         select part_stands_at(id) as position, count(*)::int as parts from "Part" where "jobId" = $1 group by 1) stand
       where position >= 0 and parts <> pieces_standing($1, position)`,
      [job.id],
    );
    expect(differ).toEqual([]);
    const map = await findPartMap(studio.maker.actor, job.number);
    // What is lost and not made good is begun anew, unless that was taken back by hand.
    const forgotten = map?.numbers.filter(({ best, lost }) => best === null && lost.length === 0);
    expect(forgotten).toEqual([]);
    const living = map?.numbers.reduce((sum, each) => sum + each.living.length, 0) ?? 0;
    const [stand] = await sql<{ all: number }>(
      `select count(*)::int as all from "Part" where "jobId" = $1 and part_stands_at(id) >= 0`,
      [job.id],
    );
    expect(living).toBe(stand?.all);
  },
  60_000,
);
