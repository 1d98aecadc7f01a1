import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { endCommission } from '@/lib/commissions/writes/end';
import { keepProgressInput } from '@/lib/commissions/input/course-told';
import { keepProgress } from '@/lib/commissions/writes/course/progress';
import { findPlan, findWeight } from '@/lib/installation/reads/plan/told';
import { findSurvey, listLooked } from '@/lib/installation/reads/survey/told';
import { wallRefusalMessage } from '@/lib/installation/rules/survey/refusals';
import { keepPlan } from '@/lib/installation/writes/plan/keep';
import { keepSurvey } from '@/lib/installation/writes/survey/keep';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { aPicture, asked, done, on } from '../commissions/a-commission';
import { aPlanAsked, aSurvey } from './a-survey';

let gallery: OpenGallery;
const day = '2026-05-12';
const telling = { system: 'in', zone: 'America/Los_Angeles' } as const;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

function code(result: { ok: boolean; refusal?: { code: string } }): string {
  return result.ok ? 'done' : (result.refusal?.code ?? 'nothing');
}

async function aWall(fields: Readonly<Record<string, unknown>> = {}) {
  const { commissionId } = await asked(gallery.maker, day);
  const kept = done(await keepSurvey(on(gallery.maker, day), aSurvey(commissionId, fields)));
  return { commissionId, ...kept };
}

describe('a wall as somebody looked at it', () => {
  test('is kept whole, with what is on it and who looked', async () => {
    const { commissionId, version } = await aWall();
    const survey = await findSurvey(gallery.books, commissionId);
    expect(version).toBe(1);
    expect(survey).toMatchObject({
      ...{ wall: 'wood_studs', studSpacingUm: 406_400, firstStudUm: 203_200, coverUm: 12_700 },
      ...{ wallWidthUm: 3_657_600, servicesSought: true, quakes: null, steps: null },
      ...{ surveyedOn: day, by: 'Tobias Fenn' },
      obstacles: [{ kind: 'outlet', leftUm: 508_000, widthUm: 76_200 }],
    });
  });

  test('may be of nothing known yet', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const nothing = aSurvey(commissionId, {
      ...{ wall: '', provedHow: '', studWood: '', studSpacingUm: '', firstStudUm: '' },
      ...{ coverUm: '', wallWidthUm: '', ceilingUm: '', servicesSought: '', 'o0-kind': '' },
      ...{ 'o0-leftUm': '', 'o0-bottomUm': '', 'o0-widthUm': '', 'o0-heightUm': '' },
    });
    expect(code(await keepSurvey(on(gallery.maker, day), nothing))).toBe('done');
    const survey = await findSurvey(gallery.owner, commissionId);
    expect(survey).toMatchObject({ wall: null, ceilingUm: null, obstacles: [] });
  });

  test('is written anew each time, and the one before stays', async () => {
    const { commissionId } = await aWall();
    const again = aSurvey(commissionId, { seenVersion: '1', quakes: 'yes' });
    expect(done(await keepSurvey(on(gallery.owner, day), again)).version).toBe(2);
    const looked = await listLooked(gallery.owner, commissionId);
    expect(looked.map(({ version, by }) => [version, by])).toEqual([
      [2, 'Ines Vale'],
      [1, 'Tobias Fenn'],
    ]);
  });

  test('keeps its pictures from one time to the next where they are ticked', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const pictures = [await aPicture(10), await aPicture(20)];
    done(await keepSurvey(on(gallery.maker, day), aSurvey(commissionId, { pictures })));
    const first = await findSurvey(gallery.owner, commissionId);
    const [one, two] = (first?.pictures ?? []).map(({ file }) => file.id);
    const strange = randomUUID();
    const again = aSurvey(commissionId, { seenVersion: '1', keptPictures: [two, strange] });
    done(await keepSurvey(on(gallery.maker, day), again));
    const second = await findSurvey(gallery.owner, commissionId);
    expect(second?.pictures.map(({ file }) => file.id)).toEqual([two]);
    expect(one).not.toBe(two);
  });

  test('sent twice is kept once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const survey = aSurvey(commissionId);
    const [one, other] = [
      await keepSurvey(on(gallery.maker, day), survey),
      await keepSurvey(on(gallery.maker, day), survey),
    ];
    expect(one).toEqual(other);
    expect(await db().wallSurvey.count({ where: { commissionId } })).toBe(1);
  });

  test('of two who look at once one is told of the other', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const both = await Promise.all([
      keepSurvey(on(gallery.maker, day), aSurvey(commissionId)),
      keepSurvey(on(gallery.owner, day), aSurvey(commissionId, { wall: 'brick' })),
    ]);
    expect(both.map(code).toSorted()).toEqual(['done', 'looked_at_meanwhile']);
    const told = both.find((answer) => !answer.ok);
    const sentence = told?.ok === false ? wallRefusalMessage(told.refusal, telling) : '';
    expect(sentence).toMatch(
      /^(Ines Vale|Tobias Fenn) wrote down the wall .*while this page was open/,
    );
    expect(await db().wallSurvey.count({ where: { commissionId } })).toBe(1);
  });

  test('is refused in this order', async () => {
    const { commissionId } = await aWall();
    const key = randomUUID();
    const keep = (fields: Record<string, unknown>, who = gallery.maker) =>
      keepSurvey(on(who, day), aSurvey(commissionId, { seenVersion: '1', ...fields }));
    expect(code(await keep({}, gallery.books))).toBe('not_allowed');
    const broken = [new Blob(['no picture'])];
    expect(code(await keep({ pictures: broken }))).toBe('picture_not_kept');
    done(await keep({ requestKey: key }));
    expect(code(await keep({ requestKey: key, note: 'another' }))).toBe(
      'key_used_for_something_else',
    );
    const unknown = aSurvey(randomUUID());
    expect(code(await keepSurvey(on(gallery.maker, day), unknown))).toBe('unknown_commission');
    expect(code(await keep({ surveyedOn: '2026-05-13' }))).toBe('day_to_come');
    expect(code(await keep({}))).toBe('looked_at_meanwhile');
  });

  test('nothing of it is changed or deleted, and its measures are real, by the database itself', async () => {
    const { surveyId } = await aWall();
    await expect(
      sql(`UPDATE "WallSurvey" SET note = 'other' WHERE id = $1`, [surveyId]),
    ).rejects.toThrow(/never_changed/);
    await expect(
      sql(`DELETE FROM "SurveyObstacle" WHERE "surveyId" = $1`, [surveyId]),
    ).rejects.toThrow(/never_changed/);
    await expect(
      sql(`INSERT INTO "SurveyObstacle" VALUES ($1, 7, 'pipe', '', 0, 0, 0, 10)`, [surveyId]),
    ).rejects.toThrow(/obstacle_has_a_size/);
  });
});

