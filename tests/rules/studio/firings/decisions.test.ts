import { describe, expect, test } from 'vitest';
import type { Day } from '@/lib/dates/rules';
import { decideLight, decideReading } from '@/lib/studio/rules/firings/lighting';
import { decideOpening, whatItTook, type LineTold } from '@/lib/studio/rules/firings/opening';
import { decideLine, decidePlan, mayChangeLoad } from '@/lib/studio/rules/firings/planning';
import { lightRefusalMessage, openingRefusalMessage } from '@/lib/studio/rules/firings/words';

const at = (hours: number) => new Date(Date.UTC(2026, 4, 4, hours));

const planned = { number: 7, stand: 'planned' as const, by: '' };

describe('planning', () => {
  test('refuses in order', () => {
    const facts = { name: 'The large one', cones: ['04', '6'], isRetired: false };
    expect(decidePlan(null, '6')).toMatchObject({ refusal: { code: 'no_such_kiln' } });
    expect(decidePlan({ ...facts, isRetired: true }, '10')).toMatchObject({
      refusal: { code: 'kiln_is_retired' },
    });
    expect(decidePlan(facts, '10')).toMatchObject({ refusal: { code: 'cone_not_fired_here' } });
    expect(decidePlan(facts, 'cone 6')).toEqual({ ok: true, value: '6' });
  });

  test('a load is changed until it is lit', () => {
    expect(mayChangeLoad(null)).toMatchObject({ refusal: { code: 'no_such_firing' } });
    expect(mayChangeLoad(planned).ok).toBe(true);
    for (const stand of ['called_off', 'lit', 'opened'] as const) {
      expect(mayChangeLoad({ ...planned, stand })).toMatchObject({
        refusal: { code: `${stand}_already` },
      });
    }
  });

  const there = {
    ...{ jobNumber: 12, free: 3, freePartIds: [] as string[], hasParts: false, hasSize: true },
  };
  const wanted = { pieces: 3, partIds: [] as string[], hasSize: false };

  test('a line refuses in order', () => {
    const code = (result: { ok: boolean }) => ('refusal' in result ? result.refusal : result);
    expect(code(decideLine(null, wanted, '6'))).toMatchObject({ code: 'waits_for_something_else' });
    expect(code(decideLine(there, { ...wanted, pieces: 4 }, '6'))).toMatchObject({
      code: 'too_many',
    });
    expect(code(decideLine({ ...there, hasSize: false }, wanted, '6'))).toMatchObject({
      code: 'size_not_known',
    });
    const numbered = { ...there, hasParts: true, freePartIds: ['a', 'b', 'c'] };
    expect(code(decideLine(numbered, { ...wanted, pieces: 2 }, '6'))).toMatchObject({
      code: 'say_which_parts_go',
    });
    expect(code(decideLine(numbered, { ...wanted, partIds: ['a', 'z'] }, '6'))).toMatchObject({
      code: 'parts_not_there',
    });
    expect(decideLine(numbered, wanted, '6')).toMatchObject({
      value: { partIds: ['a', 'b', 'c'] },
    });
    expect(decideLine(numbered, { ...wanted, partIds: ['b'] }, '6')).toMatchObject({
      value: { pieces: 1, partIds: ['b'] },
    });
  });
});

describe('lighting', () => {
  const line = { jobNumber: 12, title: 'Tern', pieces: 4, free: 4, partsAreThere: true };
  const fresh = {
    ...{ jobNumber: 12, title: 'Tern', pieces: 2, driedDays: 6, needsDays: 14 },
    leftOn: '2026-05-18' as Day,
  };
  const load = {
    ...{ ...planned, kiln: 'The large one', lines: [line], burning: null, tooFresh: [] },
  };

  test.each([
    ['no_such_firing', null],
    ['lit_already', { ...load, stand: 'lit' as const, by: 'Osip' }],
    ['nothing_laid_in', { ...load, lines: [] }],
    ['kiln_burns', { ...load, burning: { number: 6, by: 'Osip' } }],
    ['pieces_gone', { ...load, lines: [{ ...line, free: 3 }] }],
    ['pieces_gone', { ...load, lines: [{ ...line, partsAreThere: false }] }],
    ['are_they_dry', { ...load, tooFresh: [fresh] }],
  ])('is refused: %s', (code, facts) => {
    expect(decideLight(facts, '  ')).toMatchObject({ ok: false, refusal: { code } });
  });

  test('the answer about the drying is kept, and nothing where nothing was asked', () => {
    const answer = decideLight({ ...load, tooFresh: [fresh] }, ' warm to the cheek ');
    expect(answer).toEqual({ ok: true, value: { saidOfDry: 'warm to the cheek' } });
    expect(decideLight(load, 'whatever')).toEqual({ ok: true, value: { saidOfDry: '' } });
  });

  test('the question names the pieces and both figures', () => {
    const words = lightRefusalMessage({ code: 'are_they_dry', tooFresh: [fresh] });
    expect(words).toContain('Job 12, Tern: 2 pieces stood drying for 6 days, and 14 days');
  });

  test('a reading belongs to a lit kiln, after it was lit and before now', () => {
    const lit = { ...planned, stand: 'lit' as const, by: 'Osip', litAt: at(8) };
    const code = (facts: Parameters<typeof decideReading>[0], hour: number) => {
      const read = decideReading(facts, at(hour), at(12));
      return read.ok ? 'ok' : read.refusal.code;
    };
    expect(code(null, 9)).toBe('no_such_firing');
    expect(code({ ...lit, stand: 'opened' }, 9)).toBe('opened_already');
    expect(code({ ...lit, stand: 'planned', litAt: null }, 9)).toBe('not_lit_yet');
    expect([7, 8, 12, 13].map((hour) => code(lit, hour))).toEqual([
      ...['before_it_was_lit', 'ok', 'ok', 'not_read_yet'],
    ]);
  });
});

