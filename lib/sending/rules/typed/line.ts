import {
  formatLength,
  formatWeight,
  parseLength,
  parseWeight,
  type LengthSystem,
} from '@/lib/units/rules';

/** What a line of a list says of one thing: how many, what, and which number of the drawing. */
export type Named = { pieces: number; words: string; partNumber: number | null };

/** The most of one thing that a line names. */
export const piecesMost = 999;
/** The longest words of a line. */
export const wordsMost = 200;

/**
 * Reads what stands before the first semicolon: `2 × Tern over shoals`, `Part 7, sky`.
 *
 * @returns null for none of these: nothing, no pieces, more than 999, too long
 * @example readNamed('2 x Tern') // 2 pieces of 'Tern'
 */
export function readNamed(text: string): Named | null {
  const counted = /^(\d{1,4})\s*(?:[×x*]|of)\s+(.+)$/i.exec(text.trim());
  const pieces = counted ? Number(counted[1]) : 1;
  const words = (counted?.[2] ?? text).trim();
  if (words === '' || words.length > wordsMost || pieces < 1 || pieces > piecesMost) return null;
  const part = /^part\s+(\d{1,3})\b/i.exec(words);
  const partNumber = part ? Number(part[1]) : null;
  if (partNumber !== null && (partNumber < 1 || pieces > 1)) return null;
  return { pieces, words, partNumber };
}

/** The system that a gallery weighs in, by how it measures. */
export function weighedIn(unit: LengthSystem): 'lb' | 'kg' {
  return unit === 'in' ? 'lb' : 'kg';
}

/** Reads a weight at the end of a line, `6 lb 4 oz` or `6 lb each`; null where it is none. */
export function readWeight(text: string, unit: LengthSystem): number | null {
  const read = parseWeight(text.trim().replace(/\s*\beach$/i, ''), weighedIn(unit));
  return read.ok ? read.value : null;
}

/**
 * Reads three sides, `10 × 10 × 1 in`; a unit at the end stands for all three.
 *
 * @returns whole micrometres, in the order written; null where it is none
 */
export function readSides(text: string, unit: LengthSystem): [number, number, number] | null {
  const typed = text.trim().toLowerCase();
  const atEnd = /\s*(in|inches|"|″|mm|cm|m|ft)\.?$/.exec(typed);
  const bare = atEnd ? typed.slice(0, atEnd.index) : typed;
  const sides = bare.split(/\s*[×x*]\s*/).map((side) => {
    const whole = /[a-z"″']/.test(side) ? side : `${side} ${atEnd?.[1] ?? unit}`;
    const read = parseLength(whole, unit);
    return read.ok ? read.value : null;
  });
  const [first, second, third, ...more] = sides;
  if (more.length > 0 || !first || !second || !third) return null;
  return [first, second, third];
}

/**
 * A weight so that it reads back as it is kept, in the shortest writing that does.
 *
 * @example weightTyped(26_036, 'in') // '57.4 lb', where formatWeight says '57 lb'
 */
export function weightTyped(grams: number, unit: LengthSystem): string {
  const shown = formatWeight(grams, weighedIn(unit));
  if (readWeight(shown, unit) === grams) return shown;
  if (unit === 'mm') return `${grams} g`;
  const exact = [1, 2, 3].map((places) => `${rounded(grams / 453.592_37, places)} lb`);
  return exact.find((text) => readWeight(text, unit) === grams) ?? `${grams} g`;
}

function rounded(value: number, places: number): number {
  return Math.round(value * 10 ** places) / 10 ** places;
}

/** Three sides as they are typed: `10 × 10 × 1 in`. */
export function sidesTyped(sides: readonly [number, number, number], unit: LengthSystem): string {
  const bare = sides.map((um) => lengthBare(um, unit));
  return `${bare.join(' × ')} ${unit}`;
}

/** How many and what, as {@link readNamed} reads it. */
export function namedTyped({ pieces, words }: Pick<Named, 'pieces' | 'words'>): string {
  return pieces === 1 ? words : `${pieces} × ${words}`;
}

/** The same as {@link weightTyped} for a field that names its unit: a bare figure of pounds or kilos. */
export function weightBare(grams: number, unit: LengthSystem): string {
  const perUnit = unit === 'in' ? 453.592_37 : 1_000;
  const texts = [0, 1, 2, 3].map((places) => String(rounded(grams / perUnit, places)));
  return texts.find((text) => readWeight(text, unit) === grams) ?? texts.at(-1) ?? '';
}

/** A length for a field that names its unit: a bare figure of inches or millimetres. */
export function lengthBare(um: number, unit: LengthSystem): string {
  return formatLength(um, unit).replace(/ (in|mm)$/, '');
}
