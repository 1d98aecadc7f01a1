import { expect, test } from 'vitest';
import type { Day } from '@/lib/dates/rules';
import type { Move } from '@/lib/studio/rules';
import { daysTooLong, pegProgress, readyDays } from '@/lib/studio/rules/days';
import {
  benchPlace,
  cautionsAt,
  likelyDaysOf,
  pegs,
  type StepDays,
} from '@/lib/studio/rules/routes';
import { routes } from '../../helpers/usual-routes';

// A short route of our own, so that the sums can be done in the head.
const steps: StepDays[] = [
  { name: 'pressing', peg: 'clay', shortestDays: 1, likelyDays: 2, longestDays: 4 },
  { name: 'drying', peg: 'dry', shortestDays: 5, likelyDays: 9, longestDays: 14 },
  { name: 'sorting', peg: 'finished', shortestDays: 1, likelyDays: 1, longestDays: 2 },
];

function job(...rows: [from: number, to: number, pieces: number, on: Day][]) {
  const moves = rows.map(([fromPosition, toPosition, pieces, movedOn], index): Move => ({
    id: String(index + 1),
    ...{ fromPosition, toPosition, pieces, movedOn },
    undoesId: null,
  }));
  return { pieces: 10, steps, moves };
}

test.each<[string, Day, number]>([
  ['on the day they came', '2026-05-01', 0],
  ['on the last of the longest days', '2026-05-15', 0],
  ['a day later', '2026-05-16', 1],
  ['over the end of the month', '2026-06-01', 17],
])('pieces stand too long at drying: %s', (_label, todayOn, days) => {
  expect(daysTooLong({ longestDays: 14 }, '2026-05-01', todayOn)).toBe(days);
});

test('pieces that never moved do not stand too long', () => {
  expect(daysTooLong({ longestDays: 0 }, null, '2026-05-16')).toBe(0);
});

test('a job that is not begun takes the whole route from today', () => {
  expect(readyDays(job(), '2026-05-01')).toEqual({
    shortestOn: '2026-05-08',
    likelyOn: '2026-05-13',
    longestOn: '2026-05-21',
  });
});

test('days already spent at the step count, but never more than the step has', () => {
  const drying = job([0, 1, 10, '2026-04-20'], [1, 2, 10, '2026-04-21']);
  expect(readyDays(drying, '2026-04-27')).toEqual({
    shortestOn: '2026-04-28',
    likelyOn: '2026-05-01',
    longestOn: '2026-05-07',
  });
});

test('the pieces furthest behind decide', () => {
  const apart = job([0, 1, 10, '2026-05-01'], [1, 2, 9, '2026-05-01']);
  expect(readyDays(apart, '2026-05-01')?.likelyOn).toBe('2026-05-13');
});

test('finished pieces have no day to be ready', () => {
  const done = job(
    [0, 1, 10, '2026-05-01'],
    [1, 2, 10, '2026-05-02'],
    [2, 3, 10, '2026-05-10'],
    [3, 4, 10, '2026-05-11'],
  );
  expect(readyDays(done, '2026-05-12')).toBeNull();
});

test('a peg is done when the last piece has left its last step, on that day', () => {
  const apart = job(
    [0, 1, 10, '2026-05-01'],
    [1, 2, 4, '2026-05-03'],
    [1, 2, 6, '2026-05-05'],
    [2, 3, 4, '2026-05-14'],
  );
  expect(pegProgress(apart)).toEqual([
    { peg: 'clay', state: 'done', doneOn: '2026-05-05' },
    { peg: 'dry', state: 'now', doneOn: null },
    { peg: 'bisque', state: 'none', doneOn: null },
    { peg: 'glaze', state: 'none', doneOn: null },
    { peg: 'assembled', state: 'none', doneOn: null },
    { peg: 'finished', state: 'now', doneOn: null },
  ]);
});

test('nothing is done or under way before the first move', () => {
  const states = pegProgress(job()).map((progress) => progress.state);
  expect(states).toEqual(['to_come', 'to_come', 'none', 'none', 'none', 'to_come']);
});

test.each(Object.entries(routes))('the route of %s goes from clay to finished', (_name, route) => {
  const places = route.map((step) => pegs.indexOf(step.peg));
  expect(places).toEqual(places.toSorted((one, other) => one - other));
  expect(route[0]?.peg).toBe('clay');
  expect(route.at(-1)?.peg).toBe('finished');
  expect(new Set(route.map((step) => step.name)).size).toBe(route.length);
  for (const step of route) {
    expect(step.likelyDays).toBeGreaterThanOrEqual(step.shortestDays);
    expect(step.longestDays).toBeGreaterThanOrEqual(step.likelyDays);
  }
});

test.each(Object.entries(routes))('%s warns of steam before the bisque kiln', (_name, route) => {
  const bisque = route.find((step) => step.peg === 'bisque');
  expect(bisque?.caution).toContain('bone-dry');
  expect(bisque?.caution).toContain('licensed electrician');
});

test.each(Object.entries(routes))('%s warns of steam while pieces still dry', (_name, route) => {
  const drying = route.findIndex((step) => step.name === 'drying') + 1;
  expect(cautionsAt(route, drying).join(' ')).toContain('cold to the cheek is still wet');
  expect(cautionsAt(route, drying + 1)).toHaveLength(1);
  expect(cautionsAt(route, 0)).toEqual([]);
  expect(cautionsAt(route, route.length + 1)).toEqual([]);
});

test('the bench is in the order of the work, whatever the route', () => {
  const all = Object.values(routes).flatMap((route) =>
    route.map((step, at) => ({
      name: step.name,
      peg: step.peg,
      position: at + 1,
      steps: route.length,
    })),
  );
  const order = all.toSorted((one, other) => benchPlace(one) - benchPlace(other));
  const first = (name: string) => order.findIndex((step) => step.name === name);
  expect(first('pressing')).toBeLessThan(first('fettling'));
  expect(first('fettling')).toBeLessThan(first('drying'));
  expect(first('glazing')).toBeLessThan(first('the glaze kiln'));
  expect(first('curing')).toBeLessThan(first('sorting'));
  const last = { peg: 'clay', position: 40, steps: 40 } as const;
  expect(benchPlace(last)).toBeLessThan(benchPlace({ ...last, peg: 'dry', position: 1 }));
});

// trade practice, by rule of thumb: tile four to five weeks, ware three to five, relief ten to
// sixteen, from clay to finished with nothing in the way (common practice). A kiln of two turns a week
// is waited for three days on average, which the route's own days leave out.
test.each([
  ['slab_relief', 70, 112],
  ['slip_cast', 28, 35],
  ['press_moulded', 26, 35],
  ['thrown', 21, 35],
] as const)('the likely days of %s add up to what makers say', (technique, least, most) => {
  const firings = routes[technique].filter((step) => step.kind === 'fire').length;
  const days = likelyDaysOf(routes[technique]) + firings * 3;
  expect(days).toBeGreaterThanOrEqual(least);
  expect(days).toBeLessThanOrEqual(most);
});
