import { expect, test } from 'vitest';
import {
  decideMove,
  decideUndo,
  missingBeforeClay,
  piecesAt,
  standingsOf,
  type BeginFacts,
  type JobFacts,
  type MoveRefusal,
  type MoveToUndo,
  type UndoRefusal,
} from '@/lib/studio/rules';
import { routes } from '../../helpers/usual-routes';

const tiles: JobFacts = {
  ...{ number: 3, pieces: 24, wanted: 24, steps: routes.press_moulded, moves: [] },
  ...{ burning: [], parts: [] },
};
const two = ['a', 'b'].map((id, at) => ({ id, number: at + 1, position: 0 }));
const allThere: BeginFacts = {
  commissionNumber: 12,
  hasEnded: false,
  isLetBegin: false,
  depositCents: 90_000n,
  paidCents: 90_000n,
  sketchHasYes: true,
  coloursHaveYes: true,
  clayFromOn: null,
  today: '2026-05-20',
};

function moves(
  ...rows: [from: number, to: number, pieces: number, on?: string, undoes?: string][]
) {
  return rows.map(([fromPosition, toPosition, pieces, on, undoes], index): MoveToUndo => ({
    id: String(index + 1),
    fromPosition,
    toPosition,
    pieces,
    movedOn: (on ?? '2026-05-04') as MoveToUndo['movedOn'],
    undoesId: undoes ?? null,
    partIds: [],
  }));
}

test('pieces are counted where they stand, and add up to the job', () => {
  const standing = piecesAt(tiles, moves([0, 1, 24], [1, 2, 20], [2, 3, 5]));
  expect(standing).toEqual([0, 4, 15, 5, 0, 0, 0, 0, 0]);
});

test('pieces that leave from where none stand are a broken promise, not a number', () => {
  expect(() => piecesAt(tiles, moves([0, 1, 25]))).toThrow('Pieces leave only a step');
  expect(() => piecesAt(tiles, moves([0, 9, 1]))).toThrow('Pieces go only to a step');
});

test('who came first leaves first, so the day tells how long the last of them waits', () => {
  const held = moves(
    [0, 1, 10, '2026-05-01'],
    [0, 1, 14, '2026-05-03'],
    [1, 2, 10, '2026-05-05'],
    [1, 2, 1, '2026-05-06'],
  );
  expect(standingsOf(tiles, held)).toEqual([
    { position: 1, pieces: 13, sinceOn: '2026-05-03' },
    { position: 2, pieces: 11, sinceOn: '2026-05-05' },
  ]);
});

test('a move taken back leaves no trace in how long pieces have stood', () => {
  const held = moves(
    [0, 1, 24, '2026-05-01'],
    [1, 2, 24, '2026-05-20'],
    [2, 1, 24, '2026-05-21', '2'],
  );
  expect(standingsOf(tiles, held)).toEqual([{ position: 1, pieces: 24, sinceOn: '2026-05-01' }]);
});

type MoveRow = {
  job: JobFacts | null;
  from: number;
  pieces: number;
  partIds?: string[];
  begin: BeginFacts | null;
  refusal: MoveRefusal;
};

/** Each row breaks its own rule and every rule after it: the first one is told. */
const moveRefusals: Record<Exclude<MoveRefusal['code'], 'edition_is_full'>, MoveRow> = {
  no_such_job: {
    job: null,
    from: 8,
    pieces: 99,
    begin: { ...allThere, hasEnded: true, sketchHasYes: false },
    refusal: { code: 'no_such_job' },
  },
  finished_already: {
    job: { ...tiles, moves: [] },
    from: 8,
    pieces: 99,
    begin: { ...allThere, hasEnded: true, sketchHasYes: false },
    refusal: { code: 'finished_already' },
  },
  pieces_have_moved: {
    job: { ...tiles, moves: moves([0, 1, 20]) },
    from: 0,
    pieces: 24,
    begin: { ...allThere, hasEnded: true, sketchHasYes: false },
    refusal: { code: 'pieces_have_moved', from: 'not begun', standing: 4, wanted: 24 },
  },
  in_a_lit_kiln: {
    job: { ...tiles, moves: moves([0, 4, 24]), burning: [{ position: 4, pieces: 20 }], parts: two },
    from: 4,
    pieces: 5,
    begin: { ...allThere, hasEnded: true },
    refusal: { code: 'in_a_lit_kiln', from: 'the bisque kiln', burning: 20 },
  },
  say_which_parts: {
    job: { ...tiles, pieces: 2, parts: two },
    from: 0,
    pieces: 1,
    begin: { ...allThere, hasEnded: true },
    refusal: { code: 'say_which_parts', jobNumber: 3, standing: 2 },
  },
  parts_do_not_fit: {
    job: { ...tiles, pieces: 2, parts: two },
    from: 0,
    pieces: 2,
    partIds: ['a', 'a'],
    begin: { ...allThere, hasEnded: true },
    refusal: { code: 'parts_do_not_fit', from: 'not begun' },
  },
  commission_ended: {
    job: { ...tiles, moves: [] },
    from: 0,
    pieces: 24,
    begin: { ...allThere, hasEnded: true, sketchHasYes: false },
    refusal: { code: 'commission_ended', commissionNumber: 12 },
  },
  making_not_yet: {
    job: { ...tiles, moves: [] },
    from: 0,
    pieces: 24,
    begin: { ...allThere, coloursHaveYes: false, paidCents: 45_000n },
    refusal: {
      code: 'making_not_yet',
      commissionNumber: 12,
      missing: ['colours', 'deposit'],
      depositLeftCents: 45_000n,
    },
  },
};

