import { beforeEach, describe, expect, test } from 'vitest';
import { tileWallPdf } from '@/lib/documents/installation/tile-wall';
import { keepTileWallInput, type KeepTileWallInput } from '@/lib/installation/input/tiles/wall';
import { findTileWall, listTileWalls } from '@/lib/installation/reads/tiles/walls';
import { tileWallRefusalMessage } from '@/lib/installation/rules/tiles/refusals';
import { keepTileWall } from '@/lib/installation/writes/tiles/keep';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import { aCommission, aKey, aStudio, type TestStudio } from '../studio/a-studio';
import { sql, startAfresh } from '../../helpers/database';
import { readPaper } from '../../helpers/paper-text';

let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

/** A backsplash of 96 × 18 in, tile of 6 in with joints of 3/16 in. */
const backsplash: TileWallAsked = {
  ...{ widthUm: 2_438_400, heightUm: 457_200, tileWidthUm: 152_400, tileHeightUm: 152_400 },
  ...{ jointUm: 4_763, rowsFrom: 'bottom', isHandMade: true, variationUm: 0 },
  ...{ sparePercent: '10', setSparePercent: '25', places: ['heat'] },
  sets: [{ name: 'Heron', across: 2, down: 1, column: 4, row: 1 }],
  openings: [
    { kind: 'outlet', leftUm: 200_000, bottomUm: 100_000, widthUm: 70_000, heightUm: 115_000 },
  ],
};

function wall(change: Partial<KeepTileWallInput> = {}): KeepTileWallInput {
  return {
    ...{ requestKey: aKey(), commissionId: null, title: 'Kitchen, behind the range' },
    ...{ asked: backsplash, ...change },
  };
}

describe('a wall of tiles', () => {
  test('is kept as it was asked, and told in the commission’s history', async () => {
    const commission = await aCommission(studio.owner);
    const kept = await keepTileWall(studio.maker, wall({ commissionId: commission.id }));
    const number = kept.ok ? kept.value.number : 0;
    expect(await findTileWall(studio.maker.actor, number)).toMatchObject({
      ...{ title: 'Kitchen, behind the range', asked: backsplash, by: 'Osip Lund' },
      commission: { number: commission.number, title: 'Herons at low water' },
    });
    const lines = await db().auditLine.findMany();
    expect(lines.map(({ did, subjectId }) => [did, subjectId])).toEqual([
      ['laid out a wall of tiles', commission.id],
    ]);
    expect(await findTileWall(studio.maker.actor, number + 1)).toBeNull();
  });

  test('is listed with its commission’s, and with all, the newest first', async () => {
    const commission = await aCommission(studio.owner);
    await keepTileWall(studio.maker, wall({ commissionId: commission.id }));
    await keepTileWall(studio.gallery, wall({ title: 'Patio' }));
    const titles = async (id?: string) =>
      (await listTileWalls(studio.gallery.actor, id)).map(({ title }) => title);
    expect(await titles()).toEqual(['Patio', 'Kitchen, behind the range']);
    expect(await titles(commission.id)).toEqual(['Kitchen, behind the range']);
  });

  test('is refused for each of its reasons, and leaves nothing', async () => {
    const ask = async (change: Partial<KeepTileWallInput>, doer = studio.maker) => {
      const answer = await keepTileWall(doer, wall(change));
      if (answer.ok) return 'kept';
      expect(tileWallRefusalMessage(answer.refusal)).toMatch(/\.$/);
      return answer.refusal.code;
    };
    const asked = (change: Partial<TileWallAsked>) => ({ asked: { ...backsplash, ...change } });
    expect(await ask({}, studio.books)).toBe('not_allowed');
    expect(await ask({ commissionId: aKey() })).toBe('unknown_commission');
    expect(await ask(asked({ widthUm: 100_000_000, tileWidthUm: 5_000 }))).toBe('too_many_tiles');
    const farOut = { name: 'Heron', across: 1, down: 1, column: 99, row: 0 };
    expect(await ask(asked({ sets: [farOut] }))).toBe('set_outside');
    expect(await db().tileWall.count()).toBe(0);
  });

  test('sent twice it is kept once', async () => {
    const input = wall();
    const answers = [
      await keepTileWall(studio.maker, input),
      await keepTileWall(studio.maker, input),
    ];
    expect(answers[0]).toEqual(answers[1]);
    expect(await keepTileWall(studio.maker, { ...input, title: 'Patio' })).toMatchObject({
      refusal: { code: 'key_used_for_something_else' },
    });
    expect(await db().tileWall.count()).toBe(1);
  });

  test('two at once are two walls', async () => {
    const answers = await Promise.all([1, 2, 3].map(() => keepTileWall(studio.maker, wall())));
    expect(new Set(answers.map((answer) => answer.ok && answer.value.number)).size).toBe(3);
  });

  test.each([
    [`update "TileWall" set title = 'other'`],
    [`delete from "TileWall"`],
    [`truncate "TileWall"`],
  ])('stays as it was kept: %s', async (statement) => {
    await keepTileWall(studio.maker, wall());
    await expect(sql(statement)).rejects.toThrow();
    expect(await db().tileWall.count()).toBe(1);
  });
});

