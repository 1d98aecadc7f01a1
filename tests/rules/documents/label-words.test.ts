import { expect, test } from 'vitest';
import {
  labelsOn,
  labelSheet,
  labelSheetKeys,
  labelSpot,
} from '@/lib/documents/rules/labels/sheets';
import { labelsTaken } from '@/lib/documents/rules/labels/taken';
import {
  cautionFor,
  editionWords,
  labelBlocks,
  labelCode,
  type LabelKind,
} from '@/lib/documents/rules/labels/words';
import { aLabel, labelGallery } from './a-label';

function wordsOf(kind: LabelKind, over: Parameters<typeof aLabel>[0] = {}): string {
  return labelBlocks(aLabel(over), kind, labelGallery)
    .map((block) => block.text)
    .join(' | ');
}

test('a price tag has title, size, SKU and price', () => {
  expect(wordsOf('price_tag')).toBe('Tern over Shoals | $180.00 | 10 × 10 in · TS-10-CI');
});

test('a wall label reads as one does', () => {
  const heavy = { medium: 'stoneware on board', depthUm: 50_800, weightG: 13_608 };
  expect(wordsOf('wall_label', { ...heavy, making: 'one_off' })).toBe(
    'Tidewrack Clay | Tern over Shoals, 2026 | stoneware on board | 10 × 10 × 2 in · 30 lb | ' +
      'one of a kind | $180.00',
  );
});

test('the weight is told from above twenty pounds', () => {
  expect(wordsOf('wall_label', { weightG: 9_072 })).not.toContain('lb');
  expect(wordsOf('wall_label', { weightG: 9_300 })).toContain('lb');
});

test('the back has no price, says how it hangs, and from fifty pounds for how many', () => {
  const back = wordsOf('back_label', { weightG: 23_000 });
  expect(back).not.toContain('$');
  expect(back).toContain('Hold it by the board, not by the relief');
  expect(back).toContain('Two people lift it.');
});

test('a shelf label says what a piece is for', () => {
  expect(wordsOf('shelf_label')).toContain('wall or backsplash');
  expect(wordsOf('shelf_label', { kind: 'bowl' })).toContain('decorative only');
  expect(wordsOf('shelf_label', { kind: 'bowl', foodUse: 'proven' })).toContain('food use: tested');
});

test('a second says so on every kind of label', () => {
  const second = { grade: 'second', flaw: 'hairline in the glaze' } as const;
  for (const kind of ['price_tag', 'wall_label', 'shelf_label', 'back_label'] as const) {
    expect(wordsOf(kind, second)).toContain('Second: hairline in the glaze');
  }
});

test.each([
  [{ making: 'edition', editionSize: 25, number: 4 }, 'edition 4 of 25'],
  [{ making: 'edition', editionSize: 25, number: 26 }, 'artist’s proof 1'],
  [{ making: 'edition', editionSize: 25, number: null }, 'edition of 25'],
  [{ making: 'one_off', editionSize: null, number: null }, 'one of a kind'],
  [{ making: 'open_stock', editionSize: null, number: null }, ''],
] as const)('%j reads %j', (piece, words) => {
  expect(editionWords(piece)).toBe(words);
});

test('a scanner reads the SKU, of an edition with its number', () => {
  expect(labelCode({ sku: 'FN-12-TK', number: 4 })).toBe('FN-12-TK#4');
  expect(labelCode({ sku: 'FN-12-TK', number: null })).toBe('FN-12-TK');
});

test.each([
  ['platter', 'not_proven', 'food'],
  ['bowl', 'decorative_only', 'food'],
  ['planter', 'not_proven', 'food'],
  ['platter', 'proven', undefined],
  ['relief_tile', 'not_proven', undefined],
  ['lamp', 'not_proven', 'electricity'],
] as const)('a %s that is %s gets a caution about %s', (kind, foodUse, about) => {
  expect(cautionFor({ kind, foodUse })?.about).toBe(about);
});

test('on small labels a caution stands on its own label, on large ones on the label itself', () => {
  expect(labelsTaken({ kind: 'bowl', foodUse: 'not_proven' }, 'letter-30')).toBe(2);
  expect(labelsTaken({ kind: 'bowl', foodUse: 'not_proven' }, 'letter-10')).toBe(1);
  expect(labelsTaken({ kind: 'plaque', foodUse: 'not_proven' }, 'a4-24')).toBe(1);
});

test.each(labelSheetKeys)('all labels of %s lie on the page, and none on another', (key) => {
  const sheet = labelSheet(key);
  const spots = Array.from({ length: labelsOn(sheet) }, (_, at) => labelSpot(sheet, at));
  for (const { page, x, y } of spots) {
    expect(page).toBe(0);
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + sheet.width).toBeLessThanOrEqual(sheet.pageWidth + 0.01);
    expect(y + sheet.height).toBeLessThanOrEqual(sheet.pageHeight + 0.01);
  }
  expect(sheet.across).toBeGreaterThanOrEqual(sheet.width - 0.01);
  expect(sheet.down).toBeGreaterThanOrEqual(sheet.height - 0.01);
  expect(new Set(spots.map(({ x, y }) => `${x} ${y}`)).size).toBe(spots.length);
});

test('a sheet that was begun goes on at its label, and then on the next sheet', () => {
  const sheet = labelSheet('letter-30');
  expect(labelSpot(sheet, 0, 30)).toMatchObject({ page: 0, y: 36 + 9 * 72 });
  expect(labelSpot(sheet, 1, 30)).toMatchObject({ page: 1, y: 36 });
});
