import { describe, expect, test } from 'vitest';
import {
  checkDigit,
  digitsBeforeCheck,
  inStoreCode,
  inStorePrefixes,
  isPieceKind,
  isValidGtin,
  kindWords,
  pieceKinds,
  readSku,
  skuRefusalMessage,
  type SkuRefusal,
} from '@/lib/catalogue/rules';

describe('kinds of piece', () => {
  test('each kind has its words, for one and for several', () => {
    expect(pieceKinds.map(({ kind }) => kindWords(kind))).toEqual([
      'relief tile',
      'plaque',
      'wall panel',
      'lamp',
      'platter',
      'planter',
      'bowl',
    ]);
    expect([kindWords('relief_tile', 2), kindWords('bowl', 0)]).toEqual(['relief tiles', 'bowls']);
  });

  test('only what the studio makes is a kind', () => {
    expect([isPieceKind('wall_panel'), isPieceKind('wall panel'), isPieceKind('teapot')]).toEqual([
      true,
      false,
      false,
    ]);
  });
});

describe('SKUs', () => {
  test.each([
    [' ts-10-ci ', 'TS-10-CI'],
    ['A1B', 'A1B'],
    ['ABCDEFGHIJKLMNOPQRSTUVWX', 'ABCDEFGHIJKLMNOPQRSTUVWX'],
  ])('%j is read as %s', (text, sku) => {
    expect(readSku(text)).toEqual({ ok: true, value: sku });
  });

  const refused: Record<SkuRefusal['code'], readonly string[]> = {
    no_sku: ['', '  '],
    sku_signs: ['TS 10', 'TS_10', '-TS', 'TS-', 'TS--10', 'TÉ1', 'A/B', '<b>'],
    sku_too_short: ['TS', '1'],
    sku_too_long: ['ABCDEFGHIJKLMNOPQRSTUVWXY'],
  };
  const rows = Object.entries(refused).flatMap(([code, texts]) =>
    texts.map((text) => [text, code] as const),
  );
  test.each(rows)('%j is refused: %s', (text, code) => {
    const read = readSku(text);
    expect(read.ok ? 'taken' : read.refusal.code).toBe(code);
    if (!read.ok) expect(skuRefusalMessage(read.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('printed codes', () => {
  test('a sum that is a full ten needs a zero', () => {
    expect(checkDigit('0000000')).toEqual({ ok: true, value: 0 });
  });

  test.each([
    ['letters', '62910415002A', { code: 'not_digits' }],
    ['nothing', '', { code: 'not_digits' }],
    ['a length no code has', '123456', { code: 'not_a_code_length', lengths: digitsBeforeCheck }],
  ])('%s has no check digit', (_label, digits, refusal) => {
    expect(checkDigit(digits)).toEqual({ ok: false, refusal });
  });

  test.each([
    ['thirteen digits', '6291041500213', true],
    ['twelve digits', '036000241457', true],
    ['the wrong check digit', '6291041500214', false],
    ['two neighbours changed places', '6291045100213', false],
    ['eighteen digits are a crate, not a piece', '106141412345678908', false],
    ['a gap', '6291041 500213', false],
    ['nothing', '', false],
  ])('%s: a scanned code is right: %s', (_label, text, right) => {
    expect(isValidGtin(text)).toBe(right);
  });

  test('the gallery’s own codes are right ones, under a prefix no maker has', () => {
    expect(inStoreCode('20', 1)).toBe('2000000000015');
    const codes = inStorePrefixes.map((prefix) => inStoreCode(prefix, 9_999_999_999));
    expect(codes.every(isValidGtin)).toBe(true);
    expect(new Set(codes.map((code) => code.slice(0, 2)))).toEqual(new Set(inStorePrefixes));
  });

  test.each<[string, string, number]>([
    ['a maker’s prefix', '50', 1],
    ['a number of eleven digits', '20', 10_000_000_000],
    ['a number below zero', '20', -1],
    ['half a number', '20', 1.5],
  ])('%s makes no code', (_label, prefix, number) => {
    expect(() => inStoreCode(prefix, number)).toThrow(/Broken promise/);
  });
});
