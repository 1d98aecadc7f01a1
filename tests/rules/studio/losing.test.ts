import { expect, test } from 'vitest';
import {
  decideLoss,
  decideUndo,
  outside,
  piecesAt,
  standingsOf,
  type JobFacts,
  type LossRefusal,
  type MoveToUndo,
} from '@/lib/studio/rules';
import { routes } from '../../helpers/usual-routes';

function moves(
  ...rows: [from: number, to: number, pieces: number, partIds?: string[], undoes?: string][]
): MoveToUndo[] {
  return rows.map(([fromPosition, toPosition, pieces, partIds = [], undoes], index) => ({
    id: String(index + 1),
    ...{ fromPosition, toPosition, pieces, partIds, movedOn: '2026-05-04' as const },
    undoesId: undoes ?? null,
  }));
}

function tiles(job: Partial<JobFacts> = {}): JobFacts {
  return {
    ...{ number: 3, pieces: 27, wanted: 24, steps: routes.press_moulded },
    ...{ moves: moves([0, 3, 27]), burning: [], parts: [] },
    ...job,
  };
}

const stock = { isInStock: false, goesOn: true };

test('lost pieces are gone from their step, and those begun anew stand at the beginning', () => {
  const job = tiles({ moves: moves([0, 3, 27], [3, outside, 5], [outside, 0, 2]) });
  expect(piecesAt(job, job.moves)).toEqual([2, 0, 0, 22, 0, 0, 0, 0, 0]);
  expect(standingsOf(job, job.moves)[0]).toEqual({ position: 0, pieces: 2, sinceOn: null });
});

test.each([
  ['spare ones are enough', tiles(), 3, 0],
  ['one more than the spare ones', tiles(), 4, 1],
  ['a loss after the spare ones were used', tiles({ pieces: 24, moves: moves([0, 3, 24]) }), 2, 2],
  [
    'what was begun anew before counts',
    tiles({ pieces: 24, moves: moves([0, 3, 24], [3, outside, 2], [outside, 0, 2]) }),
    1,
    1,
  ],
  [
    'never more than were lost now',
    tiles({ wanted: 27, moves: moves([0, 3, 27], [3, outside, 5]) }),
    1,
    1,
  ],
])('too few are left: %s', (_label, job, pieces, anew) => {
  const loss = decideLoss(job, { fromPosition: 3, pieces }, stock);
  expect(loss.ok && loss.value.beginAnew).toBe(anew);
});

test('nothing is begun anew for a commission that has ended', () => {
  const loss = decideLoss(
    tiles({ wanted: 27 }),
    { fromPosition: 3, pieces: 5 },
    { ...stock, goesOn: false },
  );
  expect(loss.ok && loss.value.beginAnew).toBe(0);
});

const parts = [
  { id: 'a1', number: 1, position: 3 },
  { id: 'a2', number: 2, position: 3 },
  { id: 'spare', number: 2, position: 3 },
];

test('a number is made anew only when no other part of it is left', () => {
  const job = tiles({ pieces: 3, wanted: 2, moves: moves([0, 3, 3]), parts });
  const some = decideLoss(job, { fromPosition: 3, pieces: 2, partIds: ['a1', 'a2'] }, stock);
  expect(some).toMatchObject({ ok: true, value: { beginAnew: 1, numbers: [1] } });
  const both = decideLoss(job, { fromPosition: 3, pieces: 2, partIds: ['spare', 'a2'] }, stock);
  expect(both).toMatchObject({ ok: true, value: { beginAnew: 1, numbers: [2] } });
});

type LossRow = [JobFacts | null, { fromPosition: number; pieces: number }, boolean, LossRefusal];

/** Each row breaks its own rule and every rule after it: the first one is told. */
const refusals: Record<
  'no_such_job' | 'not_begun' | 'in_stock_already' | 'pieces_have_moved',
  LossRow
> = {
  no_such_job: [null, { fromPosition: 0, pieces: 99 }, true, { code: 'no_such_job' }],
  not_begun: [tiles(), { fromPosition: 0, pieces: 99 }, true, { code: 'not_begun' }],
  in_stock_already: [tiles(), { fromPosition: 8, pieces: 99 }, true, { code: 'in_stock_already' }],
  pieces_have_moved: [
    tiles(),
    { fromPosition: 3, pieces: 28 },
    true,
    { code: 'pieces_have_moved', from: 'drying', standing: 27, wanted: 28 },
  ],
};

test.each(Object.entries(refusals))('a loss is refused: %s', (_code, row) => {
  const [job, meant, isInStock, refusal] = row;
  expect(decideLoss(job, meant, { isInStock, goesOn: true })).toEqual({ ok: false, refusal });
});

test('a loss is taken back: the pieces stand where they were lost', () => {
  const job = tiles({ moves: moves([0, 3, 27], [3, outside, 5]) });
  expect(decideUndo(job, moves([0, 3, 27], [3, outside, 5]), '2')).toEqual({
    ok: true,
    value: { fromPosition: outside, toPosition: 3, pieces: 5, partIds: [] },
  });
});

test('a move is not taken back when the very parts that went have gone on', () => {
  const went = moves([0, 3, 2, ['a1', 'a2']], [3, 4, 1, ['a1']], [0, 3, 1, ['spare']]);
  const standing = [
    { id: 'a1', number: 1, position: 4 },
    { id: 'a2', number: 2, position: 3 },
    { id: 'spare', number: 2, position: 3 },
  ];
  const job = tiles({ pieces: 3, wanted: 2, moves: went, parts: standing });
  expect(decideUndo(job, went, '1')).toMatchObject({
    ok: false,
    refusal: { code: 'pieces_went_on' },
  });
});
