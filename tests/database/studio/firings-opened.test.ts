import { beforeEach, describe, expect, test } from 'vitest';
import { constraintOf } from '@/lib/platform/db/errors';
import { db } from '@/lib/platform/db/client';
import { findFiring } from '@/lib/studio/reads/firings/find';
import { readAtKilns } from '@/lib/studio/reads/firings/waiting';
import { lightKiln, noteReading } from '@/lib/studio/writes/firings/light';
import { openKiln } from '@/lib/studio/writes/firings/open';
import { callOffFiring } from '@/lib/studio/writes/firings/plan';
import { sql, startAfresh } from '../../helpers/database';
import {
  aKiln,
  aLitFiring,
  aPlannedFiring,
  at,
  firingDay,
  lighting,
  opened,
  opening,
  waitingTiles,
} from './a-kiln';
import { aJob, aKey, aStudio, type TestStudio } from './a-studio';

let studio: TestStudio;
let kilnId: string;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
  kilnId = (await aKiln(studio)).id;
});

const load = (number: number) => findFiring(studio.maker.actor, number);

describe('reading', () => {
  const reading = (firingId: string, celsius: number, time: string | null) => ({
    ...({ requestKey: aKey(), firingId, celsius, note: '', on: firingDay, time } as const),
  });

  test('readings are kept with their time, and tell when it is cool', async () => {
    await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    const later = at(studio, 23, 21);
    const onNext = { on: '2026-05-21' } as const;
    const hot = { ...reading(firing.id, 1_020, '09:00'), ...onNext };
    expect((await noteReading(later, hot)).ok).toBe(true);
    const cooler = { ...reading(firing.id, 520, '13:00'), ...onNext };
    expect((await noteReading(later, cooler)).ok).toBe(true);
    const told = await load(firing.number);
    expect(told?.readings.map(({ celsius }) => celsius)).toEqual([1_020, 520]);
    expect(told?.cool).toMatchObject({ by: 'its_readings' });
    // 13:00 in the gallery's zone is 20:00; from 520 to below 93 °C takes 669 minutes.
    expect(told?.cool?.at.toISOString()).toBe('2026-05-22T07:09:00.000Z');
  });

  test('not before it was lit, and not of what was not lit', async () => {
    await waitingTiles(studio);
    const planned = await aPlannedFiring(studio, kilnId);
    expect(await noteReading(at(studio, 20), reading(planned.id, 100, null))).toMatchObject({
      refusal: { code: 'not_lit_yet' },
    });
    await lightKiln(at(studio, 16), lighting(planned.id));
    expect(await noteReading(at(studio, 20), reading(planned.id, 100, '08:59'))).toMatchObject({
      refusal: { code: 'before_it_was_lit' },
    });
    await expect(
      sql(
        `insert into "FiringReading" ("firingId", at, celsius, "staffId")
         values ($1, '2026-05-20T10:00:00Z', 20, $2)`,
        [planned.id, studio.maker.actor.id],
      ),
    ).rejects.toThrow('firing_was_lit');
  });
});