describe('what the board sends', () => {
  const sent = (asked: unknown) =>
    keepTileWallInput.safeParse({
      ...{ requestKey: aKey(), commissionId: '', title: 'Patio' },
      asked: typeof asked === 'string' ? asked : JSON.stringify(asked),
    });

  test('is read back as it was', () => {
    expect(sent(backsplash).data?.asked).toEqual(backsplash);
  });

  test.each([
    ['nothing', ''],
    ['no JSON', '{'],
    ['a list', []],
    ['a wall of no width', { ...backsplash, widthUm: 0 }],
    ['half a micrometre', { ...backsplash, jointUm: 0.5 }],
    ['a key of its own', { ...backsplash, colour: 'moss' }],
    ['a place that is none', { ...backsplash, places: ['roof'] }],
    ['a set tile without a name', { ...backsplash, sets: [{ ...backsplash.sets[0], name: ' ' }] }],
    ['too many openings', { ...backsplash, openings: Array(21).fill(backsplash.openings[0]) }],
    ['a spare in words', { ...backsplash, sparePercent: 'ten' }],
    ['more than a wall takes', `{"x":"${'x'.repeat(40_001)}"}`],
  ])('is not taken as %s', (_label, asked) => {
    expect(sent(asked).error?.issues.map(({ path }) => path[0])).toEqual(['asked']);
  });
});

describe('its paper', () => {
  test.each(['letter', 'a4'] as const)(
    'on %s says what to order and whose the setting is',
    async (paperSize) => {
      const kept = await keepTileWall(studio.maker, wall());
      const told = kept.ok ? await findTileWall(studio.maker.actor, kept.value.number) : null;
      if (!told) throw new Error('No wall was kept.');
      const gallery = { ...(await getGallery()), paperSize };
      const paper = await readPaper(await tileWallPdf(told, gallery));
      expect(paper.width).toBeGreaterThan(paper.height);
      expect(paper.fontsInside).toBe(true);
      expect(paper.text).toContain('licensed tile contractor');
      expect(paper.text).toMatch(/Scale 1 to \d+/);
      expect(paper.text).toContain('Heron 6 × 12 3/16 in: 1 on the wall 2');
      expect(paper.text).toContain('Heat:');
      expect(paper.text).toContain('Received by the setter');
    },
  );

  test('an upright wall of a title that our hands cannot write is still drawn', async () => {
    const asked = { ...backsplash, widthUm: 400_000, heightUm: 2_000_000, sets: [], openings: [] };
    const kept = await keepTileWall(studio.maker, wall({ title: '🦢🦢', asked }));
    const told = kept.ok ? await findTileWall(studio.maker.actor, kept.value.number) : null;
    if (!told) throw new Error('No wall was kept.');
    const paper = await readPaper(await tileWallPdf(told, await getGallery()));
    expect(paper.height).toBeGreaterThan(paper.width);
    expect(paper.text).toContain('Tiles on a wall');
  });
});
