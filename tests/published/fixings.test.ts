import { describe, expect, test } from 'vitest';
import { lateralLb, type Grain } from '@/lib/walls/rules/fixings/lateral';
import { bearsAtAngle, topRowPull } from '@/lib/walls/rules/fixings/loads';
import { gravityOf, screws, type ScrewName } from '@/lib/walls/rules/fixings/screws';
import { loadDuration, withdrawalLbPerIn } from '@/lib/walls/rules/fixings/withdrawal';

// AWC NDS 2018, table 12.2A: lag screws pulled out of side grain, pounds for each inch of thread, at
// 1/4, 5/16, 3/8, 7/16, 1/2, 5/8, 3/4, 7/8, 1, 1 1/8 and 1 1/4 inches.
describe('what a lag screw holds', () => {
  const diameters = [1 / 4, 5 / 16, 3 / 8, 7 / 16, 1 / 2, 5 / 8, 3 / 4, 7 / 8, 1, 1.125, 1.25];
  test.each<[number, number[]]>([
    [0.55, [260, 307, 352, 395, 437, 516, 592, 664, 734, 802, 868]],
    [0.5, [225, 266, 305, 342, 378, 447, 513, 576, 636, 695, 752]],
    [0.43, [179, 212, 243, 273, 302, 357, 409, 459, 508, 554, 600]],
    [0.42, [173, 205, 235, 264, 291, 344, 395, 443, 490, 535, 579]],
    [0.36, [137, 163, 186, 209, 231, 273, 313, 352, 389, 425, 460]],
    [0.35, [132, 156, 179, 200, 222, 262, 300, 337, 373, 407, 441]],
  ])('in wood of %d', (gravity, cells) => {
    const read = diameters.map((diameterIn) =>
      Math.round(withdrawalLbPerIn({ kind: 'lag screw', diameterIn, gravity })),
    );
    expect(read).toEqual(cells);
  });
});

// AWC NDS 2018, equation 12.2-2; No. 10 in Douglas fir is 135 in its table 12.2B. The cells of .45 are
// a published example that cuts off what is behind the point: 109.
describe('what a wood screw holds', () => {
  const names: ScrewName[] = ['no_8', 'no_10', 'no_12', 'no_14'];
  const perInch = (name: ScrewName, gravity: number) =>
    withdrawalLbPerIn({ kind: 'wood screw', diameterIn: screws[name].diameterIn, gravity });

  test.each<[number, number[]]>([
    [0.5, [117, 135, 154, 172]],
    [0.42, [82, 96, 109, 122]],
    [0.55, [141, 164, 186, 209]],
  ])('in wood of %d', (gravity, cells) => {
    expect(names.map((name) => Math.round(perInch(name, gravity)))).toEqual(cells);
  });

  test('No. 10 in wood of .45: 109 lb', () => {
    expect(Math.floor(perInch('no_10', 0.45))).toBe(109);
  });
});

// AWC NDS 2018, table 12.3.3A; table 2.3.2 for the time a load lies on.
test('the woods and the times are those of the tables', () => {
  expect(gravityOf('douglas_fir_larch')).toBe(0.5);
  expect(gravityOf('southern_pine')).toBe(0.55);
  expect(gravityOf('hem_fir')).toBe(0.43);
  expect(gravityOf('spruce_pine_fir')).toBe(0.42);
  expect(loadDuration).toEqual({ permanent: 0.9, tenYears: 1, sevenDays: 1.25 });
});

const toTen = (number: number) => Math.round(number / 10) * 10;

// AWC NDS 2018, table 12K: lag screws through a plate of steel (ASTM A653, grade 33), eight diameters
// into wood, to the nearest 10 lb, along and across the grain; the rows that were legible in two copies.
describe('what a lag screw bears sideways through steel', () => {
  const gravities = [0.67, 0.55, 0.5, 0.49, 0.46, 0.43, 0.42, 0.37, 0.36, 0.35];
  test.each<[number, ScrewName, number[], number[]]>([
    [
      0.075,
      'lag_1_4',
      [170, 160, 150, 150, 150, 140, 140, 130, 130, 130],
      [130, 120, 110, 110, 100, 100, 100, 90, 90, 90],
    ],
    [
      0.105,
      'lag_1_4',
      [180, 170, 160, 160, 160, 150, 150, 140, 140, 140],
      [140, 130, 120, 120, 110, 110, 110, 100, 100, 90],
    ],
    [
      0.105,
      'lag_5_16',
      [230, 210, 200, 200, 190, 190, 190, 180, 170, 170],
      [170, 150, 140, 140, 130, 130, 120, 110, 110, 110],
    ],
    [
      0.105,
      'lag_3_8',
      [230, 210, 200, 200, 200, 190, 190, 180, 180, 170],
      [160, 140, 140, 130, 130, 120, 120, 110, 110, 110],
    ],
    [
      0.12,
      'lag_1_4',
      [190, 180, 170, 170, 160, 160, 160, 150, 150, 140],
      [150, 130, 120, 120, 120, 110, 110, 100, 100, 100],
    ],
    [
      0.12,
      'lag_5_16',
      [230, 210, 210, 200, 200, 190, 190, 180, 180, 180],
      [170, 150, 140, 140, 140, 130, 130, 120, 120, 110],
    ],
    [
      0.12,
      'lag_3_8',
      [240, 220, 210, 210, 200, 200, 190, 180, 180, 180],
      [170, 150, 140, 140, 130, 130, 120, 110, 110, 110],
    ],
    [
      0.134,
      'lag_1_4',
      [200, 180, 180, 170, 170, 160, 160, 150, 150, 150],
      [150, 140, 130, 130, 120, 120, 110, 110, 100, 100],
    ],
  ])('%d in of steel, %s', (lengthIn, name, along, across) => {
    const screw = screws[name];
    const bears = (gravity: number, grain: Grain) =>
      lateralLb({
        screw,
        main: { gravity, grain, lengthIn: 8 * screw.diameterIn },
        side: { bearingPsi: 61_850, lengthIn },
        gapIn: 0,
      }).loadLb;
    expect(gravities.map((gravity) => toTen(bears(gravity, 'along')))).toEqual(along);
    expect(gravities.map((gravity) => toTen(bears(gravity, 'across')))).toEqual(across);
  });
});