describe('how a piece hangs', () => {
  test('is kept for exactly the wall that was looked at', async () => {
    const { commissionId, surveyId } = await aWall();
    const kept = done(await keepPlan(on(gallery.maker, day), aPlanAsked(commissionId, surveyId)));
    expect(kept.version).toBe(1);
    const shown = await findPlan(gallery.owner, commissionId, 'in');
    expect(shown).toMatchObject({ version: 1, isOld: false, by: 'Tobias Fenn', why: [] });
    expect(shown?.plan?.holes).toHaveLength(6);
    expect(shown?.fixings).toBe('6 No. 12 wood screws, 3 1/2 in long');
  });

  test('is old once the wall was looked at again', async () => {
    const { commissionId, surveyId } = await aWall();
    done(await keepPlan(on(gallery.maker, day), aPlanAsked(commissionId, surveyId)));
    const again = aSurvey(commissionId, { seenVersion: '1', wall: 'brick' });
    const newer = done(await keepSurvey(on(gallery.maker, day), again));
    expect(await findPlan(gallery.owner, commissionId, 'in')).toMatchObject({ isOld: true });
    const late = aPlanAsked(commissionId, surveyId);
    expect(code(await keepPlan(on(gallery.maker, day), late))).toBe('survey_is_old');
    const inBrick = aPlanAsked(commissionId, newer.surveyId);
    const refused = await keepPlan(on(gallery.maker, day), inBrick);
    expect(refused.ok ? '' : wallRefusalMessage(refused.refusal, telling)).toMatch(
      /In brick use sleeve or screw anchors/,
    );
  });

  test('is never planned on a wall that nobody knows, nor on board alone when it is heavy', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const none = aPlanAsked(commissionId, randomUUID());
    expect(code(await keepPlan(on(gallery.maker, day), none))).toBe('not_looked_at');
    for (const [wall, words] of [
      ['', /^Nobody knows yet what this wall is made of: stop/],
      ['gypsum_board', /^100 lb must not hang on gypsum board alone/],
    ] as const) {
      const known = await aWall({ wall });
      const wanted = aPlanAsked(known.commissionId, known.surveyId);
      const refused = await keepPlan(on(gallery.maker, day), wanted);
      expect(refused.ok ? '' : wallRefusalMessage(refused.refusal, telling)).toMatch(words);
      expect(await db().fixingPlan.count({ where: { commissionId: known.commissionId } })).toBe(0);
    }
  });

  test('is refused in this order', async () => {
    const { commissionId, surveyId } = await aWall();
    const key = randomUUID();
    const plan = (fields: Record<string, unknown> = {}, who = gallery.maker) =>
      keepPlan(on(who, day), aPlanAsked(commissionId, surveyId, fields));
    expect(code(await plan({}, gallery.books))).toBe('not_allowed');
    done(await plan({ requestKey: key }));
    expect(code(await plan({ requestKey: key, weightG: '90' }))).toBe(
      'key_used_for_something_else',
    );
    const unknown = aPlanAsked(randomUUID(), surveyId);
    expect(code(await keepPlan(on(gallery.maker, day), unknown))).toBe('unknown_commission');
    expect(code(await plan({ weightG: '299', safetyFactor: '4' }))).toBe('no_plan');
    done(
      await endCommission(on(gallery.owner, day), {
        ...{ requestKey: randomUUID(), commissionId, endedOn: day, why: 'They moved away.' },
      }),
    );
    expect(code(await plan())).toBe('ended_early');
    const again = aSurvey(commissionId, { seenVersion: '1' });
    expect(code(await keepSurvey(on(gallery.maker, day), again))).toBe('ended_early');
  });

  test('of two who plan at once both are kept, one after the other', async () => {
    const { commissionId, surveyId } = await aWall();
    const both = await Promise.all([
      keepPlan(on(gallery.maker, day), aPlanAsked(commissionId, surveyId)),
      keepPlan(on(gallery.owner, day), aPlanAsked(commissionId, surveyId, { weightG: '90' })),
    ]);
    expect(both.map((each) => (each.ok ? each.value.version : 0)).toSorted()).toEqual([1, 2]);
  });

  test('is for a known wall of its own commission, by the database itself', async () => {
    const unknown = await aWall({ wall: '' });
    const other = await aWall();
    const insert = (commissionId: string, surveyId: string) =>
      sql(
        `INSERT INTO "FixingPlan"
           (id, "commissionId", "surveyId", version, "weightG", asked, "isAllowed", "staffId", at)
         VALUES ($1, $2, $3, 1, 100, '{}', true, $4, now())`,
        [randomUUID(), commissionId, surveyId, gallery.owner.id],
      );
    await expect(insert(unknown.commissionId, unknown.surveyId)).rejects.toThrow(
      /plan_stands_on_a_known_wall/,
    );
    await expect(insert(unknown.commissionId, other.surveyId)).rejects.toThrow(
      /plan_stands_on_a_known_wall/,
    );
  });
});

describe('what a piece weighs', () => {
  test('is told by the scale where it was on one, else by its size, else not', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    expect(await findWeight(gallery.owner, commissionId)).toBeNull();
    const sized = await asked(gallery.maker, day, { widthUm: '36', heightUm: '60' });
    expect(await findWeight(gallery.owner, sized.commissionId)).toMatchObject({ from: 'estimate' });
    const onScale = keepProgressInput.parse({
      ...{ requestKey: randomUUID(), commissionId: sized.commissionId, kind: 'weight', on: day },
      ...{ weightG: '98 lb', words: 'On the bench scale.' },
    });
    done(await keepProgress(on(gallery.maker, day), onScale));
    expect(await findWeight(gallery.owner, sized.commissionId)).toEqual({
      ...{ weightG: 44_452, from: 'scale', on: day },
    });
  });
});