describe('opening', () => {
  test('one touch: all came out good and went on', async () => {
    const job = await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    expect(await opened(studio, firing.id)).toMatchObject({
      value: { good: 6, second: 0, fire_again: 0, lost: 0, begunAnew: 0 },
    });
    const moves = await db().jobMove.findMany({ where: { firingId: firing.id } });
    expect(moves).toMatchObject([{ jobId: job.id, fromPosition: 4, toPosition: 5, pieces: 6 }]);
    const told = await load(firing.number);
    expect(told?.stand).toBe('opened');
    expect(told?.opened).toMatchObject({ isMetered: false, celsius: 66 });
  });

  test('too hot stays shut, and is told when it will be cool', async () => {
    await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    const early = await openKiln(at(studio, 18, 21), opening(firing.id, { reading: '201' }));
    expect(early).toMatchObject({ refusal: { code: 'too_hot', celsius: 94 } });
    expect(early.ok || 'coolAt' in early.refusal).toBe(true);
    const unread = await openKiln(at(studio, 18, 21), opening(firing.id, { reading: '' }));
    expect(unread).toMatchObject({ refusal: { code: 'temperature_not_read' } });
    expect(await db().firingOpened.count()).toBe(0);
  });

  test('seconds go on, lost ones leave with their cause and are begun anew, others stay', async () => {
    const job = await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    const lineId = firing.lines[0]?.id ?? '';
    const told = {
      ...{ [`second.${lineId}`]: '1', [`again.${lineId}`]: '2', [`lost.${lineId}`]: '1' },
      ...{ [`cause.${lineId}`]: 'shelf', [`note.${lineId}`]: 'foot stuck' },
    };
    expect(await opened(studio, firing.id, told)).toMatchObject({
      value: { good: 2, second: 1, fire_again: 2, lost: 1, begunAnew: 1 },
    });
    const results = (await load(firing.number))?.lines[0]?.results;
    expect(results?.map(({ outcome, pieces, cause }) => [outcome, pieces, cause])).toEqual([
      ['good', 2, null],
      ['second', 1, null],
      ['fire_again', 2, null],
      ['lost', 1, 'shelf'],
    ]);
    const [here] = await readAtKilns(db(), { jobIds: [job.id] });
    expect(here).toMatchObject({ position: 4, pieces: 2, againPieces: 2 });
    const lost = await db().jobMove.findFirst({ where: { toPosition: -1 } });
    expect(lost).toMatchObject({ cause: 'shelf', note: 'foot stuck', firingId: firing.id });
  });

  test('a firing of nothing but what is fired again is an unplanned one', async () => {
    await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    await opened(studio, firing.id, { [`again.${firing.lines[0]?.id ?? ''}`]: '2' });
    const again = await load((await aPlannedFiring(studio, kilnId)).number);
    expect(again).toMatchObject({ isPlanned: false, lines: [{ pieces: 2, isAgain: true }] });
    await waitingTiles(studio, { title: 'Others' });
    await callOffFiring(studio.maker, { requestKey: aKey(), firingId: again?.id ?? '' });
    const mixed = await load((await aPlannedFiring(studio, kilnId)).number);
    expect(mixed?.isPlanned).toBe(true);
    expect(mixed?.lines.map(({ isAgain }) => isAgain)).toEqual([true, false]);
  });

  test('the meter goes before the reckoning', async () => {
    await waitingTiles(studio);
    const firing = await aPlannedFiring(studio, kilnId);
    await lightKiln(at(studio, 16), { ...lighting(firing.id), meterKwh: '10482.5' });
    const backwards = await opened(studio, firing.id, { meterKwh: '10000' });
    expect(backwards).toMatchObject({ refusal: { code: 'meter_runs_backwards' } });
    await opened(studio, firing.id, { meterKwh: '10546.4' });
    // 63.9 kWh at 15.25 cents are $9.74, and $5.00 of wear.
    expect((await load(firing.number))?.opened).toMatchObject({
      ...{ isMetered: true, wattHours: 63_900, costCents: 1_474n },
    });
  });

  test('of two who open it at once one does, and the same form twice is one opening', async () => {
    await waitingTiles(studio);
    const { id } = await aLitFiring(studio, kilnId);
    const doer = at(studio, 18, 22);
    const both = await Promise.all([
      openKiln(doer, opening(id)),
      openKiln({ ...doer, actor: studio.owner.actor }, opening(id)),
    ]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: 'opened_already' } });
    expect(await db().jobMove.count({ where: { firingId: id } })).toBe(1);
  });

  test('the database lets no piece vanish in a kiln', async () => {
    await waitingTiles(studio);
    const { id } = await aLitFiring(studio, kilnId);
    const open = db().firingOpened.create({
      data: {
        ...{ firingId: id, openedOn: new Date('2026-05-22'), at: at(studio, 18, 22).at },
        ...{ celsius: 60, wattHours: 1, isMetered: false, costCents: 1n },
        staffId: studio.maker.actor.id,
      },
    });
    const error: unknown = await open.catch((thrown: unknown) => thrown);
    expect(constraintOf(error)).toBe('every_piece_came_out');
  });

  test('pieces that never reached a kiln wait for none', async () => {
    await aJob(studio.maker);
    expect(await readAtKilns(db())).toEqual([]);
  });
});
