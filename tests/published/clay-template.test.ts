import { describe, expect, test } from 'vitest';
import { layOutTemplate, type Template, type TemplateAsked } from '@/lib/clay/rules/template';
import { templatePdf } from '@/lib/documents/studio/template';
import { seePages, type SeenPage } from '@/tests/helpers/paper-eyes';
import { readPaper } from '@/tests/helpers/paper-text';

/** Dots to the inch; where a line stands is told finer than that, by its middle. */
const perInch = 300;
const told = { title: 'Heron over reeds', gallery: 'A studio', lengthUnit: 'in' } as const;

const whole = { partsAcross: 1, partsDown: 1 };
const small: TemplateAsked = {
  ...{ firedWidthUm: 101_600, firedHeightUm: 127_000, shrinkagePercent: '12' },
  ...{ ...whole, paper: 'letter' },
};
const large: TemplateAsked = {
  ...{ firedWidthUm: 330_000, firedHeightUm: 250_000, shrinkagePercent: '11.5' },
  ...{ ...whole, paper: 'a4' },
};

function laidOut(asked: TemplateAsked): Template {
  const laid = layOutTemplate(asked);
  if (!laid.ok) throw new Error(laid.refusal.code);
  return laid.value;
}

/** A page as it was rendered, and how many dots a millimetre of the paper came to either way. */
type Measured = { page: SeenPage; across: number; down: number };

/** Renders a template; the renderer makes whole dots of a page, so its scale is told by the page. */
async function measured(template: Template): Promise<Measured[]> {
  const pages = await seePages(await templatePdf(template, told), perInch);
  return pages.map((page) => ({
    page,
    across: (page.width * 1_000) / template.pageWidthUm,
    down: (page.height * 1_000) / template.pageHeightUm,
  }));
}

/** The middles of the dark strokes that a level line across a page meets, in mm from the left. */
function strokesAcross(seen: Measured, yMm: number, fromMm: number, untilMm: number): number[] {
  const row = Math.round(yMm * seen.down) * seen.page.width;
  const light = (at: number) => seen.page.grey[row + at] ?? 255;
  return middlesOf(light, seen.across, fromMm, untilMm);
}

/** The same down a page, in mm from the top. */
function strokesDown(seen: Measured, xMm: number, fromMm: number, untilMm: number): number[] {
  const column = Math.round(xMm * seen.across);
  const light = (at: number) => seen.page.grey[at * seen.page.width + column] ?? 255;
  return middlesOf(light, seen.down, fromMm, untilMm);
}

function middlesOf(
  light: (at: number) => number,
  dotsPerMm: number,
  fromMm: number,
  untilMm: number,
): number[] {
  const middles: number[] = [];
  let [ink, moment] = [0, 0];
  for (let at = Math.round(fromMm * dotsPerMm); at <= untilMm * dotsPerMm; at += 1) {
    const dark = 255 - light(at);
    if (dark > 8) {
      ink += dark;
      moment += dark * (at + 0.5);
    } else if (ink > 0) {
      middles.push(moment / ink / dotsPerMm);
      [ink, moment] = [0, 0];
    }
  }
  return middles;
}

const spanOf = (middles: readonly number[]) => (middles.at(-1) ?? 0) - (middles[0] ?? 0);
/** Right to a tenth of a millimetre. */
const isMm = (found: number, mm: number) => {
  expect(Math.abs(found - mm)).toBeLessThan(0.1);
};

/** Where the upper ruler’s line stands on a sheet, in mm from the top. */
function rulerAt({ window }: Template): number {
  return (window.yUm + window.heightUm) / 1_000 + (20 * 25.4) / 72;
}

