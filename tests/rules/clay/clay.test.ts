import { describe, expect, test } from 'vitest';
import {
  clayRefusalMessage,
  clayWeightG,
  firedUm,
  measuredShrinkagePercent,
  wetClayG,
  wetUm,
  type ClayRefusal,
} from '@/lib/clay/rules';
import { absorptionOf } from '@/lib/clay/rules/absorption';
import { testedBody } from '@/lib/clay/rules/body';
import { mouldHoldsMl, slipToMix } from '@/lib/clay/rules/slip';

const slab = {
  lengthUm: 400_000,
  widthUm: 400_000,
  thicknessUm: 25_000,
  densityGPerCm3: '1.9',
};

const mould = { lengthUm: 1, widthUm: 1, depthUm: 1, shrinkagePercent: '8', filledPercent: '0' };
const pour = { holdsMl: 100, casts: 1, sparePercent: '0', densityGPerMl: '1.75' };

describe('sizes that shrink', () => {
  test.each([
    ['a ten-inch tile', 254_000, '8', 276_087],
    ['no shrinkage', 254_000, '0', 254_000],
    ['a decimal shrinkage', 254_000, '8.5', 277_596],
    ['the most shrinkage', 100_000, '49.9', 199_601],
  ])('%s', (_label, fired, percent, wet) => {
    expect(wetUm(fired, percent)).toEqual({ ok: true, value: wet });
    expect(firedUm(wet, percent)).toEqual({ ok: true, value: fired });
  });

  test('adding the percentage would make the piece too small', () => {
    expect(wetUm(250_000, '12')).toEqual({ ok: true, value: 284_091 });
  });

  test('a test bar shows its shrinkage', () => {
    expect(measuredShrinkagePercent(100_000, 91_750)).toEqual({ ok: true, value: '8.25' });
    expect(measuredShrinkagePercent(100_000, 100_000)).toEqual({ ok: true, value: '0.00' });
  });
});

describe('weights', () => {
  test('volume times density, to the nearest gram', () => {
    expect(clayWeightG(slab)).toEqual({ ok: true, value: 7_600 });
    expect(clayWeightG({ ...slab, thicknessUm: 25_003 })).toEqual({ ok: true, value: 7_601 });
  });

  test('wet clay is rounded up so that it is never short', () => {
    expect(wetClayG(1_000, '27', '18')).toEqual({ ok: true, value: 1_617 });
    expect(wetClayG(1_000, '0', '0')).toEqual({ ok: true, value: 1_000 });
    expect(wetClayG(100, '50', '20')).toEqual({ ok: true, value: 240 });
  });
});

describe('what is refused', () => {
  const refused: Record<ClayRefusal['code'], readonly { ok: boolean; refusal?: ClayRefusal }[]> = {
    side_not_above_zero: [
      wetUm(0, '8'),
      wetUm(-5, '8'),
      wetUm(Number.NaN, '8'),
      wetUm(0, 'much'),
      firedUm(0, '8'),
      measuredShrinkagePercent(0, 10),
      measuredShrinkagePercent(10, 0),
      clayWeightG({ ...slab, lengthUm: 0 }),
      clayWeightG({ ...slab, widthUm: -1 }),
      clayWeightG({ ...slab, thicknessUm: 0, densityGPerCm3: 'light' }),
    ],
    weight_not_above_zero: [wetClayG(0, '27', '18'), wetClayG(-1, 'x', 'y')],
    shrinkage_out_of_range: [
      wetUm(254_000, '50'),
      wetUm(254_000, '-1'),
      wetUm(254_000, 'a tenth'),
      firedUm(254_000, '100'),
      measuredShrinkagePercent(100_000, 101_000),
      measuredShrinkagePercent(100_000, 50_000),
    ],
    density_out_of_range: ['0', '0.49', '5.01', '-2', 'heavy'].map((densityGPerCm3) =>
      clayWeightG({ ...slab, densityGPerCm3 }),
    ),
    share_out_of_range: [wetClayG(1_000, '100', '18'), wetClayG(1_000, '27', '-1')],
    weights_do_not_fit: [testedBody({ dryG: '100', soakedG: '105', hungInWaterG: '100' })],
    filled_out_of_range: [mouldHoldsMl(mould)],
    nothing_to_pour: [slipToMix({ ...pour, holdsMl: 0 })],
    slip_density_out_of_range: [slipToMix({ ...pour, densityGPerMl: '1' })],
  };
  const rows = Object.entries(refused).flatMap(([code, answers]) =>
    answers.map((answer, place) => [code, place, answer] as const),
  );
  test.each(rows)('%s, row %d', (code, _place, answer) => {
    expect(answer.refusal?.code ?? 'taken').toBe(code);
    if (answer.refusal) expect(clayRefusalMessage(answer.refusal)).toMatch(/^[A-Z].*\.$/);
  });

  test('the edges of density are taken', () => {
    expect([
      clayWeightG({ ...slab, densityGPerCm3: '0.5' }).ok,
      clayWeightG({ ...slab, densityGPerCm3: '5' }).ok,
    ]).toEqual([true, true]);
  });

  test('the side that is wrong is named', () => {
    expect(clayWeightG({ ...slab, widthUm: 0 })).toEqual({
      ok: false,
      refusal: { code: 'side_not_above_zero', side: 'width' },
    });
  });
});

describe('absorption', () => {
  test.each(['-1', '100.1', 'damp', ''])('%j percent is refused', (percent) => {
    expect(absorptionOf(percent)).toEqual({
      ok: false,
      refusal: { code: 'absorption_out_of_range', percent },
    });
  });

  test('the warning grows with the water a body takes up', () => {
    const warnings = ['3', '3.01', '7.01'].map((percent) => {
      const read = absorptionOf(percent);
      return read.ok && read.value.frostWarning;
    });
    expect(warnings).toEqual([
      null,
      expect.stringMatching(/tested/),
      expect.stringMatching(/never freezes/),
    ]);
  });
});
