import { describe, expect, test } from 'vitest';
import {
  farthestSafe,
  numbersNow,
  partNow,
  safeThrough,
  type PartMade,
  type PartMoved,
} from '@/lib/studio/rules/parts/fates';
import { holdingUp, holdsUp } from '@/lib/studio/rules/parts/holding';
import {
  drawRefusalMessage,
  drawingFaultWords,
  foretoldWords,
  holdsUpWords,
  makeWords,
  movedPartWords,
  numbersWords,
  partsRefusalMessage,
  placeWords,
  safeWords,
} from '@/lib/studio/rules/parts/words';

/** Modelling, drying, the bisque kiln, glazing, the glaze kiln, assembly. */
const steps = [
  ['modelling', 'work', 7, 14, 21],
  ['drying', 'dry', 14, 21, 35],
  ['the bisque kiln', 'fire', 2, 3, 4],
  ['glazing', 'work', 3, 5, 10],
  ['the glaze kiln', 'fire', 2, 3, 4],
  ['assembly', 'work', 2, 4, 6],
].map(([name, kind, shortestDays, likelyDays, longestDays]) => ({
  name: String(name),
  kind: String(kind),
  isTogether: name === 'assembly',
  shortestDays: Number(shortestDays),
  likelyDays: Number(likelyDays),
  longestDays: Number(longestDays),
}));

let lastMove = 0;

function moved(fromPosition: number, toPosition: number, more: Partial<PartMoved> = {}): PartMoved {
  lastMove += 1;
  const cause = toPosition === -1 && more.undoesId === undefined ? 'joint' : null;
  const movedOn = '2026-05-04' as const;
  return {
    id: String(lastMove),
    fromPosition,
    toPosition,
    movedOn,
    undoesId: null,
    cause,
    ...more,
  };
}

/** A part that went from step to step up to a position. */
function made(number: number, position: number, more: Partial<PartMade> = {}): PartMade {
  const moves = Array.from({ length: position }, (_, at) => moved(at, at + 1));
  return {
    id: `${number}-${more.make ?? 1}`,
    number,
    make: 1,
    isSpare: false,
    isInKiln: false,
    moves,
    ...more,
  };
}

describe('where a part stands', () => {
  test('not begun, at its step, lost with its cause, and again after that was taken back', () => {
    expect(partNow(made(1, 0))).toMatchObject({ position: 0, sinceOn: null, cause: null });
    const there = moved(0, 1, { movedOn: '2026-05-04' });
    const lost = moved(1, -1, { movedOn: '2026-05-06' });
    const back = moved(-1, 1, { movedOn: '2026-05-07', undoesId: lost.id });
    expect(partNow(made(1, 0, { moves: [there] }))).toMatchObject({
      position: 1,
      sinceOn: '2026-05-04',
    });
    expect(partNow(made(1, 0, { moves: [there, lost] }))).toMatchObject({
      position: -1,
      cause: 'joint',
    });
    expect(partNow(made(1, 0, { moves: [there, lost, back] }))).toMatchObject({
      position: 1,
      sinceOn: '2026-05-04',
      cause: null,
    });
  });
});

describe('where a number stands', () => {
  const gone = made(2, 0, { moves: [moved(0, 1), moved(1, -1)] });

  test('the farthest part stands for it, a spare like another', () => {
    const [one] = numbersNow([1], [made(1, 2), made(1, 4, { make: 2, isSpare: true })]);
    expect(one).toMatchObject({ best: { make: 2, position: 4 }, isAnew: false });
    expect(one?.living.map(({ make }) => make)).toEqual([2, 1]);
  });

  test('of two that are equally far, the first', () => {
    const [one] = numbersNow([1], [made(1, 2, { make: 2, isSpare: true }), made(1, 2)]);
    expect(one?.best?.make).toBe(1);
  });

  test('a lost one is made anew, or nothing is left of it', () => {
    const anew = made(2, 0, { make: 2, moves: [moved(-1, 0)] });
    expect(numbersNow([2], [gone])[0]).toMatchObject({ best: null, isAnew: false });
    expect(numbersNow([2], [gone, anew])[0]).toMatchObject({
      best: { make: 2, position: 0 },
      isAnew: true,
      lost: [{ make: 1, cause: 'joint' }],
    });
  });

  test('what was begun anew by a mistake is neither left nor lost', () => {
    const begun = moved(-1, 0);
    const taken = moved(0, -1, { undoesId: begun.id });
    const [one] = numbersNow([2], [gone, made(2, 0, { make: 2, moves: [begun, taken] })]);
    expect(one).toMatchObject({ best: null, living: [] });
    expect(one?.lost).toHaveLength(1);
  });
});

describe('safe through the fire', () => {
  const numbers = numbersNow([1, 2, 3, 4], [made(1, 6), made(2, 4), made(3, 3), made(4, 0)]);

  test('counts numbers with a good part behind each fire', () => {
    expect(safeThrough(steps, numbers)).toEqual([
      { position: 3, name: 'the bisque kiln', safe: 2, of: 4 },
      { position: 5, name: 'the glaze kiln', safe: 1, of: 4 },
    ]);
  });

  test('the last fire that some are through is told, the first while none is', () => {
    const told = farthestSafe(safeThrough(steps, numbers));
    expect(told && safeWords(told)).toBe('1 of 4 safe through the glaze kiln');
    expect(farthestSafe(safeThrough(steps, numbersNow([1], [made(1, 1)])))?.position).toBe(3);
    expect(farthestSafe([])).toBeNull();
  });
});

