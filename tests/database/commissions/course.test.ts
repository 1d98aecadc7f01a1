import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { keepProgressInput, tellDelayInput } from '@/lib/commissions/input/course-told';
import { listProgress, progressForCollector } from '@/lib/commissions/reads/course/progress';
import { readTime } from '@/lib/commissions/reads/course/time';
import { keepProgress, shareProgress } from '@/lib/commissions/writes/course/progress';
import { tellDelay } from '@/lib/commissions/writes/course/tell-delay';
import { agree } from '@/lib/commissions/writes/agreement';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { aPicture, asked, done, on } from './a-commission';

let gallery: OpenGallery;
const day = '2026-05-12';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

function code(result: { ok: boolean; refusal?: { code: string } }): string {
  return result.ok ? 'done' : (result.refusal?.code ?? 'nothing');
}

async function promised(promisedOn: '2026-09-01' | null) {
  const { commissionId } = await asked(gallery.maker, day);
  done(
    await agree(on(gallery.owner, day), {
      ...{ requestKey: randomUUID(), commissionId, priceCents: 100_000n, promisedOn },
      ...{ taxPlaceId: gallery.taxPlaceId, deposit: { as: 'amount', amountCents: 50_000n } },
      ...{ agreedOn: day, agreedBy: 'Marit Oland' },
    }),
  );
  return commissionId;
}

function aDelay(commissionId: string, over: Record<string, unknown> = {}) {
  return tellDelayInput.parse({
    ...{ requestKey: randomUUID(), commissionId, toOn: '2026-09-15', clock: 'kiln' },
    ...{ why: 'An element of the kiln broke.', toldHow: 'by letter', toldOn: day, ...over },
  });
}

function aThing(commissionId: string, over: Record<string, unknown> = {}) {
  return keepProgressInput.parse({
    ...{ requestKey: randomUUID(), commissionId, kind: 'note', on: day },
    ...{ words: 'The left wing is thinner.', ...over },
  });
}

describe('a notice of delay', () => {
  test('goes on from the last day that was told, and moves no promise', async () => {
    const commissionId = await promised('2026-09-01');
    const maker = on(gallery.maker, day);
    done(await tellDelay(maker, aDelay(commissionId)));
    done(await tellDelay(maker, aDelay(commissionId, { toOn: '2026-09-20', clock: 'collector' })));
    const time = await readTime(gallery.owner, commissionId, day);
    expect(time?.lost).toEqual([
      { clock: 'collector', days: 5 },
      { clock: 'kiln', days: 14 },
    ]);
    expect(time?.said.map(({ dayOn }) => dayOn)).toEqual([
      '2026-09-01',
      '2026-09-15',
      '2026-09-20',
    ]);
    const { promisedOn } = await db().agreement.findFirstOrThrow({ where: { commissionId } });
    expect(promisedOn?.toISOString().slice(0, 10)).toBe('2026-09-01');
  });

  test('sent twice is one; two at once are in turn', async () => {
    const commissionId = await promised('2026-09-01');
    const maker = on(gallery.maker, day);
    const once = aDelay(commissionId);
    done(await tellDelay(maker, once));
    done(await tellDelay(maker, once));
    const [one, other] = [
      aDelay(commissionId, { toOn: '2026-10-01' }),
      aDelay(commissionId, { toOn: '2026-10-01' }),
    ];
    const both = await Promise.all([tellDelay(maker, one), tellDelay(maker, other)]);
    expect(both.map(code).toSorted()).toEqual(['done', 'same_day_as_told']);
    expect(await db().delayNotice.count({ where: { commissionId } })).toBe(2);
  });

  test.each<[string, '2026-09-01' | null, Record<string, unknown>]>([
    ['no_day_promised', null, {}],
    ['day_to_come', '2026-09-01', { toldOn: '2026-05-13' }],
    ['same_day_as_told', '2026-09-01', { toOn: '2026-09-01' }],
  ])('is refused: %s', async (refusal, promisedOn, over) => {
    const commissionId = await promised(promisedOn);
    expect(code(await tellDelay(on(gallery.maker, day), aDelay(commissionId, over)))).toBe(refusal);
    expect(await db().delayNotice.count({ where: { commissionId } })).toBe(0);
  });
});

