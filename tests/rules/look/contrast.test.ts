import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/**
 * Contrast by WCAG 2.2 (W3C), "relative luminance" and "contrast ratio"; OKLCH to linear sRGB by
 * the matrices of CSS Color 4 (W3C). The colours are read from the very file the pages use.
 */
const tokens = readFileSync('app/styles/tokens.css', 'utf8');

type Light = 'day' | 'evening';
type Linear = readonly [red: number, green: number, blue: number];

const text = 4.5;
const control = 3;

/** Every pair of ink and ground that the parts put together, and the contrast it must have. */
const pairs: readonly (readonly [ink: string, ground: string, least: number])[] = [
  ...['--page', '--surface', '--well', '--hollow'].flatMap(
    (ground) =>
      [
        ['--ink', ground, text],
        ['--ink-quiet', ground, text],
        ['--link', ground, text],
        ['--sold', ground, text],
        ['--wait', ground, text],
        ['--act', ground, text],
        ['--edge', ground, control],
      ] as const,
  ),
  ['--act-face-ink', '--act-face', text],
  ['--act-face-ink', '--act-face-touched', text],
  ['--act-fill', '--page', control],
  ['--ink', '--act-wash', text],
  ['--act', '--act-wash', text],
  ['--ink-quiet', '--act-wash', text],
  ['--link', '--act-wash', text],
  ['--ink', '--sold-wash', text],
  ['--sold', '--sold-wash', text],
  ['--link', '--sold-wash', text],
  ['--ink', '--wait-wash', text],
  ['--wait', '--wait-wash', text],
  ['--link', '--wait-wash', text],
];

const cases = pairs.flatMap(([ink, ground, least]) =>
  (['day', 'evening'] as const).map((light) => ({ ink, ground, least, light })),
);

test.each(cases)('$ink can be read on $ground by $light', ({ ink, ground, least, light }) => {
  expect(contrast(colour(ink, light), colour(ground, light))).toBeGreaterThanOrEqual(least);
});

test('black on white is 21 to 1, as WCAG says', () => {
  expect(contrast(linearOf(0, 0, 0), linearOf(1, 0, 0))).toBeCloseTo(21, 2);
});

test('every colour a page uses can be shown on an sRGB screen', () => {
  const outside = [...tokens.matchAll(/--([a-z-]+): oklch\(([\d.]+) ([\d.]+) ([\d.]+)\);/g)].filter(
    ([, , lightness, chroma, hue]) =>
      linearOf(Number(lightness), Number(chroma), Number(hue)).some(
        (part) => part < -0.002 || part > 1.002,
      ),
  );
  expect(outside.map(([, name]) => name)).toEqual([]);
  expect(tokens.match(/oklch\(/g)?.length ?? 0).toBeGreaterThan(25);
});

function colour(name: string, light: Light): Linear {
  const written = valueOf(name);
  const both = /^light-dark\((.*)\)$/s.exec(written)?.[1];
  const value = both ? (splitPair(both)[light === 'day' ? 0 : 1] ?? '') : written;
  const other = /^var\((--[a-z-]+)\)$/.exec(value.trim())?.[1];
  if (other) return colour(other, light);
  const numbers = /^oklch\(([\d.]+) ([\d.]+) ([\d.]+)\)$/.exec(value.trim());
  if (!numbers) throw new Error(`${name} is not a plain colour: ${value}`);
  return linearOf(Number(numbers[1]), Number(numbers[2]), Number(numbers[3]));
}

function valueOf(name: string): string {
  const found = new RegExp(`${name}: ([^;]+);`).exec(tokens)?.[1];
  if (!found) throw new Error(`There is no colour ${name}.`);
  return found;
}

function splitPair(both: string): string[] {
  let depth = 0;
  for (let at = 0; at < both.length; at += 1) {
    const letter = both[at];
    if (letter === '(') depth += 1;
    if (letter === ')') depth -= 1;
    if (letter === ',' && depth === 0) return [both.slice(0, at), both.slice(at + 1)];
  }
  return [both];
}

function linearOf(lightness: number, chroma: number, hue: number): Linear {
  const turn = (hue * Math.PI) / 180;
  const a = chroma * Math.cos(turn);
  const b = chroma * Math.sin(turn);
  const long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const middle = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const short = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
    -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
    -0.0041960863 * long - 0.7034186147 * middle + 1.707614701 * short,
  ];
}

function contrast(one: Linear, two: Linear): number {
  const luminance = ([red, green, blue]: Linear) => 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  const [dark, bright] = [luminance(one), luminance(two)].sort((a, b) => a - b);
  return ((bright ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}