describe('what one holds up', () => {
  const cracked = made(3, 0, { make: 2, moves: [moved(-1, 0)] });
  const all = numbersNow([1, 2, 3, 4], [made(1, 6), made(2, 6), cracked, made(4, 3)]);
  const [first, , third, fourth] = all;
  if (!first || !third || !fourth) throw new Error('Four numbers were asked for.');

  test('those that wait at the step where all come together, and the way from here', () => {
    const held = holdsUp(steps, third, all);
    expect(held).toMatchObject({ togetherAt: 6, waiting: [1, 2], ahead: 1 });
    expect(held).toMatchObject({ shortestDays: 28, likelyDays: 46, longestDays: 74 });
    expect(held && holdsUpWords(3, held)).toBe(
      '2 parts wait for number 3 at assembly; 1 more is ahead of it. From here: modelling, drying, ' +
        'the bisque kiln, glazing, the glaze kiln; 28 to 74 days, most often 46, without waiting for a bench or a kiln.',
    );
  });

  test('the step at which it stands counts, those behind it do not', () => {
    expect(holdsUp(steps, fourth, all)).toMatchObject({
      steps: ['the bisque kiln', 'glazing', 'the glaze kiln'],
      likelyDays: 11,
    });
  });

  test('whoever waits there holds nothing up, nor does a route without such a step', () => {
    expect(holdsUp(steps, first, all)).toBeNull();
    expect(holdsUp(steps.slice(0, 5), third, all)).toBeNull();
  });

  test('those who hold up are told with the farthest behind first', () => {
    expect(holdingUp(steps, all).map(({ number }) => number)).toEqual([3, 4]);
  });
});

describe('words', () => {
  test('numbers are drawn together', () => {
    expect(numbersWords([4, 1, 2, 3, 7, 9, 10])).toBe('1 to 4, 7, 9 and 10');
    expect(numbersWords([5])).toBe('5');
    expect(numbersWords([])).toBe('none');
  });

  test('which piece of clay, and where', () => {
    expect(makeWords({ make: 1, isSpare: false })).toBe('the first');
    expect(makeWords({ make: 2, isSpare: true })).toBe('the spare');
    expect(makeWords({ make: 3, isSpare: true })).toBe('a spare, no. 3');
    expect(makeWords({ make: 3, isSpare: false })).toBe('made anew, no. 3');
    expect([-1, 0, 2, 7].map((position) => placeWords(steps, position))).toEqual([
      'lost',
      'not begun',
      'stands at drying',
      'finished',
    ]);
  });

  test('what happened to it', () => {
    const said = (from: number, to: number, undoesId: string | null = null) =>
      movedPartWords(steps, { fromPosition: from, toPosition: to, undoesId });
    expect([
      said(0, 1),
      said(6, 7),
      said(2, -1),
      said(-1, 0),
      said(-1, 2, '1'),
      said(0, -1, '1'),
    ]).toEqual([
      'Moved to modelling',
      'Finished',
      'Lost',
      'Begun anew',
      'Taken back to drying',
      'Beginning anew was taken back',
    ]);
  });

  test('what was foretold', () => {
    const toldOn = '2026-05-04';
    expect(
      foretoldWords({ toldOn, in50On: '2026-07-01', in80On: '2026-07-10', in95On: null }),
    ).toBe('As foretold on 4 May 2026: even odds by 1 Jul 2026, four in five by 10 Jul 2026.');
    expect(foretoldWords({ toldOn, in50On: null, in80On: null, in95On: null })).toBe(
      'As foretold on 4 May 2026: no day yet.',
    );
  });

  test('every refusal is a sentence that ends', () => {
    const drawn = [
      { code: 'no_such_job' },
      { code: 'clay_begun' },
      { code: 'drawn_meanwhile', by: 'Osip Lund', version: 2 },
      { code: 'nothing_drawn' },
      { code: 'key_used_for_something_else' },
      { code: 'not_allowed', permission: 'studio.see' },
    ] as const;
    const faults = [
      { code: 'too_many_parts', parts: 301 },
      { code: 'numbers_not_in_order', missing: 4 },
      { code: 'part_crosses_itself', number: 4 },
      { code: 'part_too_small', number: 4 },
      { code: 'parts_overlap', number: 4, other: 5 },
    ] as const;
    const parts = [
      { code: 'no_such_job' },
      { code: 'no_such_part' },
      { code: 'nothing_chosen' },
      { code: 'part_in_kiln', number: 4 },
      { code: 'part_not_begun', number: 4 },
      { code: 'part_lost', number: 4 },
      { code: 'no_such_bucket' },
      { code: 'day_to_come' },
      { code: 'key_used_for_something_else' },
      { code: 'not_allowed', permission: 'studio.move' },
    ] as const;
    const said = [
      ...drawn.map(drawRefusalMessage),
      ...faults.map(drawingFaultWords),
      ...parts.map(partsRefusalMessage),
    ];
    for (const sentence of said) expect(sentence).toMatch(/^[A-Z].+[.]$/);
  });
});
