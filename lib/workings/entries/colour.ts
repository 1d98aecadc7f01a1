import { z } from 'zod';
import { deltaE00, labFromSrgb, type Lab } from '@/lib/colour/rules';
import { colourDifference } from '@/lib/colour/rules/words';
import { keys } from '../atoms';
import type { Working } from '../working';

const labMust = 'must be [L*, a*, b*], L* from 0 to 100 and the others from -160 to 160';
const lab = z.tuple(
  [
    z.number(labMust).min(0, labMust).max(100, labMust),
    z.number(labMust).min(-160, labMust).max(160, labMust),
    z.number(labMust).min(-160, labMust).max(160, labMust),
  ],
  labMust,
);
const differenceInput = keys({ a: lab, b: lab });

/** How far two measured colours are apart. */
export const colourDifferenceWorking: Working<
  z.infer<typeof differenceInput>,
  { deltaE00: number }
> = {
  name: 'colour-difference',
  title: 'How far two colours are apart',
  formula: 'CIEDE2000 of two L*a*b* colours measured under the same light, all weights 1.',
  source: 'CIE 142-2001; Sharma, Wu and Dalal, Color Research and Application 30 (2005)',
  caution:
    'Measured with one instrument under one light; a raw glaze or a picture on a screen is no measure.',
  example: { a: [50, 2.6772, -79.7751], b: [50, 0, -82.7485] },
  input: differenceInput,
  workOut: ({ a, b }) => {
    const apart = rounded(deltaE00(a, b));
    return {
      output: { deltaE00: apart },
      working: [
        `Lightness differs by ${rounded(b[0] - a[0])}, red to green by ${rounded(b[1] - a[1])}, ` +
          `yellow to blue by ${rounded(b[2] - a[2])}.`,
        `Weighed as the eye weighs them: ${apart}, ${colourDifference(a, b).words}.`,
      ],
    };
  },
};

const partMust = 'must be three whole numbers from 0 to 255';
const part = z.int(partMust).min(0, partMust).max(255, partMust);
const srgbInput = keys({ rgb: z.tuple([part, part, part], partMust) });

/** The L*a*b* of a colour on a screen. */
export const labFromSrgbWorking: Working<z.infer<typeof srgbInput>, { lab: Lab; labD65: Lab }> = {
  name: 'lab-from-srgb',
  title: 'The colour of a screen as L*a*b*',
  formula: 'sRGB made linear, to XYZ, to L*a*b* under D65; to D50 by Bradford’s adaptation.',
  source: 'IEC 61966-2-1 (sRGB); CIE 15 (L*a*b*); ICC.1 (D50, Bradford)',
  caution: 'The colour of a picture, not of the glaze: only an instrument measures that.',
  example: { rgb: [115, 82, 68] },
  input: srgbInput,
  workOut: ({ rgb }) => {
    const [d50, d65] = [labFromSrgb(rgb, 'D50'), labFromSrgb(rgb, 'D65')].map(roundedLab);
    const output = { lab: d50 ?? [0, 0, 0], labD65: d65 ?? [0, 0, 0] } as const;
    return {
      output,
      working: [
        `sRGB ${rgb.join(', ')} is L*a*b* ${output.labD65.join(', ')} under D65, a screen’s white.`,
        `Under D50, the white that prints and tiles are measured in, it is ${output.lab.join(', ')}.`,
      ],
    };
  },
};

function rounded(figure: number): number {
  return Math.round(figure * 10_000) / 10_000 + 0;
}

function roundedLab([l, a, b]: Lab): Lab {
  return [rounded(l), rounded(a), rounded(b)];
}
