import { describe, expect, test } from 'vitest';
import { wetClayG, type ClayRefusal } from '@/lib/clay/rules';
import { testedBody, totalShrinkagePercent } from '@/lib/clay/rules/body';
import { mouldHoldsMl, slipToMix, type MouldedPiece } from '@/lib/clay/rules/slip';
import { pieceWeights, soakedWeightG, wetSides, type FiredPiece } from '@/lib/clay/rules/weights';

type Answer = { ok: boolean; refusal?: ClayRefusal };
const codeOf = (answer: Answer) => answer.refusal?.code;

const aPiece = (over: Partial<FiredPiece> = {}): FiredPiece => ({
  ...{ lengthUm: 400_000, widthUm: 400_000, thicknessUm: 25_000, shrinkagePercent: '12' },
  ...{ wetDensityGPerCm3: '1.95', firedDensityGPerCm3: '1.9', absorptionPercent: '10' },
  ...over,
});

describe('what a piece weighs on its way', () => {
  test('wet, fired, and fired and soaked', () => {
    expect(pieceWeights(aPiece())).toEqual({
      ok: true,
      value: {
        wet: { lengthUm: 454_545, widthUm: 454_545, thicknessUm: 28_409 },
        ...{ wetG: 11_446, firedG: 7_600, soakedG: 8_360 },
      },
    });
  });

  test('the wet piece is about what common practice has ready before scrap', () => {
    const worked = pieceWeights(aPiece());
    const ready = wetClayG(7_600, '27', '0');
    const apart = worked.ok && ready.ok ? worked.value.wetG / ready.value : 0;
    expect(apart).toBeGreaterThan(0.9);
    expect(apart).toBeLessThan(1.15);
  });

  test('all three sides shrink', () => {
    const fired = { lengthUm: 88_000, widthUm: 44_000, thicknessUm: 8_800 };
    expect(wetSides(fired, '12')).toEqual({
      ok: true,
      value: { lengthUm: 100_000, widthUm: 50_000, thicknessUm: 10_000 },
    });
  });

  test('what takes up no water weighs the same soaked', () => {
    expect(soakedWeightG(10_000, '0')).toEqual({ ok: true, value: 10_000 });
    expect(soakedWeightG(10_001, '4.5')).toEqual({ ok: true, value: 10_451 });
  });

  test.each<[Partial<FiredPiece>, ClayRefusal['code']]>([
    [{ widthUm: 0, shrinkagePercent: '60', firedDensityGPerCm3: '9' }, 'side_not_above_zero'],
    [{ shrinkagePercent: '50', firedDensityGPerCm3: '9' }, 'shrinkage_out_of_range'],
    [{ firedDensityGPerCm3: '0.4', absorptionPercent: '-1' }, 'density_out_of_range'],
    [{ wetDensityGPerCm3: '5.1', absorptionPercent: '-1' }, 'density_out_of_range'],
    [{ absorptionPercent: '100' }, 'share_out_of_range'],
    [{ absorptionPercent: '-1' }, 'share_out_of_range'],
    [{ absorptionPercent: 'some' }, 'share_out_of_range'],
  ])('refuses in this order: %j', (over, code) => {
    expect(codeOf(pieceWeights(aPiece(over)))).toBe(code);
  });

  test('a weight of nothing is refused', () => {
    expect(codeOf(soakedWeightG(0, '200'))).toBe('weight_not_above_zero');
  });
});