describe('what is remembered', () => {
  test('keeps picture, weight, firing and bucket; the collector sees what is shown to them', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const maker = on(gallery.maker, day);
    const { id: batchId } = await db().glazeBatch.create({
      data: { number: 'B7', glaze: 'celadon', mixedOn: new Date('2026-05-01') },
    });
    const picture = await aPicture(77);
    done(await keepProgress(maker, aThing(commissionId, { kind: 'picture', picture, words: '' })));
    done(await keepProgress(maker, aThing(commissionId, { kind: 'weight', weightG: '11.5 kg' })));
    done(await keepProgress(maker, aThing(commissionId, { kind: 'firing', firing: '212' })));
    done(await keepProgress(maker, aThing(commissionId, { kind: 'glaze_batch', batchId })));
    const all = await listProgress(gallery.maker, commissionId);
    expect(all.map(({ kind }) => kind)).toEqual(['picture', 'weight', 'firing', 'glaze_batch']);
    expect(all[0]?.picture?.alt).toBe('a picture');
    expect(all[1]?.weightG).toBe(11_500);
    expect(all[3]?.batch).toEqual({ number: 'B7', glaze: 'celadon' });
    expect(await progressForCollector(commissionId)).toEqual([]);

    const progressId = all[0]?.id ?? '';
    const show = { requestKey: randomUUID(), commissionId, progressId, shared: 'yes' } as const;
    done(await shareProgress(maker, show));
    expect(await progressForCollector(commissionId)).toHaveLength(1);
    const again = { ...show, requestKey: randomUUID() };
    expect(code(await shareProgress(maker, again))).toBe('shown_already');
    done(await shareProgress(maker, { ...again, requestKey: randomUUID(), shared: 'no' }));
    expect(await progressForCollector(commissionId)).toEqual([]);
  });

  test('of another commission is not shown by this one', async () => {
    const [one, other] = [await asked(gallery.maker, day), await asked(gallery.maker, day)];
    const maker = on(gallery.maker, day);
    done(await keepProgress(maker, aThing(one.commissionId)));
    const progressId = (await listProgress(gallery.maker, one.commissionId))[0]?.id ?? '';
    const show = { requestKey: randomUUID(), commissionId: other.commissionId, progressId };
    expect(code(await shareProgress(maker, { ...show, shared: 'yes' }))).toBe('unknown_progress');
  });

  test('a broken picture, a day to come and an unknown bucket are refused, and nothing is left', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const maker = on(gallery.maker, day);
    const broken = { kind: 'picture', picture: new Blob(['no picture']) };
    expect(code(await keepProgress(maker, aThing(commissionId, broken)))).toBe('picture_not_kept');
    const later = { on: '2026-05-13' };
    expect(code(await keepProgress(maker, aThing(commissionId, later)))).toBe('day_to_come');
    const nobody = { kind: 'glaze_batch', batchId: randomUUID() };
    expect(code(await keepProgress(maker, aThing(commissionId, nobody)))).toBe('unknown_batch');
    expect(await listProgress(gallery.maker, commissionId)).toEqual([]);
  });

  test('the database lets only "shown" be changed', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    done(await keepProgress(on(gallery.maker, day), aThing(commissionId)));
    await expect(
      sql(`update "Progress" set words = 'otherwise' where "commissionId" = $1`, [commissionId]),
    ).rejects.toThrow('[progress_stays]');
    await expect(
      sql(`delete from "Progress" where "commissionId" = $1`, [commissionId]),
    ).rejects.toThrow('[progress_stays]');
  });
});
