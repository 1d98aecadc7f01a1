import { describe, expect, test } from 'vitest';
import { layOutTemplate } from '@/lib/clay/rules/template';
import { partMapPdf } from '@/lib/documents/studio/part-map';
import { templatePdf } from '@/lib/documents/studio/template';
import type { Gallery } from '@/lib/platform/settings';
import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { numbersNow } from '@/lib/studio/rules/parts/fates';
import { gridOf } from '@/lib/studio/rules/parts/laying';
import { seePages } from '@/tests/helpers/paper-eyes';
import { readPaper } from '@/tests/helpers/paper-text';

const gallery = {
  ...{ name: 'Saltwood Relief', tagline: '', street: '1 Cedar Lane', city: 'Harrow Inlet' },
  ...{ state: 'Alderland', postcode: '', phone: '', email: '' },
  ...{ lengthUnit: 'in', paperSize: 'letter' },
} as Gallery;

function aMap(rows: number, columns: number): PartMapShown {
  const shapes = gridOf({ rows, columns, isOffset: false }).map((shape) => ({
    ...shape,
    area: shape.number > columns ? 'the shoals' : 'the sky',
    hasSpare: shape.number === 2,
  }));
  return {
    ...{ jobId: '', jobNumber: 12, title: 'Herons at low water', commissionNumber: 4 },
    ...{ size: { widthUm: 914_400, heightUm: 609_600 }, shrinkagePercent: '12', fileId: null },
    ...{ steps: [], shapes, fires: [], safe: null, isBegun: false },
    numbers: numbersNow(
      shapes.map(({ number }) => number),
      [],
    ),
  };
}

describe('the numbered drawing on paper', () => {
  test('is whole on its first page, on its side where it is wide, with a list of its parts', async () => {
    const paper = await readPaper(await partMapPdf(aMap(3, 4), gallery));
    expect([paper.pages, paper.width, paper.height]).toEqual([2, 792, 612]);
    expect(paper.fontsInside).toBe(true);
    expect(paper.text).toContain('Job 12, commission 4: 12 numbered parts, fired 24 × 36 in');
    expect(paper.text).toContain('2+');
    expect(paper.text).toContain('the shoals');
    expect(paper.text).toContain('9 1/16 × 10 1/4 in');
  });

  test('lists three hundred parts over as many pages as that takes', async () => {
    const paper = await readPaper(await partMapPdf(aMap(15, 20), { ...gallery, paperSize: 'a4' }));
    expect(paper.pages).toBeGreaterThan(5);
    expect(paper.text).toContain('300');
  });

  test('is spread over sheets at wet size, each with the parts that lie on it', async () => {
    const laid = layOutTemplate({
      ...{ firedWidthUm: 914_400, firedHeightUm: 609_600, shrinkagePercent: '12' },
      ...{ partsAcross: 1, partsDown: 1, paper: 'letter' },
    });
    if (!laid.ok) throw new Error(laid.refusal.code);
    const told = { title: 'Herons at low water', gallery: 'A studio', lengthUnit: 'in' } as const;
    const { shapes } = aMap(3, 4);
    const bytes = await templatePdf(laid.value, told, shapes);
    const plain = await templatePdf(laid.value, told);
    const paper = await readPaper(bytes);
    expect(paper.pages).toBe(laid.value.sheets.length + 1);
    const dark = async (pdf: Uint8Array) =>
      (await seePages(pdf, 40)).map(({ grey }) => grey.filter((light) => light < 150).length);
    const [withParts, without] = [await dark(bytes), await dark(plain)];
    const moreOn = withParts.filter((count, at) => count > (without[at] ?? 0) + 20);
    expect(moreOn.length).toBeGreaterThan(laid.value.sheets.length / 2);
  });
});
