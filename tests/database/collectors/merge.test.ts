import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { mergeInput, setApartInput } from '@/lib/collectors/input/merge';
import { readConsents } from '@/lib/collectors/reads/consents';
import { idsOf } from '@/lib/collectors/reads/group';
import { listMerged } from '@/lib/collectors/reads/merges';
import { listTwice } from '@/lib/collectors/reads/twice';
import { mayWriteTo } from '@/lib/collectors/rules/consent';
import { mergeCollectors, setApart } from '@/lib/collectors/writes/merge';
import { dateFromDay } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { doing, noon, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;

const mergeForm = (keep: string, otherId: string, requestKey: string = randomUUID()) =>
  mergeInput.parse({ requestKey, oneId: keep, otherId, keep });

async function merged(keptId: string, goneId: string): Promise<string> {
  const result = await mergeCollectors(doing(gallery.clerk), mergeForm(keptId, goneId));
  if (!result.ok) throw new Error(result.refusal.code);
  const merge = await db().collectorMerge.findFirstOrThrow({ where: { goneId, undoneAt: null } });
  return merge.id;
}

const undone = (mergeId: string) =>
  setApart(doing(gallery.clerk), setApartInput.parse({ requestKey: randomUUID(), mergeId }));

describe('two entries', () => {
  beforeEach(async () => {
    await startAfresh();
    gallery = await openGallery();
  });

  async function somebody(name: string, over: Record<string, unknown> = {}): Promise<string> {
    return (await db().collector.create({ data: { name, createdAt: noon, ...over } })).id;
  }

  test('merged by two at once: one wins, the other is told', async () => {
    const [ida, corrin] = [await somebody('Ida'), await somebody('Ida Corrin')];
    const both = await Promise.all([
      mergeCollectors(doing(gallery.clerk), mergeForm(ida, corrin)),
      mergeCollectors(doing(gallery.second), mergeForm(corrin, ida)),
    ]);
    expect(both.filter((each) => each.ok)).toHaveLength(1);
    const told = both.flatMap((each) => (each.ok ? [] : [each.refusal.code]));
    expect(told).toEqual(['merged_already']);
    expect(await sql('SELECT 1 FROM "CollectorMerge"')).toHaveLength(1);
  });

  test('by the same form twice are merged once', async () => {
    const [ida, corrin] = [await somebody('Ida'), await somebody('Ida Corrin')];
    const form = mergeForm(ida, corrin);
    const clerk = doing(gallery.clerk);
    const both = await Promise.all([mergeCollectors(clerk, form), mergeCollectors(clerk, form)]);
    expect(both[0]).toEqual(both[1]);
    expect(await sql('SELECT 1 FROM "CollectorMerge"')).toHaveLength(1);
  });

  test('with differing terms stay two until one is settled', async () => {
    const [ida, corrin] = [await somebody('Ida'), await somebody('Ida Corrin')];
    const sinceOn = dateFromDay('2026-01-01');
    const terms = (collectorId: string, percent: string) =>
      db().tradeTerms.create({ data: { collectorId, way: 'discount', percent, sinceOn } });
    await terms(ida, '10');
    await terms(corrin, '15');
    const form = () => mergeCollectors(doing(gallery.clerk), mergeForm(ida, corrin));
    expect(await form()).toMatchObject({
      refusal: { code: 'terms_differ', oneGets: 'a trade discount of 10 in 100' },
    });
    await db().tradeTerms.delete({ where: { collectorId: corrin } });
    expect(await form()).toMatchObject({ ok: true });
  });

  test('are not merged by the maker, and nobody is merged with nobody', async () => {
    const ida = await somebody('Ida');
    const form = mergeForm(ida, randomUUID());
    expect(await mergeCollectors(doing(gallery.maker), form)).toMatchObject({
      refusal: { code: 'not_allowed' },
    });
    expect(await mergeCollectors(doing(gallery.clerk), form)).toMatchObject({
      refusal: { code: 'unknown_collector' },
    });
  });

  test('a chain goes along, and is set apart link by link', async () => {
    const [a, b, c] = [await somebody('A'), await somebody('B'), await somebody('C')];
    const inner = await merged(b, c);
    const outer = await merged(a, b);
    expect(await idsOf(db(), c)).toEqual([a, ...[b, c].toSorted()]);
    expect((await listMerged(gallery.clerk, a)).map(({ into }) => into).toSorted()).toEqual([
      ...['A', 'B'],
    ]);
    await undone(outer);
    expect(await idsOf(db(), c)).toEqual([b, c]);
    expect(await idsOf(db(), a)).toEqual([a]);
    await merged(a, b);
    await undone(inner);
    expect(await idsOf(db(), a)).toEqual([a, b]);
    expect(await idsOf(db(), c)).toEqual([c]);
  });

  test('the database itself lets nobody go in circles', async () => {
    const [a, b, c] = [await somebody('A'), await somebody('B'), await somebody('C')];
    await merged(a, b);
    const lay = (id: string, into: string) =>
      db()
        .collector.update({ where: { id }, data: { mergedIntoId: into } })
        .then(
          () => 'laid',
          (error: unknown) => constraintOf(error),
        );
    expect(await lay(a, b)).toBe('merged_into_a_living_one');
    expect(await lay(c, b)).toBe('merged_into_a_living_one');
    expect(await lay(a, c)).toBe('merged_into_a_living_one');
    expect(await lay(c, c)).toBe('collector_is_not_merged_into_itself');
  });

  test('a no under the other holds against an earlier yes, until they are asked anew', async () => {
    const [ida, corrin] = [await somebody('Ida'), await somebody('Ida Corrin')];
    const say = (collectorId: string, given: boolean, on: `2026-11-${number}`, at = noon) =>
      db().consent.create({
        data: {
          ...{ collectorId, to: 'email', given, how: 'call', staffId: gallery.clerk.id, at },
          saidOn: dateFromDay(on),
        },
      });
    await say(ida, true, '2026-11-01');
    await say(corrin, false, '2026-11-05');
    await merged(ida, corrin);
    const may = async () => mayWriteTo(await readConsents(db(), ida), 'email');
    expect(await may()).toBe(false);
    await say(ida, true, '2026-11-05', new Date(noon.getTime() + 60_000));
    expect(await may()).toBe(true);
  });

  test('likely the same are shown with why, and those set apart by hand come last', async () => {
    await somebody('Marit Oland', { phone: '(555) 010-0152', city: 'Fernhollow' });
    await somebody('Marit Olnad', { phone: '+1 555 010 0152', city: 'Fernhollow' });
    const [x, y] = [
      await somebody('Xenia', { email: 'x@x.example' }),
      await somebody('Yusra', { email: 'X@x.example', city: 'Fernhollow' }),
    ];
    await undone(await merged(x, y));
    const pairs = await listTwice(gallery.clerk);
    expect(pairs).toMatchObject([
      { one: { name: 'Marit Oland' }, other: { name: 'Marit Olnad' }, setApartOn: null },
      { one: { name: 'Xenia' }, other: { name: 'Yusra' }, setApartOn: '2026-11-20' },
    ]);
    expect(pairs[0]?.why).toHaveLength(2);
  });
});