describe('opening', () => {
  const line = {
    ...{ lineId: 'l', jobId: 'j', jobNumber: 12, title: 'Tern', position: 4, pieces: 5 },
    partIds: [] as string[],
  };
  const load = {
    ...{ ...planned, stand: 'lit' as const, openBelowC: 93, coolAt: at(20), lines: [line] },
  };
  const told: LineTold = {
    ...{ lineId: 'l', second: 1, fireAgain: 1, lost: 1, parts: [], cause: 'shelf', note: 'foot' },
  };

  test('without a word all came out good', () => {
    const out = decideOpening(load, 60, []);
    expect(out).toMatchObject({ value: [{ outcome: 'good', pieces: 5, cause: null }] });
  });

  test('good is what nothing else was told of', () => {
    const out = decideOpening(load, 60, [told]);
    const counts = out.ok ? out.value.map((each) => [each.outcome, each.pieces, each.cause]) : [];
    expect(counts).toEqual([
      ['good', 2, null],
      ['second', 1, null],
      ['fire_again', 1, null],
      ['lost', 1, 'shelf'],
    ]);
  });

  test('parts come out by name', () => {
    const numbered = { ...line, pieces: 3, partIds: ['a', 'b', 'c'] };
    const parts = [{ partId: 'b', outcome: 'lost' as const }];
    const out = decideOpening({ ...load, lines: [numbered] }, 60, [{ ...told, parts }]);
    expect(out.ok && out.value.map((each) => [each.outcome, each.partIds])).toEqual([
      ['good', ['a', 'c']],
      ['lost', ['b']],
    ]);
  });

  test.each([
    ['no_such_firing', null, 60, told],
    ['opened_already', { ...load, stand: 'opened' as const }, 60, told],
    ['not_lit_yet', { ...load, stand: 'planned' as const }, 60, told],
    ['temperature_not_read', load, null, told],
    ['too_hot', load, 93, told],
    ['do_not_add_up', load, 60, { ...told, lost: 4 }],
    ['lost_without_cause', load, 60, { ...told, cause: null }],
    ['say_what_was_seen', load, 60, { ...told, cause: 'other' as const, note: ' ' }],
  ])('is refused: %s', (code, facts, readC, said) => {
    expect(decideOpening(facts, readC, [said])).toMatchObject({ ok: false, refusal: { code } });
  });

  test('who is too early is told when it will be cool, in the scale of the kiln', () => {
    const refused = decideOpening(load, 120, []);
    const words = refused.ok
      ? ''
      : openingRefusalMessage(refused.refusal, { scale: 'F', zone: 'UTC' });
    expect(words).toContain('It reads 248 °F');
    expect(words).toContain('about 4 May 2026, 8:00 pm');
  });

  test('what it took is metered where both readings are there, and else reckoned', () => {
    const of = { reckonedWh: 60_000, centsPerKwh: '20', wearCents: 500n };
    expect(whatItTook({ ...of, beforeKwh: '100', afterKwh: null })).toEqual({
      ...{ ok: true, value: { wattHours: 60_000, isMetered: false, costCents: 1_700n } },
    });
    expect(whatItTook({ ...of, beforeKwh: '100', afterKwh: '150.5' })).toMatchObject({
      value: { wattHours: 50_500, isMetered: true, costCents: 1_510n },
    });
    expect(whatItTook({ ...of, beforeKwh: '100', afterKwh: '99' })).toMatchObject({
      refusal: { code: 'meter_runs_backwards' },
    });
  });
});
