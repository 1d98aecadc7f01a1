import { beforeEach, describe, expect, test } from 'vitest';
import type { AssemblyInput } from '@/lib/installation/input/assembly/assembly';
import { listAssemblies } from '@/lib/installation/reads/assembly/assemblies';
import { setPieces } from '@/lib/installation/writes/assembly/set';
import { db } from '@/lib/platform/db/client';
import { aCommission, aKey, aStudio, monday, type TestStudio } from '../studio/a-studio';
import { sql, startAfresh } from '../../helpers/database';

let studio: TestStudio;
let commissionId: string;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
  commissionId = (await aCommission(studio.owner)).id;
});

// Monday is 4 May 2026, 10 in the morning at the gallery.
function pieces(change: Partial<AssemblyInput> = {}): AssemblyInput {
  return {
    ...{ requestKey: aKey(), commissionId, board: '19 mm plywood', adhesive: 'polymer mortar' },
    ...{ lot: 'B 44', roomC: 20, scrapKept: true, note: '' },
    set: { on: '2026-05-04', at: '09:00', cureHours: 48 },
    ...change,
  };
}

async function aWall() {
  await db().wallSurvey.create({
    data: {
      ...{ commissionId, version: 1, wall: 'wood_studs', surveyedOn: new Date('2026-05-01') },
      ...{ staffId: studio.maker.actor.id, at: monday },
    },
  });
}

/** Knocks at the database itself: none of our commands is asked. */
async function hangBySql(startsAt: string) {
  return sql(
    `insert into "Appointment" (id, kind, "commissionId", "leadId", "startsAt", "endsAt", address, "bookedById", "bookedAt")
     values (gen_random_uuid(), 'hanging', $1, $2, $3, $3::timestamptz + interval '2 hours', '4 Ropewalk Lane', $2, now())
     returning id`,
    [commissionId, studio.maker.actor.id, startsAt],
  );
}

describe('setting pieces on the board', () => {
  test('is kept with until when it cures, and told in the commission’s history', async () => {
    expect(await setPieces(studio.maker, pieces())).toMatchObject({ ok: true });
    const { assemblies } = await listAssemblies(studio.books.actor, commissionId);
    expect(assemblies).toMatchObject([
      {
        ...{ board: '19 mm plywood', adhesive: 'polymer mortar', lot: 'B 44', by: 'Osip Lund' },
        finishedAt: new Date('2026-05-04T16:00:00Z'),
        curesAt: new Date('2026-05-06T16:00:00Z'),
      },
    ]);
    const lines = await db().auditLine.findMany();
    expect(lines.map(({ did, subjectId }) => [did, subjectId])).toEqual([
      ['set its pieces on the board', commissionId],
    ]);
  });

  test('is refused for each of its reasons, and leaves nothing', async () => {
    const ask = async (doer = studio.maker, change: Partial<AssemblyInput> = {}) => {
      const answer = await setPieces(doer, pieces(change));
      return answer.ok ? 'done' : answer.refusal.code;
    };
    const tomorrow = { on: '2026-05-05', at: '09:00', cureHours: 1 } as const;
    expect(await ask(studio.books)).toBe('not_allowed');
    expect(await ask(undefined, { commissionId: aKey() })).toBe('unknown_commission');
    expect(await ask(undefined, { set: tomorrow })).toBe('set_to_come');
    expect(await db().assembly.count()).toBe(0);
    expect(await ask()).toBe('done');
    const before = { on: '2026-05-03', at: '09:00', cureHours: 1 } as const;
    expect(await ask(undefined, { set: before })).toBe('set_before_the_last');
    await db().commissionEnding.create({
      data: {
        ...{ commissionId, why: 'They moved away', keptCents: 0n, endedOn: new Date('2026-05-04') },
        ...{ staffId: studio.owner.actor.id, at: monday },
      },
    });
    expect(await ask()).toBe('ended_early');
    expect(await db().assembly.count()).toBe(1);
  });

  test('sent twice it is kept once', async () => {
    const input = pieces();
    await setPieces(studio.maker, input);
    expect(await setPieces(studio.maker, input)).toMatchObject({ ok: true });
    expect(await setPieces(studio.maker, { ...input, lot: 'B 45' })).toMatchObject({
      refusal: { code: 'key_used_for_something_else' },
    });
    expect(await db().assembly.count()).toBe(1);
  });

  test('of two who write it at once with different hours, the later hour holds', async () => {
    const sets = ['08:00', '09:00'].map((at) => ({ on: '2026-05-04', at, cureHours: 48 }) as const);
    await Promise.all(sets.map((set) => setPieces(studio.maker, pieces({ set }))));
    const { assemblies } = await listAssemblies(studio.maker.actor, commissionId);
    expect(assemblies[0]?.finishedAt).toEqual(new Date('2026-05-04T16:00:00Z'));
  });

  test('a hanging that comes too soon for it is named', async () => {
    await aWall();
    const [soon] = await hangBySql('2026-05-06T15:59:00Z');
    await hangBySql('2026-05-07T16:00:00Z');
    await setPieces(studio.maker, pieces());
    const { tooSoon } = await listAssemblies(studio.maker.actor, commissionId);
    expect(tooSoon.map(({ id }) => id)).toEqual([soon?.['id']]);
  });
});

