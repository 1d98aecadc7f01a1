/** A measured colour: CIE L*a*b*. Two that are compared were measured under one light. */
export type Lab = readonly [lightness: number, a: number, b: number];

const twentyFiveTo7 = 25 ** 7;

/**
 * How far two colours are apart for the eye: CIEDE2000, with all weights 1.
 *
 * @returns 0 for the same; about 1 is just seen side by side; the same both ways round
 * @source CIE 142-2001; the formulas and test data of Sharma, Wu and Dalal, Color Research and
 *   Application 30 (2005)
 * @example deltaE00([50, 2.6772, -79.7751], [50, 0, -82.7485]) // 2.0425
 */
export function deltaE00(one: Lab, other: Lab): number {
  const [first, second] = [chromaOf(one, one, other), chromaOf(other, one, other)];
  const lightness = second.lightness - first.lightness;
  const chroma = second.chroma - first.chroma;
  const hueStep = hueDifference(first, second);
  const hue = 2 * Math.sqrt(first.chroma * second.chroma) * sine(hueStep / 2);
  const mean = meansOf(first, second);
  const parts = [
    lightness / weightOfLightness(mean.lightness),
    chroma / (1 + 0.045 * mean.chroma),
    hue / (1 + 0.015 * mean.chroma * hueWeight(mean.hue)),
  ] as const;
  const turned = rotation(mean) * parts[1] * parts[2];
  return Math.sqrt(parts[0] ** 2 + parts[1] ** 2 + parts[2] ** 2 + turned);
}

type Chroma = { lightness: number; chroma: number; hue: number };

/** Lightness, chroma and hue in degrees, the red-green axis stretched where both are grey. */
function chromaOf([lightness, a, b]: Lab, one: Lab, other: Lab): Chroma {
  const mean = (Math.hypot(one[1], one[2]) + Math.hypot(other[1], other[2])) / 2;
  const stretched = a * (1 + 0.5 * (1 - Math.sqrt(mean ** 7 / (mean ** 7 + twentyFiveTo7))));
  const degrees = (Math.atan2(b, stretched) * 180) / Math.PI;
  return {
    lightness,
    chroma: Math.hypot(stretched, b),
    hue: stretched === 0 && b === 0 ? 0 : (degrees + 360) % 360,
  };
}

function hueDifference(first: Chroma, second: Chroma): number {
  if (first.chroma * second.chroma === 0) return 0;
  const step = second.hue - first.hue;
  if (step > 180) return step - 360;
  return step < -180 ? step + 360 : step;
}

function meansOf(first: Chroma, second: Chroma): Chroma {
  return {
    lightness: (first.lightness + second.lightness) / 2,
    chroma: (first.chroma + second.chroma) / 2,
    hue: meanHue(first, second),
  };
}

function meanHue(first: Chroma, second: Chroma): number {
  const sum = first.hue + second.hue;
  if (first.chroma * second.chroma === 0) return sum;
  if (Math.abs(first.hue - second.hue) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

function weightOfLightness(lightness: number): number {
  const away = (lightness - 50) ** 2;
  return 1 + (0.015 * away) / Math.sqrt(20 + away);
}

function hueWeight(hue: number): number {
  return (
    1 -
    0.17 * cosine(hue - 30) +
    0.24 * cosine(2 * hue) +
    0.32 * cosine(3 * hue + 6) -
    0.2 * cosine(4 * hue - 63)
  );
}

function rotation({ chroma, hue }: Chroma): number {
  const turn = 30 * Math.exp(-(((hue - 275) / 25) ** 2));
  return -2 * Math.sqrt(chroma ** 7 / (chroma ** 7 + twentyFiveTo7)) * sine(2 * turn);
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const sine = (degrees: number) => Math.sin(radians(degrees));
const cosine = (degrees: number) => Math.cos(radians(degrees));

/** The white that a colour is seen under: daylight of 5003 K (print, D50) or 6504 K (screens, D65). */
export type White = 'D50' | 'D65';

/** An sRGB colour, 0 to 255 each. */
export type Rgb = readonly [red: number, green: number, blue: number];

/**
 * The L*a*b* of an sRGB colour, as a screen shows it: never the measure of a glaze.
 *
 * @param white D65 is sRGB's own; D50 is reached by Bradford's adaptation
 * @source IEC 61966-2-1 (sRGB); CIE 15 (L*a*b*); ICC.1 for D50 and Bradford's matrix
 * @example labFromSrgb([255, 0, 0], 'D65') // about [53.24, 80.09, 67.20]
 */
export function labFromSrgb(rgb: Rgb, white: White): Lab {
  const seen = times(srgbToXyz, rgb.map(linearOf) as unknown as Triple);
  const xyz = white === 'D50' ? times(bradfordToD50, seen) : seen;
  const of = whites[white];
  const [x, y, z] = [xyz[0] / of[0], xyz[1] / of[1], xyz[2] / of[2]].map(cubeRootOf) as [
    number,
    number,
    number,
  ];
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

type Triple = readonly [number, number, number];

const whites: Record<White, Triple> = {
  D50: [0.9642956764295677, 1, 0.8251046025104602],
  D65: [0.9504559270516717, 1, 1.0890577507598784],
};
const srgbToXyz: readonly [Triple, Triple, Triple] = [
  [0.41239079926595934, 0.357584339383878, 0.1804807884018343],
  [0.21263900587151027, 0.715168678767756, 0.07219231536073371],
  [0.01933081871559182, 0.11919477979462598, 0.9505321522496607],
];
const bradfordToD50: readonly [Triple, Triple, Triple] = [
  [1.0479298208405488, 0.022946793341019088, -0.05019222954313557],
  [0.029627815688159344, 0.990434484573249, -0.01707382502938514],
  [-0.009243058152591178, 0.015055144896577895, 0.7518742899580008],
];

function times(rows: readonly [Triple, Triple, Triple], column: Triple): Triple {
  const row = ([a, b, c]: Triple) => a * column[0] + b * column[1] + c * column[2];
  return [row(rows[0]), row(rows[1]), row(rows[2])];
}

function linearOf(value: number): number {
  const share = value / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

function cubeRootOf(share: number): number {
  return share > 216 / 24_389 ? Math.cbrt(share) : (24_389 / 27 / 116) * share + 16 / 116;
}
