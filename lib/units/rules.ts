import { ok, refuse, type Result } from '@/lib/platform/result';
import { readMixedNumber, roundedProduct } from './rules/quantity';
import {
  lengthUnitOf,
  umPer,
  weightUnitOf,
  weightUnits,
  type LengthUnit,
  type WeightUnit,
} from './rules/unit-words';

/** A system lengths are shown in. */
export type LengthSystem = 'in' | 'mm';

/** Micrometres in one inch, exactly (the international inch of 1959). */
export const umPerInch = 25_400;
/** The longest length that can be written: a hundred metres, in micrometres. */
export const mostUm = 100_000_000;

/** Why a typed length was not taken. */
export type LengthRefusal =
  | { code: 'no_length' }
  | { code: 'not_a_length' }
  | { code: 'unknown_length_unit'; unit: string }
  | { code: 'length_of_zero' }
  | { code: 'too_long'; mostUm: number };

/**
 * Reads a length as it is typed: `10`, `10 in`, `10 1/2"`, `6' 4 1/2"`, `254 mm`, `25.4cm`.
 *
 * @param defaultUnit what a bare number means
 * @returns whole micrometres, half up; refuses, in this order: nothing typed, not a length, a unit
 *   not known here, zero, longer than a hundred metres
 * @example parseLength('1/16', 'in') // 1588 micrometres: the sixteenth is 1587.5
 */
export function parseLength(text: string, defaultUnit: LengthUnit): Result<number, LengthRefusal> {
  const typed = text.trim().toLowerCase();
  if (typed === '') return refuse({ code: 'no_length' });

  const feet = feetBefore(typed);
  const read = readMixedNumber(feet?.rest ?? typed);
  if (!read) return refuse({ code: 'not_a_length' });

  const bareUnit = feet ? 'in' : defaultUnit;
  const unit = read.unit === '' ? bareUnit : lengthUnitOf(read.unit);
  if (!unit || (feet && unit !== 'in')) {
    return refuse({ code: 'unknown_length_unit', unit: read.unit });
  }
  return withinLengths((feet?.um ?? 0) + roundedProduct(read, umPer[unit]));
}

