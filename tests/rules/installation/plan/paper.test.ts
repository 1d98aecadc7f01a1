import { describe, expect, test } from 'vitest';
import { planPdf, type PlanPaper } from '@/lib/documents/installation/plan';
import { planTold } from '@/lib/installation/rules/plan/told';
import type { Gallery } from '@/lib/platform/settings';
import { drawWall } from '@/lib/walls/rules/drawing/drawing';
import type { Obstacle } from '@/lib/walls/rules/plan/wall';
import { seePages, type SeenPage } from '@/tests/helpers/paper-eyes';
import { readPaper } from '@/tests/helpers/paper-text';
import { aHanging, aPiece, aWall, inches } from '../../walls/a-wall';

const pipe: Obstacle = {
  ...{ kind: 'pipe', words: 'water pipe', leftUm: inches(34), bottomUm: 0 },
  ...{ widthUm: inches(1), heightUm: inches(60) },
};
const wall = { ...aWall({ furnitureUm: inches(34), obstacles: [pipe] }), studWidthUm: null };
const hanging = aHanging();
const told = planTold({ asked: { piece: aPiece(), hanging }, survey: wall }, 'in');

const gallery: Gallery = {
  ...{ name: 'A studio', tagline: '', street: '', city: '', state: '', postcode: '', phone: '' },
  ...{ email: '', timeZone: 'America/Los_Angeles', currency: 'USD', lengthUnit: 'in' },
  ...{ returnTerms: '', roundTaxBy: 'invoice', isDemo: false, taxPlaceId: '', counterId: '' },
  ...{ staffDiscountPercent: '0', returnDays: 0, restockingFeePercent: '0', holdHours: 0 },
  ...{ layawayDownPercent: '0', layawayDays: 0, layawayTerms: '', approvalDays: 0 },
  ...{ drawerFloatCents: 0n, paperSize: 'letter', eyeHeightUm: 0, hangSafetyPercent: 300 },
  fixingsLookMonths: 60,
};

function aPaper(change: Partial<PlanPaper> = {}): PlanPaper {
  if (!told.plan) throw new Error(told.why.join(' '));
  return {
    ...{ work: 'Herons for the stair', collector: 'Marit Oland', commissionNumber: 7 },
    ...{ on: '2026-05-12', plan: told.plan, cleat: hanging.cleat, told, wall, isOld: false },
    wallWords: 'wood studs behind board (a magnet)',
    weightWords: '100 lb as planned: weigh it before anything is drilled',
    ...change,
  };
}

/** The longest dark run of each row of a page. */
function runs({ width, height, grey }: SeenPage): number[] {
  return Array.from({ length: height }, (_, row) => {
    let [longest, run] = [0, 0];
    for (let at = 0; at < width; at += 1) {
      run = (grey[row * width + at] ?? 255) < 110 ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest;
  });
}

describe('the sheet for whoever hangs it', () => {
  test('says what holds it, where to drill, who lifts it, and who decides', async () => {
    const { text, pages, fontsInside } = await readPaper(await planPdf(aPaper(), gallery));
    expect([pages, fontsInside]).toEqual([2, true]);
    for (const words of [
      ...['Fixed with 6 No. 12 wood screws, 3 1/2 in long', '2 at each of 3', 'Scale 1 to 30'],
      ...['17 lb down, 17 lb off the wall', '3.1 times over', '1. 56 in from the left end'],
      ...['Lift 100 lb with a lift table', 'stop screw', 'water pipe'],
      ...['a licensed contractor decide; this is no engineer’s approval'],
    ]) {
      expect(text).toContain(words);
    }
    expect(text).not.toContain('plan it anew before you drill');
  });

  test('says at its head when the wall was looked at again since', async () => {
    const { text } = await readPaper(await planPdf(aPaper({ isOld: true }), gallery));
    expect(text).toContain('plan it anew before you drill');
  });

  test('is drawn to the scale it names: 144 in of floor are 4.8 in and a little over', async () => {
    const [page] = await seePages(await planPdf(aPaper(), gallery), 300);
    const wanted = ((144 / 30) * 72 + 12) * (300 / 72);
    const floor = page && runs(page).filter((run) => Math.abs(run - wanted) <= 8);
    expect(floor?.length).toBeGreaterThan(2);
  });

  test('is written for a name of any signs', async () => {
    const paper = aPaper({ work: '漢字', collector: '漢字', wallWords: 'brick (漢字)' });
    expect((await readPaper(await planPdf(paper, gallery))).pages).toBe(2);
  });
});

describe('the drawing', () => {
  const drawing = drawWall({ wall, plan: aPaper().plan }, 'in');

  test('shows the piece, its cleat, every hole and every stud where they are', () => {
    const of = (role: string) => drawing.shapes.filter((shape) => shape.role === role);
    expect(of('piece')).toMatchObject([{ leftUm: inches(48), bottomUm: inches(42) }]);
    expect(of('cleat')).toMatchObject([{ leftUm: inches(49), widthUm: inches(46) }]);
    expect(of('hole')).toHaveLength(6);
    expect(of('stud').map(({ leftUm }) => leftUm + 19_050)).toEqual(
      [8, 24, 40, 56, 72, 88, 104, 120, 136].map(inches),
    );
    expect([of('inTheWall').length, of('furniture').length, of('spacer').length]).toEqual([
      1, 1, 1,
    ]);
  });

  test('measures what whoever hangs it needs', () => {
    const words = (along: string) =>
      drawing.measures.filter((each) => each.along === along).map((each) => each.words);
    expect(words('height')).toEqual(['30 in', '42 in', '67 in', '72 in', '96 in']);
    expect(words('wall')).toEqual(['48 in', '48 in', '56 in', '16 in', '16 in', '72 in']);
  });

  test('says in words what it shows', () => {
    expect(drawing.label).toMatch(/lower edge 42 in above the floor, the cleat at 67 in, 6 holes/);
  });
});
