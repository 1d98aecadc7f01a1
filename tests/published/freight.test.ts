import { describe, expect, test } from 'vitest';
import { billableWeight, type SizeTerms } from '@/lib/freight/rules/billable';
import { reckonBox, type BoxAsked } from '@/lib/freight/rules/boxing';
import { freightClass } from '@/lib/freight/rules/density';
import { tierBox } from '@/lib/freight/rules/tiers';
import { umPerInch } from '@/lib/units/rules';

const lb = 453.592_37;
const weighing = (pounds: number, length: number, width: number, height: number) => ({
  lengthUm: Math.round(length * umPerInch),
  widthUm: Math.round(width * umPerInch),
  heightUm: Math.round(height * umPerInch),
  weightG: Math.round(pounds * lb),
});

// Parcel carriers’ terms from 18 Aug 2025 as told by parcelindustry.com and jaygroup.com: each side
// rounded up, divided by 139, rounded up to a pound, the larger of it and the scale.
describe('weight by size, divisor 139', () => {
  const terms: SizeTerms = { divisorIn3: 139, sides: 'up', overIn3: 0 };
  test.each([
    ['11 × 10 × 9 in is 990 in³, 7.12, 8 lb', weighing(1, 11, 10, 9), 8],
    ['11.1 × 8.5 × 6.2 in is 12 × 9 × 7, 756 in³, 5.44, 6 lb', weighing(1, 11.1, 8.5, 6.2), 6],
    ['the same at 7.0 lb on the scale is 7 lb', weighing(7, 11.1, 8.5, 6.2), 7],
  ])('%s', (_label, box, billableLb) => {
    expect(billableWeight(box, terms)).toMatchObject({ ok: true, value: { billableLb } });
  });

  // Worked from the rule, before the sides were rounded up: 584.97 ÷ 139 = 4.2
  test('as measured, 11.1 × 8.5 × 6.2 in is 5 lb by its size', () => {
    const measured = billableWeight(weighing(1, 11.1, 8.5, 6.2), {
      ...terms,
      sides: 'as_measured',
    });
    expect(measured).toMatchObject({ ok: true, value: { bySizeLb: 5, volumeIn3: 584.97 } });
  });
});

// USPS Domestic Mail Manual 283: sides to the nearest inch (604.7), 166, only above 1,728 in³
describe('weight by size, divisor 166', () => {
  const terms: SizeTerms = { divisorIn3: 166, sides: 'nearest', overIn3: 1_728 };

  test('11.1 × 10 × 6 in is under a cubic foot: the scale alone', () => {
    const answer = billableWeight(weighing(3, 11.1, 10, 6), terms);
    expect(answer).toMatchObject({ ok: true, value: { bySizeLb: null, billableLb: 3 } });
  });

  // The manual’s own example of rounding: 20.75 × 20.25 × 20 in is taken as 21 × 20 × 20
  test('20.75 × 20.25 × 20 in is 21 × 20 × 20, 8400 ÷ 166 = 50.6, 51 lb', () => {
    const answer = billableWeight(weighing(5, 20.75, 20.25, 20), terms);
    expect(answer).toMatchObject({
      ok: true,
      value: { sidesIn: [21, 20, 20], billableLb: 51 },
    });
  });

  // A published worked example (pallently.pages.dev): 3,024 ÷ 166 = 18.22
  test('18 × 14 × 12 in is 19 lb, and 22 lb by 139', () => {
    const box = weighing(11, 18, 14, 12);
    expect(billableWeight(box, terms)).toMatchObject({ value: { billableLb: 19 } });
    const parcel: SizeTerms = { divisorIn3: 139, sides: 'up', overIn3: 0 };
    expect(billableWeight(box, parcel)).toMatchObject({ value: { billableLb: 22 } });
  });
});

/** A cubic foot of so many pounds: its density is its weight. */
const cubicFoot = (pounds: number) => [weighing(pounds, 12, 12, 12)];