function feetBefore(typed: string): { um: number; rest: string } | null {
  const match = /^(\d{1,4})\s*(?:ft\.?|feet|foot|['′’])[\s-]*([\d¼½¾⅛⅜⅝⅞].*)$/.exec(typed);
  if (!match) return null;
  const [, feet = '', rest = ''] = match;
  return { um: Number(feet) * 12 * umPerInch, rest };
}

function withinLengths(um: number): Result<number, LengthRefusal> {
  if (um === 0) return refuse({ code: 'length_of_zero' });
  if (um > mostUm) return refuse({ code: 'too_long', mostUm });
  return ok(um);
}

/** Says in a full sentence why a typed length was not taken. */
export function lengthRefusalMessage(refusal: LengthRefusal): string {
  switch (refusal.code) {
    case 'no_length':
      return 'Write a length, such as 10 1/2 in or 267 mm.';
    case 'not_a_length':
      return 'That does not read as a length. Write it as 10 1/2 in or 267 mm.';
    case 'unknown_length_unit':
      return 'Write the length in inches, feet, mm, cm or m.';
    case 'length_of_zero':
      return 'A length has to be more than zero.';
    case 'too_long':
      return `The longest that can be written is ${formatLength(refusal.mostUm, 'mm')}.`;
  }
}

/**
 * A length as it is read: inches to the nearest sixteenth, or millimetres to the nearest tenth.
 *
 * @example formatLength(114_300, 'in') // '4 1/2 in'
 */
export function formatLength(um: number, system: LengthSystem): string {
  return system === 'in' ? `${inchesText(um)} in` : `${millimetresText(um)} mm`;
}

/** Height, width and, where it matters, depth. */
export type Size = {
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm?: number | null;
};

/**
 * A size as wall labels give it: height × width × depth.
 *
 * @source common practice on wall labels: height first
 * @example formatSize({ heightUm: 254_000, widthUm: 457_200 }, 'in') // '10 × 18 in'
 */
export function formatSize(size: Size, system: LengthSystem): string {
  const sides = [size.heightUm, size.widthUm];
  if (typeof size.depthUm === 'number') sides.push(size.depthUm);
  const write = system === 'in' ? inchesText : millimetresText;
  return `${sides.map(write).join(' × ')} ${system}`;
}

function inchesText(um: number): string {
  const sixteenths = Math.round((um * 16) / umPerInch);
  const whole = Math.floor(sixteenths / 16);
  let over = sixteenths % 16;
  let under = 16;
  if (over === 0) return String(whole);
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

function millimetresText(um: number): string {
  const tenths = Math.round(um / 100);
  const whole = Math.floor(tenths / 10);
  return tenths % 10 === 0 ? String(whole) : `${whole}.${tenths % 10}`;
}

/** A system weights are shown in. */
export type WeightSystem = 'lb' | 'kg';

/** The heaviest weight that can be written: a hundred tonnes, in grams. */
export const mostG = 100_000_000;

/** Why a typed weight was not taken. */
export type WeightRefusal =
  | { code: 'no_weight' }
  | { code: 'not_a_weight' }
  | { code: 'unknown_weight_unit'; unit: string }
  | { code: 'weight_of_zero' }
  | { code: 'too_heavy'; mostG: number };

/**
 * Reads a weight as it is typed: `6 lb 4 oz`, `6.25 lb`, `6 1/2`, `12 oz`, `2.3 kg`, `850 g`.
 *
 * @param defaultUnit what a bare number means
 * @returns whole grams, half up; refuses, in this order: nothing typed, not a weight, a unit not
 *   known here, less than half a gram, heavier than a hundred tonnes
 * @example parseWeight('1 lb', 'lb') // 454 grams: the pound is 453.59237 g
 */
export function parseWeight(text: string, defaultUnit: WeightUnit): Result<number, WeightRefusal> {
  const typed = text.trim().toLowerCase();
  if (typed === '') return refuse({ code: 'no_weight' });

  const poundsAndOunces = /^(\d{1,9})\s*(?:lbs?\.?|pounds?)[\s,-]*(\d.*oz\.?|\d.*ounces?)$/.exec(
    typed,
  );
  const ounces = poundsAndOunces && readMixedNumber(poundsAndOunces[2] ?? '');
  const read = poundsAndOunces
    ? ounces && {
        ...ounces,
        numerator: ounces.numerator + BigInt(poundsAndOunces[1] ?? '0') * 16n * ounces.denominator,
      }
    : readMixedNumber(typed);
  if (!read) return refuse({ code: 'not_a_weight' });

  const unit = read.unit === '' ? defaultUnit : weightUnitOf(read.unit);
  if (!unit) return refuse({ code: 'unknown_weight_unit', unit: read.unit });
  const grams = roundedProduct(read, weightUnits[unit].grams, weightUnits[unit].per);
  if (grams === 0) return refuse({ code: 'weight_of_zero' });
  return grams > mostG ? refuse({ code: 'too_heavy', mostG }) : ok(grams);
}

/** Says in a full sentence why a typed weight was not taken. */
export function weightRefusalMessage(refusal: WeightRefusal): string {
  switch (refusal.code) {
    case 'no_weight':
      return 'Write a weight, such as 6 lb 4 oz or 2.8 kg.';
    case 'not_a_weight':
      return 'That does not read as a weight. Write it as 6 lb 4 oz or 2.8 kg.';
    case 'unknown_weight_unit':
      return 'Write the weight in pounds, ounces, kg or g.';
    case 'weight_of_zero':
      return 'A weight has to be more than zero.';
    case 'too_heavy':
      return `The heaviest that can be written is ${formatWeight(refusal.mostG, 'kg')}.`;
  }
}

/**
 * A weight as it is read: `12 oz`, `6 lb 4 oz`, from ten pounds on `57 lb`; `850 g`, `2.35 kg`.
 *
 * @example formatWeight(4_530, 'lb') // '10 lb': it rounds to 160 ounces
 */
export function formatWeight(grams: number, system: WeightSystem): string {
  return system === 'lb' ? poundsText(grams) : kilogramsText(grams);
}

function poundsText(grams: number): string {
  const ounces = Math.round((grams * 1_600_000) / 45_359_237);
  if (ounces < 16) return `${ounces} oz`;
  if (ounces >= 160) return `${Math.round((grams * 100_000) / 45_359_237)} lb`;
  const over = ounces % 16;
  return over === 0 ? `${ounces / 16} lb` : `${Math.floor(ounces / 16)} lb ${over} oz`;
}

function kilogramsText(grams: number): string {
  if (grams < 1_000) return `${grams} g`;
  const step = grams < 10_000 ? 10 : 100;
  return `${(Math.round(grams / step) * step) / 1_000} kg`;
}
