import { fc, test } from '@fast-check/vitest';
import { beforeAll, expect } from 'vitest';
import { constraintOf } from '@/lib/platform/db/errors';
import { type Technique } from '@/lib/studio/rules/routes';
import { routes } from '../../helpers/usual-routes';
import { moveJobOn, undoMove } from '@/lib/studio/writes';
import { aJob, aKey, aStudio, type TestStudio } from '../../database/studio/a-studio';
import { sql } from '../../helpers/database';

let studio: TestStudio;

beforeAll(async () => {
  studio = await aStudio();
});

const techniques = Object.keys(routes) as Technique[];
const wish = fc.record({
  what: fc.constantFrom('move', 'move', 'move', 'undo', 'twice', 'knock'),
  at: fc.nat(11),
  pieces: fc.integer({ min: 1, max: 14 }),
});
type Wish = { what: string; at: number; pieces: number };

/** Pieces per position from the rows alone, by SQL of its own. */
async function countedBySql(jobId: string) {
  return sql<{ position: number; standing: number }>(
    `select position, sum(pieces)::int as standing from (
       select 0 as position, pieces from "Job" where id = $1
       union all select "toPosition", pieces from "JobMove" where "jobId" = $1
       union all select "fromPosition", -pieces from "JobMove" where "jobId" = $1) changes
     group by position order by position`,
    [jobId],
  );
}

async function fulfil(jobId: string, wishes: readonly Wish[]): Promise<void> {
  const made: string[] = [];
  for (const { what, at, pieces } of wishes) {
    const touch = { requestKey: aKey(), jobId, fromPosition: at, pieces };
    const moveId = made[at % Math.max(made.length, 1)];
    if (what === 'undo' && moveId) {
      await undoMove(studio.maker, { requestKey: aKey(), moveId });
    } else if (what === 'knock') {
      await knock(jobId, at, pieces);
    } else {
      const other = what === 'twice' ? [{ ...touch, requestKey: aKey() }] : [];
      const sent = [touch, ...other].map((one) => moveJobOn(studio.maker, one));
      const answers = await Promise.all(sent);
      made.push(...answers.flatMap((moved) => (moved.ok ? [moved.value.undoId] : [])));
    }
  }
}

/** Straight at the table, past every rule of the program. */
async function knock(jobId: string, from: number, pieces: number): Promise<void> {
  const statement = `insert into "JobMove"
    ("jobId", "fromPosition", "toPosition", pieces, "staffId", "movedOn", at)
    values ($1, $2, $3, $4, $5, '2026-05-04', now())`;
  const values = [jobId, from, (from + pieces) % 13, pieces, studio.maker.actor.id];
  const name = await sql(statement, values).then(
    () => 'let through',
    (error: unknown) => constraintOf(error),
  );
  expect(['let through', 'pieces_leave_where_they_stand', 'move_goes_somewhere']).toContain(name);
}

test.prop(
  [
    fc.constantFrom(...techniques),
    fc.integer({ min: 1, max: 20 }),
    fc.array(wish, { minLength: 5, maxLength: 25 }),
  ],
  { numRuns: 12, endOnFailure: true },
)(
  'on a real database no piece appears or vanishes, whatever is moved, taken back or forced',
  async (technique, pieces, wishes) => {
    const job = await aJob(studio.maker, { technique, pieces });
    await fulfil(job.id, wishes);
    const counted = await countedBySql(job.id);
    const last = routes[technique].length + 1;
    expect(counted.every((row) => row.standing >= 0 && row.position <= last)).toBe(true);
    expect(counted.reduce((sum, row) => sum + row.standing, 0)).toBe(pieces);
  },
  60_000,
);