// NMFTA, density scale from 19 Jul 2025 (nmfta.org, on density as the factor of freight)
describe('NMFTA: class by density', () => {
  test.each([
    [0.5, 400],
    [0.99, 400],
    [1, 300],
    [2, 250],
    [4, 175],
    [6, 125],
    [8, 100],
    [9.99, 100],
    [10, 92.5],
    [12, 85],
    [15, 70],
    [22.49, 70],
    [22.5, 65],
    [30, 60],
    [35, 55],
    [49.99, 55],
    [50, 50],
    [80, 50],
  ])('%d lb to the cubic foot is class %d', (density, wanted) => {
    const answer = freightClass(cubicFoot(density), '2025-07-19');
    expect(answer).toMatchObject({ ok: true, value: { class: wanted } });
    expect(answer.ok && answer.value.densityLbPerFt3).toBeCloseTo(density, 2);
  });

  // gokoho.com: eleven steps before that day, the last from 30 on
  test.each([
    [30, 60],
    [35, 60],
    [80, 60],
    [22.5, 65],
    [0.5, 400],
  ])('before that day %d lb to the cubic foot is class %d', (density, wanted) => {
    const answer = freightClass(cubicFoot(density), '2025-07-18');
    expect(answer).toMatchObject({ ok: true, value: { class: wanted } });
  });

  // The example of the same page of the NMFTA
  test('800 lb in 4 × 5 × 4 ft is 10 lb to the cubic foot', () => {
    const answer = freightClass([weighing(800, 48, 60, 48)], '2026-01-01');
    expect(answer).toMatchObject({ ok: true, value: { class: 92.5 } });
    expect(answer.ok && answer.value.densityLbPerFt3).toBeCloseTo(10, 3);
  });

  // Worked from the rule
  test('180 lb in 48 × 40 × 12 in is 13.5', () => {
    const answer = freightClass([weighing(180, 48, 40, 12)], '2026-01-01');
    expect(answer).toMatchObject({ ok: true, value: { class: 85 } });
    expect(answer.ok && answer.value.densityLbPerFt3).toBeCloseTo(13.5, 3);
  });

  // codingace.net, its example of chemical bottles: 520 lb in 48 × 40 × 36 in is 13.00
  test('520 lb in 48 × 40 × 36 in is 13, class 85', () => {
    const answer = freightClass([weighing(520, 48, 40, 36)], '2026-01-01');
    expect(answer).toMatchObject({ ok: true, value: { densityLbPerFt3: 13, class: 85 } });
  });
});

// Common practice: what boxed pieces of such sizes weigh
describe('what boxes weigh, by common practice', () => {
  const grossLb = (content: ReturnType<typeof weighing>, asked: BoxAsked) => {
    const reckoned = reckonBox(content, asked);
    return reckoned.ok ? reckoned.value.grossG / lb : Number.NaN;
  };

  test('a tile of 6 × 6 × 1/2 in, 1.5 lb, is 3 to 4 lb in its boxes', () => {
    const gross = grossLb(weighing(1.5, 6, 6, 0.5), tierBox.sleeves);
    expect(gross).toBeGreaterThan(3);
    expect(gross).toBeLessThan(4);
  });

  test.each([17, 18])(
    'a relief of 12 × 18 in on its board, %i lb, is 25 to 30 lb boxed',
    (pounds) => {
      const gross = grossLb(weighing(pounds, 18, 12, 2), tierBox.panel_box);
      expect(gross).toBeGreaterThan(25);
      expect(gross).toBeLessThan(30);
    },
  );

  test.each([
    [60, 36, 4],
    [48, 36, 4],
    [36, 36, 6],
  ])('a crate for 100 lb of %i × %i × %i in adds 40 to 80 lb', (length, width, height) => {
    const added = grossLb(weighing(100, length, width, height), tierBox.crate) - 100;
    expect(added).toBeGreaterThan(40);
    expect(added).toBeLessThan(80);
  });
});
