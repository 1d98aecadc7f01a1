import { beforeEach, describe, expect, test } from 'vitest';
import { firingSheetPdf } from '@/lib/documents/studio/firing';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { getGallery } from '@/lib/platform/settings';
import { findFiring } from '@/lib/studio/reads/firings/find';
import { listEarnedByTurns } from '@/lib/studio/reads/firings/earned';
import { firingsOnPage, listFirings } from '@/lib/studio/reads/firings/list';
import { listWaitingFor, listWaitingForNone } from '@/lib/studio/reads/firings/queues';
import { readAtKilns } from '@/lib/studio/reads/firings/waiting';
import { listKilns } from '@/lib/studio/reads/kilns/kiln';
import { movePieces } from '@/lib/studio/writes';
import { lightKiln } from '@/lib/studio/writes/firings/light';
import { layLine } from '@/lib/studio/writes/firings/lines';
import { startAfresh } from '../../helpers/database';
import { readPaper } from '../../helpers/paper-text';
import { aDrawnJob } from './a-drawn-job';
import { aKiln, aLitFiring, aPlannedFiring, at, lighting, opened, waitingTiles } from './a-kiln';
import { aKey, aStudio, type TestStudio } from './a-studio';

let studio: TestStudio;
let kilnId: string;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
  kilnId = (await aKiln(studio)).id;
});

/** A relief of six parts and a spare, all of them before their bisque. */
async function reliefAtKiln() {
  const job = await aDrawnJob(studio);
  for (let fromPosition = 0; fromPosition < 5; fromPosition += 1) {
    const going = { jobId: job.id, fromPosition, pieces: 7, partIds: job.all };
    const moved = await inTransaction((tx) => movePieces(tx, studio.maker, going));
    if (!moved.ok) throw new Error(moved.refusal.code);
  }
  return job;
}

describe('a numbered relief', () => {
  test('its parts are measured by their outlines, laid by number, and come out by number', async () => {
    const job = await reliefAtKiln();
    await waitingTiles(studio);
    const firing = await aPlannedFiring(studio, kilnId);
    const line = { firingId: firing.id, jobId: job.id, position: 5, pieces: 1 };
    const meant = { ...line, partIds: [job.idOf(1), job.idOf(2)], widthUm: null, depthUm: null };
    const laid = await layLine(studio.maker, { requestKey: aKey(), ...meant, heightUm: 40_000 });
    expect(laid).toMatchObject({ ok: true, value: { pieces: 2 } });
    const load = await findFiring(studio.maker.actor, firing.number);
    const relief = load?.lines.find(({ jobId }) => jobId === job.id);
    expect(relief?.parts.map(({ number }) => number)).toEqual([1, 2]);
    // Six parts of 900 × 600 mm in two rows of three, their corners kept to a hundredth.
    expect(Math.abs((relief?.widthUm ?? 0) - 300_000)).toBeLessThan(50);
    expect(relief).toMatchObject({ depthUm: 300_000, heightUm: 40_000 });
    expect((await db().job.findUnique({ where: { id: job.id } }))?.depthUm).toBe(40_000);

    expect((await lightKiln(at(studio, 16), lighting(firing.id, 'by the stove'))).ok).toBe(true);
    const [here] = await readAtKilns(db(), { jobIds: [job.id] });
    expect(here).toMatchObject({ pieces: 5, inFire: 2 });
    const told = {
      [`part.${relief?.id ?? ''}.${job.idOf(1)}`]: 'lost',
      [`cause.${relief?.id ?? ''}`]: 'steam',
    };
    expect(await opened(studio, firing.id, told)).toMatchObject({ value: { good: 7, lost: 1 } });
    const after = await db().partMove.findMany({
      where: { move: { firingId: firing.id } },
      select: { partId: true, move: { select: { toPosition: true } } },
    });
    expect(after).toEqual(
      expect.arrayContaining([
        { partId: job.idOf(2), move: { toPosition: 6 } },
        { partId: job.idOf(1), move: { toPosition: -1 } },
      ]),
    );
  });

  test('nobody said which parts, or one that is not there: refused', async () => {
    const job = await reliefAtKiln();
    await waitingTiles(studio);
    const firing = await aPlannedFiring(studio, kilnId);
    const line = { firingId: firing.id, jobId: job.id, position: 5, pieces: 3 };
    const size = { widthUm: null, depthUm: null, heightUm: 40_000 };
    expect(
      await layLine(studio.maker, { requestKey: aKey(), ...line, ...size, partIds: [] }),
    ).toMatchObject({ refusal: { code: 'say_which_parts_go' } });
    const wrong = { ...line, ...size, partIds: [firing.id] };
    expect(await layLine(studio.maker, { requestKey: aKey(), ...wrong })).toMatchObject({
      refusal: { code: 'parts_not_there' },
    });
  });
});

describe('what the pages read', () => {
  test('the queue in turns, and what no kiln fires', async () => {
    await waitingTiles(studio, { pieces: 36 });
    const kilns = await listKilns(studio.gallery.actor, '2026-05-20');
    const [cones] = await listWaitingFor(studio.gallery.actor, kilns, '2026-05-20');
    // A tile this low lies 9 to a shelf on 8 shelves: 36 are half a turn.
    expect(cones).toMatchObject([
      { kind: 'bisque', cone: '04', pieces: 36, loadPieces: 36, waitedDays: 6 },
    ]);
    expect(cones?.[0]?.queue).toEqual({ turnHundredths: 50, notReckoned: 0, weekTenths: 3 });
    expect(await listWaitingForNone(studio.gallery.actor, [{ cones: ['6'] }])).toHaveLength(1);
    await expect(listWaitingFor(studio.books.actor, kilns, '2026-05-20')).rejects.toThrow();
  });

  test('the log tells how each firing came out', async () => {
    await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    await opened(studio, firing.id, { [`second.${firing.lines[0]?.id ?? ''}`]: '2' });
    expect(await listFirings(studio.gallery.actor)).toMatchObject([
      { number: firing.number, stand: 'opened', pieces: 6, came: { good: 4, second: 2 } },
    ]);
    expect(firingsOnPage).toBeGreaterThan(1);
    expect(await listFirings(studio.gallery.actor, { before: firing.number })).toEqual([]);
  });

  test('what a turn earned is told of finished work, and to whoever sees money', async () => {
    await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    await opened(studio, firing.id);
    expect(await listEarnedByTurns(studio.owner.actor)).toEqual([]);
    await expect(listEarnedByTurns(studio.maker.actor)).rejects.toThrow();
  });

  test('the log sheet names the load, the schedule and what to mind', async () => {
    await waitingTiles(studio, { pieces: 30 });
    const firing = await aLitFiring(studio, kilnId);
    const told = await findFiring(studio.maker.actor, firing.number);
    if (!told) throw new Error('The firing is in the log.');
    const gallery = { ...(await getGallery()), paperSize: 'a4' as const };
    const paper = await readPaper(await firingSheetPdf(told, { gallery, scale: 'F' }));
    expect([Math.round(paper.width), Math.round(paper.height)]).toEqual([595, 842]);
    for (const words of [
      ...[`Firing ${firing.number}`, 'Bisque to cone 04 in The large one', 'Tern over Shoals'],
      ...[
        '6 × 6 × 1/2 in',
        '30 pieces',
        'To 1,945 °F at 108 °F an hour',
        'Shelf 1',
        'What to mind',
      ],
    ]) {
      expect(paper.text).toContain(words);
    }
  });
});