// AWC NDS 2018, tables 12J and 12L, one cell each as it is quoted elsewhere: 1/2 in of Douglas fir on
// Douglas fir; the lag screw 120 lb along and 80 lb across the grain, the No. 10 wood screw 90 lb.
describe('what a screw bears sideways through wood', () => {
  const bears = (name: ScrewName, grain: Grain, diameters: number) => {
    const screw = screws[name];
    const wood = { gravity: 0.5, grain };
    const main = { ...wood, lengthIn: diameters * screw.diameterIn };
    return lateralLb({ screw, main, side: { ...wood, lengthIn: 0.5 }, gapIn: 0 }).loadLb;
  };

  test('a lag screw of 1/4 in', () => {
    expect([bears('lag_1_4', 'along', 8), bears('lag_1_4', 'across', 8)].map(toTen)).toEqual([
      120, 80,
    ]);
  });

  test('a No. 10 wood screw', () => {
    expect(Math.round(bears('no_10', 'along', 10))).toBe(90);
  });
});

/** The yield limit equations of the standard itself, written out: nothing between the members. */
function byTheStandard(of: { main: number; side: number; mainIn: number; sideIn: number }) {
  const { rootIn: d, yieldPsi } = screws.no_12;
  const [re, rt] = [of.main / of.side, of.mainIn / of.sideIn];
  const k1 =
    (Math.sqrt(re + 2 * re ** 2 * (1 + rt + rt ** 2) + rt ** 2 * re ** 3) - re * (1 + rt)) /
    (1 + re);
  const bend = (at: number) => (2 * yieldPsi * d ** 2) / (3 * of.main * at ** 2);
  const k2 = -1 + Math.sqrt(2 * (1 + re) + bend(of.mainIn) * (1 + 2 * re));
  const k3 = -1 + Math.sqrt((2 * (1 + re)) / re + bend(of.sideIn) * (2 + re));
  const reduction = 10 * d + 0.5;
  const forces = [
    d * of.mainIn * of.main,
    d * of.sideIn * of.side,
    k1 * d * of.sideIn * of.side,
    (k2 * d * of.mainIn * of.main) / (1 + 2 * re),
    (k3 * d * of.sideIn * of.main) / (2 + re),
    d ** 2 * Math.sqrt((2 * of.main * yieldPsi) / (3 * (1 + re))),
  ];
  return Math.min(...forces) / reduction;
}

// AWC NDS 2018, table 12.3.1A, against the general dowel equations that the plan reckons with.
describe('with nothing between the members both sets of equations tell the same', () => {
  test.each([
    [0.5, 0.42, 2, 0.75],
    [0.36, 0.42, 1.5, 0.25],
    [0.55, 0.55, 0.5, 1.5],
    [0.42, 0.67, 0.3, 0.5],
    [0.5, 0.36, 3, 2.5],
  ])('wood of %d and %d, %d and %d in', (main, side, mainIn, sideIn) => {
    const psi = (gravity: number) => Math.round((16_600 * gravity ** 1.84) / 50) * 50;
    const { loadLb } = lateralLb({
      screw: screws.no_12,
      main: { gravity: main, grain: 'along', lengthIn: mainIn },
      side: { gravity: side, grain: 'along', lengthIn: sideIn },
      gapIn: 0,
    });
    const expected = byTheStandard({ main: psi(main), side: psi(side), mainIn, sideIn });
    expect(loadLb).toBeCloseTo(expected, 6);
  });
});

// Plain statics: 120 lb, 3 in off the wall, 24 in above where it rests.
test('a weight that stands off the wall pulls its top row', () => {
  expect(topRowPull({ weight: 120, outBy: 3, downBy: 24 })).toBe(15);
});

// AWC NDS 2018, section 12.4.1 (from memory): what bears 100 lb either way bears 100 lb at any angle,
// so pulled and pushed alike it is at its end at 70.7 lb each way.
test('a screw that bears the same pulled and pushed bears that at any angle', () => {
  expect(bearsAtAngle({ pull: 100, push: 100 }, { pull: 70.71, push: 70.71 })).toBeCloseTo(100, 9);
  expect(bearsAtAngle({ pull: 200, push: 80 }, { pull: 0, push: 5 })).toBeCloseTo(80, 9);
  expect(bearsAtAngle({ pull: 200, push: 80 }, { pull: 5, push: 0 })).toBeCloseTo(200, 9);
});
