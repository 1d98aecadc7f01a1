import { expect, test } from 'vitest';
import { labelsPdf } from '@/lib/documents/labels/sheet';
import { foodLetterPt, foodStatement } from '@/lib/documents/rules/labels/cautions';
import { labelSheet, labelSheetKeys, labelSpot } from '@/lib/documents/rules/labels/sheets';
import { labelCode, labelKinds, type LabelPiece } from '@/lib/documents/rules/labels/words';
import { readCodes, seePages, type SeenPage } from '@/tests/helpers/paper-eyes';
import { aLabel, labelGallery } from '../rules/documents/a-label';

/** As a common printer prints. */
const fine = 300;
/** Enough to see whether anything stands outside. */
const coarse = 100;
const dots = (points: number, perInch: number) => Math.round((points * perInch) / 72);

const shelf: LabelPiece[] = [
  aLabel(),
  aLabel({ sku: 'FN-12-TK', number: 4, making: 'edition', editionSize: 25 }),
  aLabel({ sku: 'WWWWWWWW-WWWWWWWW-WWWWWW', title: 'A title that runs on and on '.repeat(9) }),
  aLabel({ sku: 'HB-1', title: 'שלום עולם' }),
  aLabel({ sku: 'OT-2', title: 'Otter 🦦‍🌊 and ‮kelp' }),
  aLabel({
    sku: 'LG-3',
    title: 'Averylongword'.repeat(12),
    grade: 'second',
    flaw: 'x'.repeat(200),
  }),
  aLabel({ sku: 'PL-14-CI', kind: 'platter' }),
  aLabel({ sku: 'LA-9-OC', kind: 'lamp' }),
];

// ISO/IEC 18004 (QR) and ISO/IEC 15417 (Code 128), read back by a decoder of other hands (ZXing).
test.each(labelSheetKeys)(
  'every QR code and every Code 128 on %s reads back as the SKU',
  async (sheet) => {
    const print = { kind: 'price_tag', sheet, codes: 'both', firstAt: 2 } as const;
    const pages = await seePages(await labelsPdf(shelf, labelGallery, print), fine);
    const found = (await Promise.all(pages.map(readCodes))).flat();
    const texts = (format: string) =>
      found.filter((code) => code.format === format).map((code) => code.text);
    const codes = shelf.map(labelCode).toSorted();
    expect(texts('QRCode').toSorted()).toEqual(codes);
    expect(texts('Code128').toSorted()).toEqual(codes);
  },
  60_000,
);

test.each(labelKinds)(
  'nothing stands outside its label: %s',
  async (kind) => {
    for (const sheet of labelSheetKeys) {
      const print = { kind, sheet, codes: 'both', firstAt: 1 } as const;
      const pages = await seePages(await labelsPdf(shelf, labelGallery, print), coarse);
      for (const page of pages) expect(inkOutside(page, sheet)).toBe(0);
    }
  },
  120_000,
);

/** How many dark dots of a page lie outside of all labels, or within a dot's breadth of an edge. */
function inkOutside(page: SeenPage, key: (typeof labelSheetKeys)[number]): number {
  const sheet = labelSheet(key);
  const isFree = new Uint8Array(page.width * page.height).fill(1);
  const count = sheet.columns * sheet.rows;
  const quiet = dots(4, coarse);
  for (let at = 0; at < count; at += 1) {
    const spot = labelSpot(sheet, at);
    const [fromX, untilX] = [
      dots(spot.x, coarse) + quiet,
      dots(spot.x + sheet.width, coarse) - quiet,
    ];
    const [fromY, untilY] = [
      dots(spot.y, coarse) + quiet,
      dots(spot.y + sheet.height, coarse) - quiet,
    ];
    for (let y = fromY; y < untilY; y += 1)
      isFree.fill(0, y * page.width + fromX, y * page.width + untilX);
  }
  return page.grey.reduce((sum, light, at) => sum + (light < 128 && isFree[at] === 1 ? 1 : 0), 0);
}

// 21 CFR 109.16(b): "Not for Food Use. May Poison Food", letters at least 3.2 mm high; from memory,
// summary in FR Doc. 94-706 of 12 January 1994.
test('the food statement has its words, in letters of at least 3.2 mm', async () => {
  expect(foodStatement.toLowerCase()).toBe('not for food use. may poison food.');
  expect(foodLetterPt).toBeCloseTo(9.07, 2);
  for (const sheet of labelSheetKeys) {
    const print = { kind: 'price_tag', sheet, codes: 'none', firstAt: 1 } as const;
    const platter = aLabel({ title: 'x', kind: 'platter', sku: 'PL-1' });
    const [page] = await seePages(await labelsPdf([platter], labelGallery, print), fine);
    expect(tallestRun(page)).toBeGreaterThanOrEqual(dots(foodLetterPt, fine) - 1);
  }
});

/** The longest unbroken upright stroke of a page, in dots: the stem of its largest capital. */
function tallestRun(page: SeenPage | undefined): number {
  if (!page) return 0;
  let tallest = 0;
  for (let x = 0; x < page.width; x += 1) {
    let run = 0;
    for (let y = 0; y < page.height; y += 1) {
      run = (page.grey[y * page.width + x] ?? 255) < 128 ? run + 1 : 0;
      if (run > tallest) tallest = run;
    }
  }
  return tallest;
}
