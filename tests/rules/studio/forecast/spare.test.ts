import { describe, expect, test } from 'vitest';
import { forecast } from '@/lib/studio/rules/forecast/forecast';
import type { ForecastJob } from '@/lib/studio/rules/forecast/model';
import { watchFuture } from '@/lib/studio/rules/forecast/watch';
import { aJob, aStep, aStudio, today } from './a-load';

const fixed = (days: number) => [days, days, days] as const;
const atBench = (days: number) => aStep('modelling', { bench: 'bench' }, fixed(days));

function readyOn(job: ForecastJob) {
  const said = forecast(aStudio(), [job], today, { futures: 20, seed: 3, sightDays: 400 });
  return said.ok ? said.value[0]?.readyOn.in80 : said.refusal.code;
}

// The first of June 2026 is a Monday.
describe('more pieces than are wanted', () => {
  const drying = aStep('drying', { kind: 'dry' }, fixed(10), { lossRate: 1 });
  const standings = (first: number, second: number) =>
    [
      { position: 1, pieces: first, sinceOn: today, heldBy: null },
      { position: 2, pieces: second, sinceOn: today, heldBy: null },
    ] as const;
  test('it is ready when enough are finished, and a lost spare one is not begun anew', () => {
    const steps = [drying, atBench(2)];
    const spare = aJob({ id: 'a', pieces: 3, wanted: 2, steps, standings: standings(1, 2) });
    expect(readyOn(spare)).toBe('2026-06-03');
    const late = aJob({ id: 'late', steps: [aStep('drying', { kind: 'dry' }, fixed(30))] });
    const future = { seed: 1, future: 0, sightDays: 60 };
    const all = watchFuture(aStudio(), [spare, late], today, future).happenings;
    expect(all.filter((one) => one.lost > 0)).toHaveLength(1);
    expect(
      all.filter((one) => one.what === 'arrives' && one.jobId === 'a' && one.position === 1),
    ).toEqual([]);
  });
  test('but one that is wanted is', () => {
    const half = aStep('drying', { kind: 'dry' }, fixed(1), { lossRate: 0.5 });
    const job = aJob({ id: 'a', pieces: 3, wanted: 3, steps: [half] });
    const future = { seed: 1, future: 0, sightDays: 200 };
    const all = watchFuture(aStudio(), [job], today, future).happenings;
    const count = (what: string) =>
      all.filter((one) => one.what === what).reduce((sum, one) => sum + one.pieces, 0);
    const lost = all.reduce((sum, one) => sum + one.lost, 0);
    expect(count('finished')).toBe(3);
    expect(count('arrives')).toBe(3 + lost);
  });
  test('what is begun together does not wait for a spare one', () => {
    const steps = [
      aStep('drying', { kind: 'dry' }, fixed(10)),
      aStep('modelling', { bench: 'bench' }, fixed(1), { isTogether: true }),
    ];
    const job = aJob({ id: 'a', pieces: 3, wanted: 2, steps, standings: standings(1, 2) });
    expect(readyOn(job)).toBe('2026-06-02');
    expect(readyOn({ ...job, wanted: 3 })).toBe('2026-06-12');
  });
});