describe('the database itself', () => {
  test('refuses a hanging before it has cured, and takes one at that very instant', async () => {
    await aWall();
    await setPieces(studio.maker, pieces());
    await expect(hangBySql('2026-05-06T15:59:59Z')).rejects.toThrow('[hanging_waits_for_the_cure]');
    await expect(hangBySql('2026-05-06T16:00:00Z')).resolves.toHaveLength(1);
  });

  test('a re-set counts anew, and a correction of the same hour does too', async () => {
    await aWall();
    await setPieces(studio.maker, pieces());
    await setPieces(
      studio.owner,
      pieces({ set: { on: '2026-05-04', at: '09:30', cureHours: 96 } }),
    );
    await expect(hangBySql('2026-05-06T16:00:00Z')).rejects.toThrow('[hanging_waits_for_the_cure]');
    const later = { ...studio.owner, at: new Date('2026-05-04T17:30:00Z') };
    await setPieces(later, pieces({ set: { on: '2026-05-04', at: '09:30', cureHours: 24 } }));
    await expect(hangBySql('2026-05-05T16:30:00Z')).resolves.toHaveLength(1);
  });

  test('a hanging that stands cannot be moved into the cure', async () => {
    await aWall();
    const [row] = await hangBySql('2026-05-07T16:00:00Z');
    await setPieces(studio.maker, pieces());
    const move = 'update "Appointment" set "startsAt" = $2, "endsAt" = $3 where id = $1';
    const times = ['2026-05-06T10:00:00Z', '2026-05-06T12:00:00Z'];
    await expect(sql(move, [row?.['id'], ...times])).rejects.toThrow(
      '[hanging_waits_for_the_cure]',
    );
  });

  test.each([
    [`update "Assembly" set board = 'other'`],
    [`delete from "Assembly"`],
    [`truncate "Assembly"`],
  ])('does not let go of what was written: %s', async (statement) => {
    await setPieces(studio.maker, pieces());
    await expect(sql(statement)).rejects.toThrow();
    expect(await db().assembly.count()).toBe(1);
  });

  test('takes no adhesive that cures before it was set', async () => {
    const insert = `insert into "Assembly" (id, "commissionId", board, adhesive, "finishedAt", "curesAt", "staffId", at)
      values (gen_random_uuid(), $1, 'ply', 'mortar', now(), now(), $2, now())`;
    await expect(sql(insert, [commissionId, studio.maker.actor.id])).rejects.toThrow(
      'adhesive_takes_its_time',
    );
  });
});
