import { fc, test as propTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { sumCents } from '@/lib/money/rules';
import {
  energyRefusalMessage,
  firingCostCents,
  firingWh,
  meteredWh,
  shareFiring,
  type EnergyRefusal,
  type InTheKiln,
} from '@/lib/studio/rules/kilns/energy';
import { earnedByTurn, turnRefusalMessage } from '@/lib/studio/rules/kilns/turns';

const stage = (minutes: number, dutyPercent: string) => ({ minutes, dutyPercent });
const cube = (id: string, pieces: number, side: number): InTheKiln => ({
  ...{ id, pieces, widthUm: side, heightUm: side, depthUm: side },
});
const codeOf = (answer: { ok: boolean; refusal?: EnergyRefusal }) => answer.refusal?.code;

describe('what a firing takes', () => {
  test('adds its stages up, each by the time the elements are on', () => {
    const stages = [stage(420, '15'), stage(540, '50')];
    expect(firingWh({ powerW: 11_520, stages })).toEqual({ ok: true, value: 63_936 });
    expect(firingWh({ powerW: 1_000, stages: [stage(90, '33.3'), stage(30, '100')] })).toEqual({
      ...{ ok: true, value: 1_000 },
    });
  });

  test('or is read off the meter', () => {
    expect(meteredWh('10482.5', '10546.4')).toEqual({ ok: true, value: 63_900 });
    expect(meteredWh('7', '7')).toEqual({ ok: true, value: 0 });
  });

  test('costs its kWh and the wear', () => {
    const of = { wattHours: 92_160, centsPerKwh: '9', wearCents: 0n };
    expect(firingCostCents(of)).toEqual({ ok: true, value: 829n });
    expect(firingCostCents({ ...of, wearCents: 500n })).toEqual({ ok: true, value: 1_329n });
    expect(firingCostCents({ ...of, centsPerKwh: '15.25' })).toEqual({ ok: true, value: 1_405n });
  });

  test.each([
    [firingWh({ powerW: 0, stages: [] }), 'power_out_of_range'],
    [firingWh({ powerW: 11.5, stages: [stage(60, '50')] }), 'power_out_of_range'],
    [firingWh({ powerW: 11_520, stages: [] }), 'minutes_out_of_range'],
    [firingWh({ powerW: 11_520, stages: [stage(0, '0')] }), 'minutes_out_of_range'],
    [firingWh({ powerW: 11_520, stages: [stage(60, '50'), stage(60, '0')] }), 'duty_out_of_range'],
    [firingWh({ powerW: 11_520, stages: [stage(60, '100.1')] }), 'duty_out_of_range'],
    [firingWh({ powerW: 11_520, stages: [stage(60, 'half')] }), 'duty_out_of_range'],
    [meteredWh('-1', '5'), 'not_a_meter_reading'],
    [meteredWh('5', 'six'), 'not_a_meter_reading'],
    [meteredWh('6', '5'), 'meter_runs_backwards'],
    [firingCostCents({ wattHours: 1, centsPerKwh: '-1', wearCents: 0n }), 'not_a_rate'],
    [firingCostCents({ wattHours: 1, centsPerKwh: 'dear', wearCents: 0n }), 'not_a_rate'],
    [shareFiring(1_900n, []), 'nothing_in_the_kiln'],
    [shareFiring(1_900n, [cube('a', 0, 10)]), 'size_not_above_zero'],
    [shareFiring(1_900n, [cube('a', 1, 10), cube('b', 1, 0)]), 'size_not_above_zero'],
  ])('row %#: %s', (answer, code) => {
    expect(codeOf(answer)).toBe(code);
    if (!answer.ok) expect(energyRefusalMessage(answer.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('what of it falls to a piece', () => {
  test('goes by the room that it takes up', () => {
    const shares = shareFiring(1_900n, [cube('large', 1, 20), cube('small', 3, 10)]);
    expect(shares).toMatchObject({
      ok: true,
      value: [
        { id: 'large', cents: 1_382n, eachCents: [1_382n] },
        { id: 'small', cents: 518n, eachCents: [173n, 173n, 172n] },
      ],
    });
  });

  const line = fc.record({
    id: fc.uuid(),
    pieces: fc.integer({ min: 1, max: 90 }),
    widthUm: fc.integer({ min: 1, max: 600_000 }),
    heightUm: fc.integer({ min: 1, max: 600_000 }),
    depthUm: fc.integer({ min: 1, max: 600_000 }),
  });

  propTest.prop([
    fc.bigInt({ min: 0n, max: 1_000_000n }),
    fc.array(line, { minLength: 1, maxLength: 20 }),
  ])('and all of it is borne by all that was fired', (cost, load) => {
    const shares = shareFiring(cost, load);
    if (!shares.ok) throw new Error(shares.refusal.code);
    expect(sumCents(shares.value.map((share) => share.cents))).toBe(cost);
    for (const [at, { cents, eachCents }] of shares.value.entries()) {
      expect(eachCents).toHaveLength(load[at]?.pieces ?? 0);
      expect(sumCents(eachCents)).toBe(cents);
    }
  });
});

describe('what a turn of the kiln earned', () => {
  const load = (used: number, holds = 1_000) => ({ used: BigInt(used), holds: BigInt(holds) });

  test('is what came in over the turns that were taken', () => {
    const eight = Array.from({ length: 8 }, () => load(1_000));
    expect(earnedByTurn(1_140_000n, eight)).toEqual({
      ...{ ok: true, value: { turnThousandths: 8_000, centsPerTurn: 142_500n } },
    });
  });

  test('a load that is partly filled counts for its part, whatever the kiln measures', () => {
    const mixed = [load(500), load(1, 4), load(1, 3)];
    expect(earnedByTurn(65_000n, mixed)).toEqual({
      ...{ ok: true, value: { turnThousandths: 1_083, centsPerTurn: 60_000n } },
    });
  });

  test.each([
    [[], 'no_turns'],
    [[load(1), load(1_001)], 'more_than_it_holds'],
    [[load(0)], 'more_than_it_holds'],
  ])('row %#: %s', (loads, code) => {
    const earned = earnedByTurn(1n, loads);
    expect(earned).toMatchObject({ ok: false, refusal: { code } });
    expect(!earned.ok && turnRefusalMessage(earned.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});
