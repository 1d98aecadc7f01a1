import { expect, test } from 'vitest';
import { jobNumberInput, moveJobInput, openJobInput, undoMoveInput } from '@/lib/studio/input';
import type { MoveRefusal } from '@/lib/studio/rules';
import {
  beforeClayWords,
  moveOnWords,
  movedWords,
  readyWords,
  sinceWords,
  stepDaysWords,
  undoneWords,
} from '@/lib/studio/rules/words';
import { moveRefusalMessage, undoRefusalMessage } from '@/lib/studio/rules/refusals';

test('a move is said as a maker would say it', () => {
  expect(moveOnWords(24, 'drying')).toBe('Move 24 on to drying');
  expect(moveOnWords(1, 'the bisque kiln')).toBe('Move it on to the bisque kiln');
  expect(moveOnWords(24, 'finished')).toBe('All 24 are finished');
  expect(movedWords(24, 'drying')).toBe('24 pieces moved to drying.');
  expect(movedWords(1, 'finished')).toBe('1 piece is finished.');
  expect(undoneWords(24, 'drying')).toBe('24 pieces are back at drying.');
  expect(undoneWords(1, 'not begun')).toBe('1 piece is not begun again.');
});

test.each<[MoveRefusal, string]>([
  [
    { code: 'pieces_have_moved', from: 'drying', standing: 0, wanted: 24 },
    'No piece stands at drying any more. Somebody moved them before you.',
  ],
  [
    { code: 'pieces_have_moved', from: 'drying', standing: 4, wanted: 24 },
    'Only 4 of the 24 stand at drying. Somebody moved them before you.',
  ],
  [
    { code: 'pieces_have_moved', from: 'not begun', standing: 1, wanted: 24 },
    'Only 1 of the 24 is still to begin. Somebody moved them before you.',
  ],
  [
    { code: 'pieces_have_moved', from: 'not begun', standing: 0, wanted: 2 },
    'No piece is left to begin. Somebody moved them before you.',
  ],
  [
    {
      code: 'making_not_yet',
      commissionNumber: 12,
      missing: ['sketch', 'colours', 'deposit'],
      depositLeftCents: 45_000n,
    },
    'The clay of commission 12 waits for the yes to a sketch, the yes to its colours and ' +
      '$450.00 of the deposit. The owner can let it begin all the same, and says why on its sheet.',
  ],
])('a refused move tells what is so', (refusal, sentence) => {
  expect(moveRefusalMessage(refusal)).toBe(sentence);
});

test('who may not see money is told of the deposit without its amount', () => {
  expect(beforeClayWords(['agreement', 'deposit'], null)).toBe('the agreement and the deposit');
});

test('a taking back that comes too late says where the pieces are not', () => {
  const sentence = 'Only 4 of the 24 stand at pressing. They have gone on meanwhile.';
  const facts = { from: 'pressing', standing: 4, wanted: 24 };
  expect(undoRefusalMessage({ code: 'pieces_went_on', ...facts })).toBe(sentence);
});

const key = '6f1f1c0e-3c3a-4d6c-9e39-0a4c8f1f7f11';

test.each(['', '0', '-1', '2.5', '1e3', 'twelve', '2001', '99999'])(
  'pieces are a whole number from 1 to 2000, and not %j',
  (pieces) => {
    const form = { requestKey: key, jobId: key, fromPosition: '1', pieces };
    expect(moveJobInput.safeParse(form).success).toBe(false);
  },
);

test('a move is read from a form', () => {
  const form = { requestKey: key, jobId: key, fromPosition: '1', pieces: ' 24 ' };
  expect(moveJobInput.parse(form)).toMatchObject({ fromPosition: 1, pieces: 24 });
  expect(moveJobInput.safeParse({ ...form, extra: 'x' }).success).toBe(false);
  expect(moveJobInput.safeParse({ ...form, fromPosition: '-1' }).success).toBe(false);
});

test('a job of the studio’s own may have no piece of the stock list and no day', () => {
  const asked = { routeId: key, wanted: '5', pieces: '6' };
  const form = { requestKey: key, title: ' Tern trial ', ...asked };
  const read = openJobInput.parse({ ...form, skuId: '', neededOn: '' });
  expect(read).toMatchObject({ title: 'Tern trial', pieces: 6, skuId: null, neededOn: null });
  expect(openJobInput.parse(form)).toMatchObject({ skuId: null, neededOn: null });
  expect(openJobInput.safeParse({ ...form, routeId: 'woven' }).success).toBe(false);
  expect(openJobInput.safeParse({ ...form, neededOn: '2026-02-30' }).success).toBe(false);
});

test('the id of a move and the number of a job come from addresses', () => {
  expect(undoMoveInput.safeParse({ requestKey: key, moveId: '1 OR 1=1' }).success).toBe(false);
  expect(jobNumberInput.safeParse('0').success).toBe(false);
  expect(jobNumberInput.parse('17')).toBe(17);
});

test.each([
  [null, 'not begun yet'],
  ['2026-05-04', 'since today'],
  ['2026-05-03', 'since yesterday'],
  ['2026-04-25', 'since 25 Apr, 9 days'],
  ['2025-12-30', 'since 30 Dec 2025, 125 days'],
] as const)('since %s is told as people say it', (sinceOn, words) => {
  expect(sinceWords(sinceOn, '2026-05-04')).toBe(words);
});

test('days of a step and the day to be ready are told as a span', () => {
  const days = (shortestDays: number, likelyDays: number, longestDays: number) =>
    stepDaysWords({ shortestDays, likelyDays, longestDays });
  expect(days(1, 1, 1)).toBe('1 day');
  expect(days(5, 9, 14)).toBe('5 to 14 days, most often 9');
  expect(days(5, 14, 14)).toBe('5 to 14 days');
  const ready = {
    shortestOn: '2026-12-28',
    likelyOn: '2027-01-03',
    longestOn: '2027-01-20',
  } as const;
  expect(readyWords(ready, '2026-12-01')).toBe(
    'about 3 Jan 2027; 28 Dec at the earliest, 20 Jan 2027 at the latest',
  );
});