test.each(Object.entries(moveRefusals))('a move is refused: %s', (_code, row) => {
  const { job, from, pieces, partIds, begin, refusal } = row;
  expect(decideMove(job, { fromPosition: from, pieces, partIds }, begin)).toEqual({
    ok: false,
    refusal,
  });
});

test('a part that lies in a lit kiln is not moved by its number, and is left when the others go', () => {
  const parts = [
    { id: 'a', number: 1, position: 4, isBurning: true },
    { id: 'b', number: 2, position: 4, isBurning: false },
  ];
  const job = { ...tiles, pieces: 2, moves: moves([0, 4, 2]), parts };
  const burning = { ...job, burning: [{ position: 4, pieces: 1 }] };
  expect(decideMove(burning, { fromPosition: 4, pieces: 1, partIds: ['a'] }, null)).toEqual({
    ok: false,
    refusal: { code: 'in_a_lit_kiln', from: 'the bisque kiln', burning: 1 },
  });
  expect(decideMove(burning, { fromPosition: 4, pieces: 1 }, null)).toMatchObject({
    ok: true,
    value: { partIds: ['b'] },
  });
});

test('pieces go to the next step, and the last step leads to finished', () => {
  const job = { ...tiles, moves: moves([0, 7, 24]) };
  expect(decideMove({ ...tiles, moves: [] }, { fromPosition: 0, pieces: 24 }, allThere)).toEqual({
    ok: true,
    value: { fromPosition: 0, toPosition: 1, pieces: 24, partIds: [] },
  });
  expect(decideMove(job, { fromPosition: 7, pieces: 24 }, null)).toEqual({
    ok: true,
    value: { fromPosition: 7, toPosition: 8, pieces: 24, partIds: [] },
  });
});

test('a commission that lost its yes later does not stop pieces that are under way', () => {
  const job = { ...tiles, moves: moves([0, 1, 24]) };
  const begin = { ...allThere, hasEnded: true, depositCents: null };
  expect(decideMove(job, { fromPosition: 1, pieces: 24 }, begin).ok).toBe(true);
});

test.each<[string, Partial<BeginFacts>, string[]]>([
  ['everything is there', {}, []],
  ['nothing is agreed: no deposit is asked for yet', { depositCents: null }, ['agreement']],
  ['no yes to a sketch', { sketchHasYes: false }, ['sketch']],
  ['no yes to the colours', { coloursHaveYes: false }, ['colours']],
  ['a cent of the deposit is missing', { paidCents: 89_999n }, ['deposit']],
  ['no deposit was agreed', { depositCents: 0n, paidCents: 0n }, []],
  [
    'nothing is there at all',
    { depositCents: null, paidCents: 0n, sketchHasYes: false, coloursHaveYes: false },
    ['agreement', 'sketch', 'colours'],
  ],
  ['the owner lets it begin', { isLetBegin: true, depositCents: null, sketchHasYes: false }, []],
])('before the clay: %s', (_label, facts, missing) => {
  expect(missingBeforeClay({ ...allThere, ...facts })).toEqual(missing);
});

/** Each row breaks its own rule and every rule after it. */
type UndoDecided = Exclude<UndoRefusal['code'], 'sold_meanwhile' | 'numbered_already'>;
const undoRefusals: Record<UndoDecided, [MoveToUndo[], string, UndoRefusal]> = {
  no_such_move: [[], '1', { code: 'no_such_move' }],
  an_undoing_stays: [
    moves([0, 1, 24], [1, 0, 24, '2026-05-04', '1']),
    '2',
    { code: 'an_undoing_stays' },
  ],
  undone_already: [
    moves([0, 1, 24], [1, 0, 24, '2026-05-04', '1']),
    '1',
    { code: 'undone_already' },
  ],
  pieces_went_on: [
    moves([0, 1, 24], [1, 2, 20]),
    '1',
    { code: 'pieces_went_on', from: 'pressing', standing: 4, wanted: 24 },
  ],
};

test.each(Object.entries(undoRefusals))('taking back is refused: %s', (_code, row) => {
  const [all, id, refusal] = row;
  expect(decideUndo(tiles, all, id)).toEqual({ ok: false, refusal });
});

test('taking back is a move the other way', () => {
  expect(decideUndo(tiles, moves([0, 1, 24], [1, 2, 20]), '2')).toEqual({
    ok: true,
    value: { fromPosition: 2, toPosition: 1, pieces: 20, partIds: [] },
  });
});
