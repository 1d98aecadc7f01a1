import { expect, test } from 'vitest';
import type { Day } from '@/lib/dates/rules';
import type { TaxRefusal } from '@/lib/tax/rules/refusals';
import { taxRefusalMessage } from '@/lib/tax/rules/refusals';
import {
  decideTreatment,
  treatedKinds,
  treatmentWords,
  type DatedTreatment,
} from '@/lib/tax/rules/treatment-days';

const kept = (kind: DatedTreatment['kind'], fromOn: Day, untilOn: Day | null = null) => ({
  ...{ id: `${kind} ${fromOn}`, kind, fromOn, untilOn },
  ...{ treatment: 'taxed' as const, shareBy: null },
});
const all: DatedTreatment[] = [
  kept('shipping', '2025-01-01', '2026-01-01'),
  kept('shipping', '2026-01-01'),
  kept('installation', '2025-01-01', '2026-07-01'),
];

test('the first of its kind closes nothing', () => {
  const decided = decideTreatment(all, { kind: 'design_work', fromOn: '2026-03-01' });
  expect(decided).toEqual({ ok: true, value: null });
});

test('a new one closes the open one of its kind', () => {
  const decided = decideTreatment(all, { kind: 'shipping', fromOn: '2026-12-01' });
  expect(decided).toMatchObject({ ok: true, value: { id: 'shipping 2026-01-01' } });
});

test('a kind may begin again on the very day on which it ended', () => {
  const decided = decideTreatment(all, { kind: 'installation', fromOn: '2026-07-01' });
  expect(decided).toEqual({ ok: true, value: null });
});

test.each<[string, DatedTreatment['kind'], Day]>([
  ['on the day the open one begins', 'shipping', '2026-01-01'],
  ['before the open one', 'shipping', '2025-06-01'],
  ['within one that has its end', 'installation', '2026-06-30'],
])('one cannot begin %s', (_label, kind, fromOn) => {
  expect(decideTreatment(all, { kind, fromOn })).toMatchObject({
    ok: false,
    refusal: { code: 'treatment_follows_already', kind },
  });
});

test('every kind can be said in a full sentence', () => {
  for (const kind of treatedKinds) {
    expect(treatmentWords({ kind, treatment: 'not_taxed', shareBy: null })).toBe('Not taxed.');
  }
  expect(treatmentWords({ kind: 'shipping', treatment: 'taxed', shareBy: 'by_weight' })).toBe(
    'Taxed. Brought together with untaxed pieces, it is shared by weight.',
  );
});

const refusals: Record<TaxRefusal['code'], TaxRefusal> = {
  place_unknown: { code: 'place_unknown' },
  place_is_there: { code: 'place_is_there', name: 'Harrow Inlet' },
  state_unknown: { code: 'state_unknown', state: 'Fenmark' },
  state_is_home: { code: 'state_is_home', state: 'Alderland' },
  treatment_follows_already: {
    ...{ code: 'treatment_follows_already', kind: 'shipping', fromOn: '2026-01-01' },
  },
  rate_follows_already: {
    ...{ code: 'rate_follows_already', authority: 'State', fromOn: '2026-01-01' },
  },
  rates_above_hundred: { code: 'rates_above_hundred', togetherPercent: '101' },
  rate_unknown: { code: 'rate_unknown' },
  rate_ends_before_it_begins: { code: 'rate_ends_before_it_begins', fromOn: '2026-01-01' },
};

test.each(Object.values(refusals))('$code is told in a full sentence', (refusal) => {
  expect(taxRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});
