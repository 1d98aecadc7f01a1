import { describe, expect, test } from 'vitest';
import {
  drawn,
  opened,
  type DrawingAct,
} from '@/app/(rooms)/studio/[number]/parts/draw/drawing-state';
import {
  boxOfView,
  nearer,
  shifted,
  wholeView,
} from '@/app/(rooms)/studio/[number]/parts/draw/view';
import {
  editRefusalWords,
  withCut,
  withOneOf,
  without,
  withPart,
} from '@/lib/studio/rules/parts/editing';
import { faultOf } from '@/lib/studio/rules/parts/drawing';
import { gridOf } from '@/lib/studio/rules/parts/laying';
import { areaOf, type Corner } from '@/lib/studio/rules/parts/outline';

const four = gridOf({ rows: 2, columns: 2, isOffset: false });
const around = {
  areas: [
    { name: 'sky', at: [500, 0] },
    { name: 'sea', at: [500, 1000] },
  ] as const,
  aspect: 1,
};

describe('a drawing is changed', () => {
  test('a part is added under the next number, in its likely colour area', () => {
    const three = without(four, [4]);
    const added = withPart(
      three,
      [
        [500, 500],
        [1000, 500],
        [1000, 1000],
        [500, 1000],
      ],
      around,
    );
    expect('shapes' in added && added.shapes.at(-1)).toMatchObject({ number: 4, area: 'sea' });
  });

  test('a part takes over the corners that it lies against, and gives its own', () => {
    const added = withPart(
      without(four, [3, 4]),
      [
        [250, 500],
        [750, 500],
        [500, 900],
      ],
      around,
    );
    if (!('shapes' in added)) throw new Error('It was not added.');
    expect(added.shapes[2]?.outline).toContainEqual([500, 500]);
    expect(added.shapes[0]?.outline).toContainEqual([250, 500]);
    expect(faultOf(added.shapes)).toBeNull();
  });

  test.each<[string, Corner[], object]>([
    [
      'crosses itself',
      [
        [0, 0],
        [100, 100],
        [100, 0],
        [0, 100],
      ],
      { code: 'not_whole' },
    ],
    [
      'lies over another',
      [
        [400, 400],
        [600, 400],
        [600, 600],
      ],
      { code: 'over_another', number: 1 },
    ],
  ])('a part that %s is not added', (_, outline, refused) => {
    expect(withPart(without(four, [4]), outline, around)).toEqual({ refused });
  });

  test('a cut gives the second half the next number', () => {
    const cut = withCut(four, 1, [
      [250, -10],
      [250, 600],
    ]);
    if (!('shapes' in cut)) throw new Error('It was not cut.');
    expect(cut.shapes.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
    expect(cut.shapes.map(({ outline }) => areaOf(outline))).toEqual([
      125_000, 250_000, 250_000, 250_000, 125_000,
    ]);
    // Its neighbour below knows the new corner, so that both move as one.
    expect(cut.shapes[2]?.outline).toContainEqual([250, 500]);
    expect(
      withCut(four, 1, [
        [700, 0],
        [700, 1000],
      ]),
    ).toEqual({ refused: { code: 'does_not_cut' } });
  });

  test('two neighbours become one under the lower number, and the others close up', () => {
    const one = withOneOf(four, [2, 4]);
    if (!('shapes' in one)) throw new Error('They were not made one.');
    expect(one.shapes.map(({ number, outline }) => [number, areaOf(outline)])).toEqual([
      [1, 250_000],
      [2, 500_000],
      [3, 250_000],
    ]);
    expect(withOneOf(four, [1, 4])).toEqual({ refused: { code: 'not_neighbours' } });
    expect(withOneOf(four, [1])).toEqual({ refused: { code: 'choose_two' } });
    expect(withOneOf(four, [1, 2, 3])).toEqual({ refused: { code: 'choose_two' } });
  });

  test('every refusal says what to do', () => {
    const codes = [
      'not_whole',
      'too_many',
      'does_not_cut',
      'choose_two',
      'not_neighbours',
    ] as const;
    const said = [...codes, 'would_have_a_hole' as const].map((code) => editRefusalWords({ code }));
    for (const words of [...said, editRefusalWords({ code: 'over_another', number: 3 })]) {
      expect(words).toMatch(/^[A-Z].+[.] [A-Z].+[.]$|^[A-Z].+[.]$/);
    }
  });
});

describe('the board', () => {
  const after = (...acts: DrawingAct[]) => acts.reduce(drawn, opened(four));

  test('closes a part at its first corner, and chooses it', () => {
    const corners: Corner[] = [
      [500, 500],
      [1000, 500],
      [1000, 1000],
      [500, 1000],
      [500, 500],
    ];
    const acts = corners.map((at): DrawingAct => ({ do: 'corner', at, around }));
    const state = after(
      { do: 'choose', number: 4, isMore: false },
      { do: 'take_away' },
      { do: 'take', tool: 'draw' },
      ...acts,
    );
    expect(state.shapes).toHaveLength(4);
    expect([state.begun, state.chosen, state.said]).toEqual([[], [4], '']);
  });

  test('takes back and does again, and a new act forgets what was ahead', () => {
    const away = after({ do: 'choose', number: 2, isMore: false }, { do: 'take_away' });
    expect(away.shapes).toHaveLength(3);
    const back = drawn(away, { do: 'back' });
    expect(back.shapes).toBe(four);
    expect(drawn(back, { do: 'again' }).shapes).toBe(away.shapes);
    expect(drawn(back, { do: 'number_anew' }).ahead).toEqual([]);
    expect(after({ do: 'back' }).shapes).toBe(four);
  });

  test('says why and changes nothing when it cannot be', () => {
    const state = after({ do: 'choose', number: 1, isMore: false }, { do: 'make_one' });
    expect([state.shapes, state.said]).toEqual([four, 'Choose two parts that lie side by side.']);
    const crossed = after({ do: 'move_corner', from: [0, 0], to: [700, 100] });
    expect([crossed.shapes, crossed.said]).toEqual([four, 'A part would cross itself there.']);
  });

  test('chooses several, describes them all, and cuts the one that is chosen', () => {
    const two = after(
      { do: 'choose', number: 1, isMore: false },
      { do: 'choose', number: 2, isMore: true },
      { do: 'describe', change: { area: 'sky', hasSpare: true } },
    );
    expect(two.shapes.map(({ area, hasSpare }) => [area, hasSpare])).toEqual([
      ['sky', true],
      ['sky', true],
      ['', false],
      ['', false],
    ]);
    const cut = after(
      { do: 'take', tool: 'cut' },
      { do: 'choose', number: 3, isMore: false },
      { do: 'corner', at: [250, 480], around },
      { do: 'corner', at: [250, 1000], around },
    );
    expect(cut.shapes).toHaveLength(5);
  });

  test('lays a grid with its colour areas, and a spare for one in ten', () => {
    const grid = { do: 'grid', rows: 4, columns: 5, isOffset: false, around } as const;
    const laid = after(grid, { do: 'spares', aspect: 1 });
    expect(laid.shapes.filter(({ hasSpare }) => hasSpare)).toHaveLength(2);
    expect([laid.shapes[0]?.area, laid.shapes.at(-1)?.area]).toEqual(['sky', 'sea']);
    expect(after({ ...grid, rows: 0 }).said).toMatch(/at least 1/);
  });

  test('a corner is added on an edge and taken away again', () => {
    const more = after({ do: 'add_corner', at: [250, 500] });
    expect(more.shapes[0]?.outline).toHaveLength(5);
    expect(drawn(more, { do: 'take_corner', at: [250, 500] }).shapes[0]?.outline).toHaveLength(4);
  });
});

describe('the view', () => {
  test('comes nearer round the finger, and is the whole drawing at the farthest', () => {
    const near = nearer(wholeView, 4, { x: 300, y: 200 });
    const [before, after] = [boxOfView(wholeView, 0.5), boxOfView(near, 0.5)];
    const share = (box: typeof before) => [(300 - box.x) / box.width, (200 - box.y) / box.height];
    expect(share(after)[0]).toBeCloseTo(share(before)[0] ?? 0);
    expect(share(after)[1]).toBeCloseTo(share(before)[1] ?? 0);
    expect(nearer(near, 0.01, { x: 0, y: 0 })).toEqual(wholeView);
  });

  test('does not leave the drawing', () => {
    expect(shifted(wholeView, 50, 50, 0.5)).toEqual(wholeView);
    const far = shifted({ x: 100, y: 100, near: 2 }, 5_000, -5_000, 0.5);
    expect([far.x, far.y]).toEqual([530, 0]);
  });
});
