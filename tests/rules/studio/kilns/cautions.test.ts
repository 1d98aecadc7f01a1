import { expect, test } from 'vitest';
import { cautionsFor, studioCautions, type Moment } from '@/lib/studio/rules/kilns/cautions';

test('each caution has a key of its own, whole sentences, and says what it rests on', () => {
  expect(new Set(studioCautions.map((each) => each.key)).size).toBe(studioCautions.length);
  for (const { words, basis, at } of studioCautions) {
    expect(words).toMatch(/^[A-Z].*\.$/);
    expect(words.length).toBeLessThan(220);
    expect(basis).toMatch(/\.$/);
    expect(at.length).toBeGreaterThan(0);
  }
});

test.each<[Moment, string[]]>([
  ['loading', ['steam']],
  ['firing', ['fumes', 'heat']],
  ['opening', ['heat']],
  ['unloading', ['sharp_edges']],
  ['putting_in_a_kiln', ['electrician']],
  ['mixing_dry', ['silica', 'metals']],
  ['sanding', ['silica']],
  ['cleaning', ['silica']],
  ['glazing', ['metals', 'not_for_food']],
  ['selling_ware', ['not_for_food']],
])('at %s one minds %j', (moment, keys) => {
  expect(cautionsFor(moment).map((each) => each.key)).toEqual(keys);
});

test('they defer to makers, codes, licences and advisers', () => {
  const all = studioCautions.map(({ words, basis }) => `${words} ${basis}`).join(' ');
  for (const who of ['maker’s', 'local code', 'licensed electrician', 'advises', 'laboratory']) {
    expect(all).toContain(who);
  }
});
