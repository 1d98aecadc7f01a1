import { fc, test as propTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import {
  layOutTemplate,
  overlapUm,
  sheetLetter,
  sheetsMost,
  templatePapers,
  templateRefusalMessage,
  type Template,
  type TemplateAsked,
} from '@/lib/clay/rules/template';

const asked = (over: Partial<TemplateAsked> = {}): TemplateAsked => ({
  ...{ firedWidthUm: 150_000, firedHeightUm: 150_000, shrinkagePercent: '12' },
  ...{ partsAcross: 1, partsDown: 1, paper: 'letter' },
  ...over,
});
const laidOut = (over: Partial<TemplateAsked> = {}): Template => {
  const laid = layOutTemplate(asked(over));
  if (!laid.ok) throw new Error(laid.refusal.code);
  return laid.value;
};

describe('a template', () => {
  test('is as large as the wet piece, never the fired one', () => {
    expect(laidOut()).toMatchObject({ wetWidthUm: 170_455, wetHeightUm: 170_455 });
  });

  test('that fits takes one sheet, with the outline in its middle', () => {
    const { sheets, window, wetWidthUm, registerMarks } = laidOut();
    expect(sheets).toHaveLength(1);
    expect(registerMarks).toEqual([]);
    const left = -(sheets[0]?.xUm ?? 0);
    expect(Math.abs(window.widthUm - wetWidthUm - 2 * left)).toBeLessThanOrEqual(1);
  });

  test('lies on its side where that takes fewer sheets', () => {
    const wide = laidOut({ firedWidthUm: 210_000, firedHeightUm: 100_000 });
    expect([wide.sheets.length, wide.pageWidthUm, wide.pageHeightUm]).toEqual([
      ...[1, templatePapers.letter.heightUm, templatePapers.letter.widthUm],
    ]);
    const tall = laidOut({ firedWidthUm: 100_000, firedHeightUm: 190_000 });
    expect(tall.pageWidthUm).toBe(templatePapers.letter.widthUm);
  });

  test('names its sheets row by row, and who lies beside whom', () => {
    const large = laidOut({ firedWidthUm: 457_200, firedHeightUm: 609_600 });
    expect([large.sheetsAcross, large.sheetsDown]).toEqual([3, 4]);
    expect(large.sheets.map((sheet) => sheet.letter).join('')).toBe('ABCDEFGHIJKL');
    expect(large.sheets[4]).toMatchObject({
      ...{ letter: 'E', leftLetter: 'D', rightLetter: 'F', aboveLetter: 'B', belowLetter: 'H' },
    });
    expect(large.sheets[0]).toMatchObject({ leftLetter: null, aboveLetter: null });
    expect(large.sheets[11]).toMatchObject({ rightLetter: null, belowLetter: null });
  });

  test('after Z comes AA', () => {
    expect([0, 25, 26, 27, 51, 52, 119].map(sheetLetter)).toEqual([
      ...['A', 'Z', 'AA', 'AB', 'AZ', 'BA', 'DP'],
    ]);
  });

  test('in parts is cut where they meet', () => {
    const panel = laidOut({ firedWidthUm: 88_000, partsAcross: 4, partsDown: 3 });
    expect(panel.cutsAtXUm).toEqual([25_000, 50_000, 75_000]);
    expect(panel.cutsAtYUm).toEqual([56_818, 113_637]);
    expect(laidOut()).toMatchObject({ cutsAtXUm: [], cutsAtYUm: [] });
  });
});

const anyAsked = fc.record({
  firedWidthUm: fc.integer({ min: 1_000, max: 1_500_000 }),
  firedHeightUm: fc.integer({ min: 1_000, max: 1_000_000 }),
  shrinkagePercent: fc.integer({ min: 0, max: 2_000 }).map((hundredths) => `${hundredths / 100}`),
  partsAcross: fc.integer({ min: 1, max: 8 }),
  partsDown: fc.integer({ min: 1, max: 8 }),
  paper: fc.constantFrom('letter', 'a4'),
});

propTest.prop([anyAsked])('its sheets together show the whole outline, and overlap', (given) => {
  const laid = layOutTemplate(given);
  if (!laid.ok) {
    expect(laid.refusal.code).toBe('too_many_sheets');
    return;
  }
  const { sheets, window, wetWidthUm, wetHeightUm, sheetsAcross } = laid.value;
  const across = sheets.slice(0, sheetsAcross).map((sheet) => sheet.xUm);
  const down = sheets.filter((_, at) => at % sheetsAcross === 0).map((sheet) => sheet.yUm);
  for (const [starts, shown, whole] of [
    [across, window.widthUm, wetWidthUm],
    [down, window.heightUm, wetHeightUm],
  ] as const) {
    expect(starts[0]).toBeLessThan(0);
    expect((starts.at(-1) ?? 0) + shown).toBeGreaterThan(whole);
    const gaps = starts.slice(1).map((start, at) => start - (starts[at] ?? 0));
    expect(gaps.every((gap) => gap === shown - overlapUm)).toBe(true);
  }
});

propTest.prop([anyAsked])('every cross stands whole on two sheets or on four', (given) => {
  const laid = layOutTemplate(given);
  if (!laid.ok) return;
  const { sheets, window, registerMarks } = laid.value;
  const arm = 5_000;
  for (const { xUm, yUm } of registerMarks) {
    const on = sheets.filter(
      (sheet) =>
        xUm - arm >= sheet.xUm &&
        xUm + arm <= sheet.xUm + window.widthUm &&
        yUm - arm >= sheet.yUm &&
        yUm + arm <= sheet.yUm + window.heightUm,
    );
    expect([2, 4]).toContain(on.length);
  }
  for (const sheet of sheets) {
    const isAlone = sheets.length === 1;
    const shows = registerMarks.filter(
      ({ xUm, yUm }) =>
        xUm > sheet.xUm &&
        xUm < sheet.xUm + window.widthUm &&
        yUm > sheet.yUm &&
        yUm < sheet.yUm + window.heightUm,
    );
    expect(shows.length >= 2 || isAlone).toBe(true);
  }
});

describe('what is refused, in this order', () => {
  test.each<[Partial<TemplateAsked>, string]>([
    [{ firedWidthUm: 0, shrinkagePercent: '70', partsDown: 0 }, 'side_not_above_zero'],
    [{ firedHeightUm: 0, partsDown: 0 }, 'side_not_above_zero'],
    [{ shrinkagePercent: '50', partsAcross: 0 }, 'shrinkage_out_of_range'],
    [{ partsAcross: 0, firedWidthUm: 9_000_000 }, 'parts_out_of_range'],
    [{ partsDown: 1.5 }, 'parts_out_of_range'],
    [{ partsDown: 41 }, 'parts_out_of_range'],
    [{ firedWidthUm: 3_000_000, firedHeightUm: 3_000_000 }, 'too_many_sheets'],
  ])('%j: %s', (over, code) => {
    const laid = layOutTemplate(asked(over));
    expect(laid).toMatchObject({ ok: false, refusal: { code } });
    expect(!laid.ok && templateRefusalMessage(laid.refusal)).toMatch(/^[A-Z].*\.$/);
  });

  test('as many sheets as are drawn are drawn', () => {
    const most = laidOut({ firedWidthUm: 1_500_000, firedHeightUm: 1_900_000 });
    expect(most.sheets.length).toBeGreaterThan(90);
    expect(most.sheets.length).toBeLessThanOrEqual(sheetsMost);
  });
});
