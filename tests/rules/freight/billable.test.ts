import { describe, expect, test } from 'vitest';
import { billableWeight, wholePounds, type SizeTerms } from '@/lib/freight/rules/billable';
import { densityScaleOn, freightClass } from '@/lib/freight/rules/density';
import { measureRefusalMessage, type MeasureRefusal } from '@/lib/freight/rules/measures';
import { umPerInch } from '@/lib/units/rules';

const inches = (length: number, width: number, height: number) => ({
  lengthUm: Math.round(length * umPerInch),
  widthUm: Math.round(width * umPerInch),
  heightUm: Math.round(height * umPerInch),
});
const pounds = (lb: number) => Math.round(lb * 453.592_37);
const up: SizeTerms = { divisorIn3: 139, sides: 'up', overIn3: 0 };
const aBox = { ...inches(11, 10, 9), weightG: 1_000 };

describe('whole pounds', () => {
  test.each([1, 2, 3, 7, 13, 50, 149, 150, 2_000])('%i lb in whole grams is %i lb again', (lb) => {
    expect(wholePounds(pounds(lb))).toBe(lb);
  });

  test('a gram more is the next pound, and a single gram is a whole one', () => {
    expect([wholePounds(455), wholePounds(454), wholePounds(1)]).toEqual([2, 1, 1]);
  });
});

describe('what a box is charged as', () => {
  test('the sides as the carrier takes them are told, and what they come to', () => {
    const box = { ...inches(11.1, 8.5, 6.2), weightG: pounds(1) };
    expect(billableWeight(box, up)).toEqual({
      ok: true,
      value: { billableLb: 6, byScaleLb: 1, bySizeLb: 6, sidesIn: [12, 9, 7], volumeIn3: 756 },
    });
  });

  test.each<[SizeTerms['sides'], number, number]>([
    ['as_measured', 11.4, 11.4],
    ['nearest', 11.4, 11],
    ['nearest', 11.5, 12],
    ['up', 11.01, 12],
    ['up', 11, 11],
  ])('%s takes %d in as %d', (sides, side, taken) => {
    const box = { ...inches(side, 10, 9), weightG: 1_000 };
    const answer = billableWeight(box, { ...up, sides });
    expect(answer.ok && answer.value.sidesIn[0]).toBe(taken);
  });

  test('a thin box to the nearest inch is never without a side', () => {
    const answer = billableWeight(
      { ...inches(20, 20, 0.25), weightG: 500 },
      { ...up, sides: 'nearest' },
    );
    expect(answer.ok && answer.value.sidesIn).toEqual([20, 20, 1]);
  });

  test('exactly at the volume it does not count by size; a hair over it does', () => {
    const post: SizeTerms = { divisorIn3: 166, sides: 'as_measured', overIn3: 1_728 };
    const at = billableWeight({ ...inches(12, 12, 12), weightG: 1_000 }, post);
    const over = billableWeight({ ...inches(12, 12, 12.01), weightG: 1_000 }, post);
    expect([at.ok && at.value.bySizeLb, over.ok && over.value.bySizeLb]).toEqual([null, 11]);
  });

  test('without a divisor the scale alone counts', () => {
    const answer = billableWeight(aBox, { ...up, divisorIn3: null });
    expect(answer).toMatchObject({ ok: true, value: { billableLb: 3, bySizeLb: null } });
  });

  test.each<[string, object, MeasureRefusal]>([
    ['a length of zero', { lengthUm: 0 }, { code: 'side_out_of_range', side: 'lengthUm' }],
    ['a width below zero', { widthUm: -1 }, { code: 'side_out_of_range', side: 'widthUm' }],
    ['half a micrometre', { heightUm: 0.5 }, { code: 'side_out_of_range', side: 'heightUm' }],
    ['no number', { heightUm: Number.NaN }, { code: 'side_out_of_range', side: 'heightUm' }],
    [
      'over a hundred metres',
      { widthUm: 100_000_001 },
      { code: 'side_out_of_range', side: 'widthUm' },
    ],
    ['a weight of zero', { weightG: 0 }, { code: 'weight_out_of_range' }],
    ['over a hundred tonnes', { weightG: 100_000_001 }, { code: 'weight_out_of_range' }],
  ])('refuses %s', (_label, wrong, refusal) => {
    expect(billableWeight({ ...aBox, ...wrong }, up)).toEqual({ ok: false, refusal });
    expect(freightClass([aBox, { ...aBox, ...wrong }], '2026-01-01')).toEqual({
      ok: false,
      refusal,
    });
    expect(measureRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('freight class', () => {
  test('the scale is that of the day', () => {
    expect(densityScaleOn('2025-07-18').steps).toHaveLength(11);
    expect(densityScaleOn('2025-07-19').steps).toHaveLength(13);
  });

  test('nothing has no class', () => {
    const refusal = { code: 'nothing_to_reckon' } as const;
    expect(freightClass([], '2026-01-01')).toEqual({ ok: false, refusal });
    expect(measureRefusalMessage(refusal)).toMatch(/^There is no box yet/);
  });

  test('two boxes count together, all pounds over all feet', () => {
    const foot = inches(12, 12, 12);
    const boxes = [
      { ...foot, weightG: pounds(4) },
      { ...foot, weightG: pounds(20) },
    ];
    expect(freightClass(boxes, '2026-01-01')).toMatchObject({ ok: true, value: { class: 85 } });
  });
});