describe('what is measured of a clay', () => {
  test('its two shrinkages multiply', () => {
    expect(totalShrinkagePercent('6', '6.38')).toEqual({ ok: true, value: '12.00' });
    expect(totalShrinkagePercent('0', '7.5')).toEqual({ ok: true, value: '7.50' });
    expect(totalShrinkagePercent('7.5', '0')).toEqual({ ok: true, value: '7.50' });
  });

  test.each([
    ['50', '0'],
    ['0', '-1'],
    ['', '6'],
    ['40', '40'],
  ])('%s and %s are no shrinkages', (drying, firing) => {
    expect(codeOf(totalShrinkagePercent(drying, firing))).toBe('shrinkage_out_of_range');
  });

  test('a test piece on the scale says how much water it takes and how dense it is', () => {
    const weighed = { dryG: '100', soakedG: '105', hungInWaterG: '60' };
    expect(testedBody(weighed)).toEqual({
      ok: true,
      value: { absorptionPercent: '5.00', openPoresPercent: '11.11', densityGPerCm3: '2.22' },
    });
    const tight = testedBody({ dryG: '41.25', soakedG: '41.250', hungInWaterG: '24.75' });
    expect(tight).toMatchObject({ value: { absorptionPercent: '0.00', densityGPerCm3: '2.50' } });
  });

  test.each([
    ['100', '99', '60'],
    ['100', '105', '100'],
    ['100', '105', '0'],
    ['100', 'wet', '60'],
  ])('dry %s, soaked %s and hung %s do not fit', (dryG, soakedG, hungInWaterG) => {
    expect(codeOf(testedBody({ dryG, soakedG, hungInWaterG }))).toBe('weights_do_not_fit');
  });
});

const aTile = (over: Partial<MouldedPiece> = {}): MouldedPiece => ({
  ...{ lengthUm: 150_000, widthUm: 150_000, depthUm: 20_000 },
  ...{ shrinkagePercent: '12', filledPercent: '100' },
  ...over,
});

describe('slip for a mould', () => {
  test('a mould is as large as the wet piece', () => {
    expect(mouldHoldsMl(aTile())).toEqual({ ok: true, value: 661 });
    expect(mouldHoldsMl(aTile({ shrinkagePercent: '0' }))).toEqual({ ok: true, value: 450 });
    expect(mouldHoldsMl(aTile({ filledPercent: '62.5' }))).toEqual({ ok: true, value: 413 });
  });

  test('what is mixed is never short', () => {
    const asked = { holdsMl: 661, casts: 6, sparePercent: '15', densityGPerMl: '1.75' };
    expect(slipToMix(asked)).toEqual({ ok: true, value: { ml: 4_561, g: 7_982 } });
    const bare = { holdsMl: 1, casts: 1, sparePercent: '0', densityGPerMl: '1.755' };
    expect(slipToMix(bare)).toEqual({ ok: true, value: { ml: 1, g: 2 } });
  });

  test.each<[Partial<MouldedPiece>, ClayRefusal['code']]>([
    [{ depthUm: 0, filledPercent: '0' }, 'side_not_above_zero'],
    [{ shrinkagePercent: '55', filledPercent: '0' }, 'shrinkage_out_of_range'],
    [{ filledPercent: '0' }, 'filled_out_of_range'],
    [{ filledPercent: '100.1' }, 'filled_out_of_range'],
    [{ filledPercent: 'half' }, 'filled_out_of_range'],
  ])('a mould: refuses in this order: %j', (over, code) => {
    expect(codeOf(mouldHoldsMl(aTile(over)))).toBe(code);
  });

  test.each<[Partial<Parameters<typeof slipToMix>[0]>, ClayRefusal['code']]>([
    [{ holdsMl: 0, sparePercent: '100' }, 'nothing_to_pour'],
    [{ casts: 1.5 }, 'nothing_to_pour'],
    [{ sparePercent: '100', densityGPerMl: '1' }, 'share_out_of_range'],
    [{ densityGPerMl: '1' }, 'slip_density_out_of_range'],
    [{ densityGPerMl: '2.51' }, 'slip_density_out_of_range'],
    [{ densityGPerMl: '-1.75' }, 'slip_density_out_of_range'],
  ])('to mix: refuses in this order: %j', (over, code) => {
    const asked = { holdsMl: 661, casts: 6, sparePercent: '15', densityGPerMl: '1.75' };
    expect(codeOf(slipToMix({ ...asked, ...over }))).toBe(code);
  });
});
