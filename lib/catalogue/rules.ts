import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The kinds of piece the studio makes, in the order they are offered. */
export const pieceKinds = [
  { kind: 'relief_tile', word: 'relief tile', several: 'relief tiles' },
  { kind: 'plaque', word: 'plaque', several: 'plaques' },
  { kind: 'wall_panel', word: 'wall panel', several: 'wall panels' },
  { kind: 'lamp', word: 'lamp', several: 'lamps' },
  { kind: 'platter', word: 'platter', several: 'platters' },
  { kind: 'planter', word: 'planter', several: 'planters' },
  { kind: 'bowl', word: 'bowl', several: 'bowls' },
] as const;

/** A kind of piece, as it is stored. */
export type PieceKind = (typeof pieceKinds)[number]['kind'];

/**
 * A kind of piece in words: one of it, or several.
 *
 * @example kindWords('relief_tile', 2) // 'relief tiles'
 */
export function kindWords(kind: PieceKind, count = 1): string {
  const found = pieceKinds.find((each) => each.kind === kind);
  invariant(found, 'Every kind of piece has its words.');
  return count === 1 ? found.word : found.several;
}

/** Whether a text names a kind of piece as it is stored. */
export function isPieceKind(text: string): text is PieceKind {
  return pieceKinds.some((each) => each.kind === text);
}

/** The shortest and the longest SKU, in characters. */
export const skuLength = { least: 3, most: 24 } as const;

/** Why a SKU was not taken. */
export type SkuRefusal =
  | { code: 'no_sku' }
  | { code: 'sku_signs'; sku: string }
  | { code: 'sku_too_short'; least: number }
  | { code: 'sku_too_long'; most: number };

/**
 * Reads the SKU of a piece, `TS-10-CI`: letters, digits and single hyphens between them.
 *
 * @returns the SKU in capitals; refuses, in this order: nothing typed, other signs or a hyphen at
 *   an end or beside another, fewer than 3 characters, more than 24
 * @example readSku(' ts-10-ci ') // 'TS-10-CI'
 */
export function readSku(text: string): Result<string, SkuRefusal> {
  const sku = text.trim().toUpperCase();
  if (sku === '') return refuse({ code: 'no_sku' });
  if (!/^[A-Z0-9]+(?:-[A-Z0-9]+)*$/.test(sku)) return refuse({ code: 'sku_signs', sku });
  if (sku.length < skuLength.least)
    return refuse({ code: 'sku_too_short', least: skuLength.least });
  if (sku.length > skuLength.most) return refuse({ code: 'sku_too_long', most: skuLength.most });
  return ok(sku);
}

/** Says in a full sentence why a SKU was not taken. */
export function skuRefusalMessage(refusal: SkuRefusal): string {
  switch (refusal.code) {
    case 'no_sku':
      return 'Write a SKU, such as TS-10-CI.';
    case 'sku_signs':
      return 'A SKU has letters, digits and single hyphens between them, such as TS-10-CI.';
    case 'sku_too_short':
      return `A SKU has at least ${refusal.least} characters.`;
    case 'sku_too_long':
      return `A SKU has at most ${refusal.most} characters.`;
  }
}

/** Why no check digit was given. */
export type CheckDigitRefusal =
  { code: 'not_digits' } | { code: 'not_a_code_length'; lengths: readonly number[] };

/** How many digits stand before the check digit in the codes of GS1. */
export const digitsBeforeCheck = [7, 11, 12, 13, 17] as const;

/**
 * The check digit of a code: every other digit from the right counts three times, and the check
 * digit fills the sum up to a full ten.
 *
 * @param digits 7, 11, 12, 13 or 17 digits, without the check digit
 * @returns 0 to 9; refuses what is not all digits, then another length
 * @source GS1 General Specifications, check digit of the modulo 10 kind
 * @example checkDigit('629104150021') // 3
 */
export function checkDigit(digits: string): Result<number, CheckDigitRefusal> {
  if (!/^\d+$/.test(digits)) return refuse({ code: 'not_digits' });
  if (!digitsBeforeCheck.some((length) => length === digits.length)) {
    return refuse({ code: 'not_a_code_length', lengths: digitsBeforeCheck });
  }
  return ok((10 - (weightedSum(digits) % 10)) % 10);
}

/**
 * The sum a check digit is worked out from: threes and ones in turn, from the right.
 *
 * @example weightedSum('629104150021') // 57
 */
export function weightedSum(digits: string): number {
  return Array.from(digits)
    .reverse()
    .reduce((sum, digit, place) => sum + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
}

/**
 * Whether a scanned code of 8, 12, 13 or 14 digits ends in its right check digit.
 *
 * @example isValidGtin('6291041500213') // true
 */
export function isValidGtin(text: string): boolean {
  if (!/^(?:\d{8}|\d{12,14})$/.test(text)) return false;
  const check = checkDigit(text.slice(0, -1));
  return check.ok && check.value === Number(text.slice(-1));
}

/** First digits kept free for codes that a shop uses within its own walls. */
export const inStorePrefixes = [
  '02',
  '04',
  ...Array.from({ length: 10 }, (_, last) => `2${last}`),
] as const;

/**
 * A 13-digit code for a tag of the gallery's own, which no maker elsewhere can have.
 *
 * @param prefix one of {@link inStorePrefixes}
 * @param number the gallery's own running number, from 0 to 9,999,999,999
 * @source GS1 General Specifications, prefixes for restricted circulation
 * @example inStoreCode('20', 1) // '2000000000015'
 */
export function inStoreCode(prefix: string, number: number): string {
  invariant(inStorePrefixes.includes(prefix), 'The prefix is free for use within the shop.');
  invariant(
    Number.isInteger(number) && number >= 0 && number <= 9_999_999_999,
    'The running number has at most ten digits.',
  );
  const digits = prefix + String(number).padStart(10, '0');
  const check = checkDigit(digits);
  invariant(check.ok, 'Twelve digits have a check digit.');
  return `${digits}${check.value}`;
}
