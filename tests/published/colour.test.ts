import { fc, test as property } from '@fast-check/vitest';
import { differenceCiede2000, lab65 } from 'culori';
import { expect, test } from 'vitest';
import { deltaE00, labFromSrgb, type Lab } from '@/lib/colour/rules';
import { colourDifference, darkToLight, nearestShade } from '@/lib/colour/rules/words';

// Sharma, Wu and Dalal, "The CIEDE2000 color-difference formula: implementation notes,
// supplementary test data, and mathematical observations", Color Research and Application 30(1),
// 2005, table 1.
const pairs: readonly [Lab, Lab, number][] = [
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [[50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
  [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
  [[50, -1.1848, -84.8006], [50, 0, -82.7485], 1.0],
  [[50, -0.9009, -85.5211], [50, 0, -82.7485], 1.0],
  [[50, 0, 0], [50, -1, 2], 2.3669],
  [[50, -1, 2], [50, 0, 0], 2.3669],
  [[50, 2.49, -0.001], [50, -2.49, 0.0009], 7.1792],
  [[50, 2.49, -0.001], [50, -2.49, 0.001], 7.1792],
  [[50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
  [[50, 2.49, -0.001], [50, -2.49, 0.0012], 7.2195],
  [[50, -0.001, 2.49], [50, 0.0009, -2.49], 4.8045],
  [[50, -0.001, 2.49], [50, 0.001, -2.49], 4.8045],
  [[50, -0.001, 2.49], [50, 0.0011, -2.49], 4.7461],
  [[50, 2.5, 0], [50, 0, -2.5], 4.3065],
  [[50, 2.5, 0], [73, 25, -18], 27.1492],
  [[50, 2.5, 0], [61, -5, 29], 22.8977],
  [[50, 2.5, 0], [56, -27, -3], 31.903],
  [[50, 2.5, 0], [58, 24, 15], 19.4535],
  [[50, 2.5, 0], [50, 3.1736, 0.5854], 1.0],
  [[50, 2.5, 0], [50, 3.2972, 0], 1.0],
  [[50, 2.5, 0], [50, 1.8634, 0.5757], 1.0],
  [[50, 2.5, 0], [50, 3.2592, 0.335], 1.0],
  [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  [[63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.263],
  [[61.2901, 3.7196, -5.3901], [61.4292, 2.248, -4.962], 1.8731],
  [[35.0831, -44.1164, 3.7933], [35.0232, -40.0716, 1.5901], 1.8645],
  [[22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
  [[36.4612, 47.858, 18.3852], [36.2715, 50.5065, 21.2231], 1.4146],
  [[90.8027, -2.0831, 1.441], [91.1528, -1.6435, 0.0447], 1.4441],
  [[90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381],
  [[6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377],
  [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
];

test.each(pairs)('%j and %j are %d apart, both ways round', (one, other, apart) => {
  expect(deltaE00(one, other)).toBeCloseTo(apart, 4);
  expect(deltaE00(other, one)).toBeCloseTo(apart, 4);
});

// The same public test data: white and black, and a pair that the older formula puts at 50.
test.each<[Lab, Lab, number]>([
  [[100, 0, 0], [0, 0, 0], 100],
  [[50, 30, 40], [50, 0, 0], 24.1218],
  [[84.25, 5.74, 96], [84.46, 8.88, 96.49], 1.6743],
  [[84.25, 5.74, 96], [84.52, 5.75, 93.09], 0.5887],
  [[84.25, 5.74, 96], [84.37, 5.86, 99.42], 0.6395],
])('%j and %j are %d apart', (one, other, apart) => {
  expect(deltaE00(one, other)).toBeCloseTo(apart, 3);
});

// In the thousandths that an instrument gives: nearer to grey than that, the hue is only noise.
const thousandths = (least: number, most: number) =>
  fc.integer({ min: least * 1000, max: most * 1000 }).map((figure) => figure / 1000);
const anyLab = fc.tuple(thousandths(0, 100), thousandths(-128, 128), thousandths(-128, 128));

// culori 4, a general-purpose colour library, as a second reckoning.
property.prop([anyLab, anyLab])('agrees with a general-purpose colour library', (one, other) => {
  const as = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });
  const apart = differenceCiede2000()(lab65(as(one)), lab65(as(other)));
  expect(deltaE00(one, other)).toBeCloseTo(apart, 5);
});

property.prop([anyLab])('a colour is no distance from itself', (one) => {
  expect(deltaE00(one, one)).toBe(0);
});

// culori 4 for the primaries, under both whites.
test.each<[readonly [number, number, number], Lab, Lab]>([
  [
    [255, 0, 0],
    [53.2371, 80.0901, 67.2033],
    [54.2905, 80.8049, 69.891],
  ],
  [
    [0, 255, 0],
    [87.7355, -86.1816, 83.1866],
    [87.8185, -79.2711, 80.9946],
  ],
  [
    [0, 0, 255],
    [32.3009, 79.1953, -107.8555],
    [29.5683, 68.2874, -112.0297],
  ],
  [
    [128, 128, 128],
    [53.585, 0, 0],
    [53.585, 0, 0],
  ],
  [
    [255, 255, 255],
    [100, 0, 0],
    [100, 0, 0],
  ],
])('sRGB %j under both whites', (rgb, d65, d50) => {
  expect(deltaE00(labFromSrgb(rgb, 'D65'), d65)).toBeLessThan(0.01);
  expect(deltaE00(labFromSrgb(rgb, 'D50'), d50)).toBeLessThan(0.01);
});

// "Dark skin" of a widely used 24-patch chart: measured paint (D50, before November 2014) and the
// sRGB published with it. Near, never exactly, since one is paint and the other is light.
test('a reference patch is near its published measure', () => {
  const patch = labFromSrgb([115, 82, 68], 'D50');
  expect(deltaE00(patch, [38.2232, 12.767, 13.9707])).toBeLessThan(0.01);
  expect(deltaE00(patch, [37.986, 13.555, 14.059])).toBeLessThan(1);
});

test('a difference is told in words and number', () => {
  expect(colourDifference([60, 0, 0], [60, 0, 0]).words).toBe('no difference to be seen');
  expect(colourDifference([60, 0, 0], [64, -6, 0]).words).toBe('another colour: greener, lighter');
  expect(colourDifference([60, 0, 0], [59, 0, 0]).words).toBe(
    'just to be seen side by side: darker',
  );
});

test('the nearest of the range is the one it is held against', () => {
  const range = [
    { shade: 'light', lab: [70, 0, 0] },
    { shade: 'middle', lab: [60, 0, 0] },
    { shade: 'dark', lab: null },
  ] as const;
  expect(nearestShade(range, [62, 0, 0])?.shade).toBe('middle');
  expect(nearestShade([{ shade: 'light', lab: null }], [62, 0, 0])).toBeNull();
});

test('a gradation goes from dark to light; what was not measured stands last', () => {
  const tiles = [{ l: 60 }, { l: null }, { l: 20 }, { l: 90 }];
  expect(darkToLight(tiles, ({ l }) => l).map(({ l }) => l)).toEqual([20, 60, 90, null]);
});
