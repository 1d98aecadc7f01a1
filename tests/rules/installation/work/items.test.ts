import { describe, expect, test } from 'vitest';
import { appointmentKinds } from '@/lib/installation/rules/diary/kinds';
import { handsWords } from '@/lib/installation/rules/work/hands';
import { isItemKey, itemsOf, workItemKeys } from '@/lib/installation/rules/work/items';
import { loadFor, toolsFor } from '@/lib/installation/rules/work/load';
import { workStages, type WorkFacts } from '@/lib/installation/rules/work/stages';

const indoors: WorkFacts = {
  ...{ kind: 'hanging', weightG: 45_360, wall: 'wood_studs' },
  ...{ isOutdoors: false, isOverPeople: false, quakes: false },
};
const keys = (change: Partial<WorkFacts> = {}) =>
  itemsOf({ ...indoors, ...change }).map(({ key }) => key);

describe('the ticks of a day', () => {
  test('of a hanging go from before leaving to the hand-over, in the order they are done', () => {
    const stages = itemsOf(indoors).map(({ stage }) => workStages.indexOf(stage));
    expect(stages).toEqual(stages.toSorted((one, other) => one - other));
    expect(new Set(stages).size).toBe(workStages.length);
    expect(keys()).toEqual(
      expect.arrayContaining(['wall_as_surveyed', 'fixings_in', 'stop_screw_in']),
    );
  });

  test('of a delivery or a fetching are fewer, and have no wall and no fixings', () => {
    for (const kind of ['delivery', 'fetching'] as const) {
      const items = itemsOf({ ...indoors, kind });
      expect(items.length).toBeLessThan(itemsOf(indoors).length);
      expect(items.some(({ stage }) => stage === 'fixings')).toBe(false);
      expect(items.map(({ key }) => key)).toContain('parts_counted');
    }
    expect(keys({ kind: 'fetching' })).not.toContain('way_clear');
  });

  test('of every kind of appointment are some', () => {
    for (const kind of appointmentKinds) expect(keys({ kind }).length).toBeGreaterThan(1);
  });

  test.each([
    ['dust of masonry', { wall: 'brick' }, 'dust_kept'],
    ['dust of old plaster', { wall: 'plaster_on_lath' }, 'dust_kept'],
    ['a second hold over people', { isOverPeople: true }, 'held_below'],
    ['a second hold where the ground shakes', { quakes: true }, 'held_below'],
    ['water outdoors', { isOutdoors: true }, 'water_runs_off'],
    ['water at a look outdoors', { kind: 'after_care', isOutdoors: true }, 'water_looked'],
  ] as const)('ask for %s, and only there', (_label, change, key) => {
    expect(keys(change)).toContain(key);
    expect(keys({ kind: 'kind' in change ? change.kind : 'hanging' })).not.toContain(key);
  });

  test('carry their caution at the step, and say it by the wall', () => {
    const caution = (change: Partial<WorkFacts>, key: string) =>
      itemsOf({ ...indoors, ...change }).find((item) => item.key === key)?.caution;
    expect(caution({}, 'wall_as_surveyed')).toContain('licensed contractor');
    expect(caution({ wall: 'plaster_on_lath' }, 'dust_kept')).toContain('lead');
    expect(caution({ wall: 'concrete' }, 'dust_kept')).toContain('tension');
    expect(caution({ wall: 'steel_studs' }, 'fixings_in')).toContain('steel studs');
    expect(caution({}, 'tools_loaded')).toBeNull();
  });

  test('are known by their keys alone', () => {
    expect(isItemKey('stop_screw_in')).toBe(true);
    expect(isItemKey('toString')).toBe(false);
    expect(new Set(workItemKeys).size).toBe(workItemKeys.length);
  });
});

test.each([
  [null, 'Nobody knows'],
  [1, 'One person'],
  [22_680, 'One person'],
  [22_681, 'At least two people'],
  [45_360, 'At least three people'],
  [68_040, 'lift table'],
])('%s g take the hands that practice says', (weightG, words) => {
  expect(handsWords(weightG)).toContain(words);
});

test('what rides along fits the wall, the weather and the kind of day', () => {
  expect(toolsFor({ ...indoors, wall: 'concrete' })).toContain('hammer drill');
  expect(toolsFor(indoors)).not.toContain('hammer drill');
  expect(toolsFor(indoors).join()).toContain('third pair of hands');
  expect(toolsFor({ ...indoors, weightG: null }).join()).not.toContain('third pair');
  expect(loadFor({ ...indoors, isOutdoors: true }).join()).toContain('stainless');
  expect(loadFor({ ...indoors, kind: 'fetching' }).join()).not.toContain('cleats');
  for (const kind of appointmentKinds) {
    expect(loadFor({ ...indoors, kind }).length).toBeGreaterThan(0);
    expect(toolsFor({ ...indoors, kind }).length).toBeGreaterThan(0);
  }
});