describe('measured as it is printed, by a renderer of other hands', () => {
  test.each([
    ['on one sheet', small],
    ['on several', large],
  ])(
    'the rulers of every sheet are 100 mm and 4 in long: %s',
    async (_label, asked) => {
      const template = laidOut(asked);
      const [, ...sheets] = await measured(template);
      expect(sheets).toHaveLength(template.sheets.length);
      for (const page of sheets) {
        const y = rulerAt(template);
        const metric = strokesAcross(page, y - 1, 9, 115);
        expect(metric).toHaveLength(21);
        isMm(spanOf(metric), 100);
        const imperial = strokesAcross(page, y + (30 * 25.4) / 72 - 1, 9, 115);
        expect(imperial).toHaveLength(9);
        isMm(spanOf(imperial), 101.6);
      }
    },
    60_000,
  );

  test('the key page has the same rulers', async () => {
    const [key] = await measured(laidOut(small));
    if (!key) throw new Error('there is no key page');
    const y = 279.4 - (70 * 25.4) / 72;
    isMm(spanOf(strokesAcross(key, y - 1, 10, 120)), 100);
    isMm(spanOf(strokesAcross(key, y + (30 * 25.4) / 72 - 1, 10, 120)), 101.6);
  });

  test('an outline on one sheet has its wet size, and not its fired one', async () => {
    const template = laidOut(small);
    const [, page] = await measured(template);
    if (!page) throw new Error('there is no sheet');
    const sides = [
      spanOf(strokesAcross(page, 120, 12, 203)),
      spanOf(strokesDown(page, 108, 12, 240)),
    ];
    isMm(sides[0] ?? 0, 101.6 / 0.88);
    isMm(sides[1] ?? 0, 127 / 0.88);
  });

  test('an outline over several sheets closes, and has its wet size', async () => {
    const template = laidOut(large);
    expect(template.sheets.length).toBeGreaterThan(3);
    const [, ...pages] = await measured(template);
    const wet = { width: 330 / 0.885, height: 250 / 0.885 };
    const [level, upright] = [
      placesSeen(template, pages, 'down', wet),
      placesSeen(template, pages, 'across', { width: wet.height, height: wet.width }),
    ];
    expect(level).toBe(2 * everyOther(wet.width).length);
    expect(upright).toBe(2 * everyOther(wet.height).length);
  });
});

/** Places along an edge, two millimetres apart. */
function everyOther(longMm: number): number[] {
  return Array.from({ length: Math.floor((longMm + 1) / 2) }, (_, at) => 2 * at + 1);
}

/** At how many places of two facing edges the outline stands on at least one sheet. */
function placesSeen(
  template: Template,
  pages: readonly Measured[],
  way: 'across' | 'down',
  edges: { width: number; height: number },
): number {
  const places = [0, edges.height].flatMap((edge) =>
    everyOther(edges.width).map((along) => ({ along, edge })),
  );
  const offs = template.sheets.map((sheet, at) => {
    const x = (sheet.xUm - template.window.xUm) / 1_000;
    const y = (sheet.yUm - template.window.yUm) / 1_000;
    return { page: pages[at], along: way === 'down' ? x : y, edge: way === 'down' ? y : x };
  });
  return places.filter(({ along, edge }) =>
    offs.some((off) => off.page && strokeAt(off.page, way, along - off.along, edge - off.edge)),
  ).length;
}

/** Whether a stroke stands within a tenth of a millimetre of a place on a page, all in mm. */
function strokeAt(seen: Measured, way: 'across' | 'down', lineMm: number, atMm: number): boolean {
  const [width, height] = [seen.page.width / seen.across, seen.page.height / seen.down];
  const [most, long] = way === 'down' ? [width, height] : [height, width];
  if (lineMm < 10 || lineMm > most - 10 || atMm < 10 || atMm > long - 10) return false;
  const strokes = way === 'down' ? strokesDown : strokesAcross;
  return strokes(seen, lineMm, atMm - 1.2, atMm + 1.2).some(
    (middle) => Math.abs(middle - atMm) < 0.1,
  );
}

describe('what it says', () => {
  test('the key page tells both sizes, and how it is printed and laid', async () => {
    const paper = await readPaper(await templatePdf(laidOut(large), told));
    expect(paper.fontsInside).toBe(true);
    expect(paper.pages).toBe(laidOut(large).sheets.length + 1);
    expect(paper.text).toContain('WET, for clay that shrinks 11.5%');
    expect(paper.text).toContain('11 1/8 × 14 11/16 in (282.5 × 372.9 mm)');
    expect(paper.text).toContain('never fitted to the page');
    expect(paper.text).toContain('so that the crosses meet');
    expect(paper.text).toContain('Sheet A of 4, row 1, place 1');
  });

  test('the paper is the one that was asked for', async () => {
    const [letter, a4] = await Promise.all(
      [small, large].map(async (asked) => readPaper(await templatePdf(laidOut(asked), told))),
    );
    expect([letter?.width, letter?.height]).toEqual([612, 792]);
    const sides = [a4?.width ?? 0, a4?.height ?? 0].toSorted((a, b) => a - b);
    expect(sides[0]).toBeCloseTo(595.28, 1);
    expect(sides[1]).toBeCloseTo(841.89, 1);
  });
});
