import { expect, test } from 'vitest';
import { keptFacts, keptTitle } from '@/lib/commissions/rules/course/progress';
import { keptWords, promiseSaid } from '@/lib/commissions/rules/course/kept';
import { keepProgressInput } from '@/lib/commissions/input/course-told';
import type { Day } from '@/lib/dates/rules';

test.each<[Day | null, Day | null, Day, string | null]>([
  [null, null, '2026-06-01', null],
  ['2026-06-01', null, '2026-06-01', null],
  ['2026-06-01', null, '2026-06-02', 'promised for 1 Jun 2026: 1 day over'],
  ['2026-06-01', '2026-06-01', '2026-12-01', 'handed over on the promised day'],
  ['2026-06-01', '2026-06-04', '2026-12-01', 'handed over 3 days after the promised day'],
  ['2026-06-01', '2026-05-31', '2026-12-01', 'handed over 1 day before the promised day'],
])('promised %s, done %s, on %s: %s', (promisedOn, doneOn, today, words) => {
  expect(keptWords(promisedOn, doneOn, today)).toBe(words);
});

test('what was said of the day stands in the order it was said', () => {
  const notice = { toOn: '2026-09-20', clock: 'kiln', why: 'An element broke.' } as const;
  const said = promiseSaid({
    agreed: { on: '2026-05-04', promisedOn: '2026-09-01' },
    changes: [{ number: 1, signedOn: '2026-07-02', promisedOn: '2026-09-10' }],
    notices: [{ ...notice, toldOn: '2026-06-01', toldHow: 'by letter' }],
  });
  expect(said.map(({ kind, dayOn }) => `${kind} ${dayOn ?? ''}`)).toEqual([
    'agreed 2026-09-01',
    'told 2026-09-20',
    'changed 2026-09-10',
  ]);
  expect(promiseSaid({ agreed: null, changes: [], notices: [] })).toEqual([]);
});

const form = {
  requestKey: '019f0000-0000-7000-8000-000000000000',
  commissionId: '019f0000-0000-7000-8000-000000000001',
  on: '2026-05-04',
};

test.each<[Record<string, unknown>, string | null]>([
  [{ kind: 'note', words: 'A hair crack, filled.' }, null],
  [{ kind: 'note' }, 'words'],
  [{ kind: 'fixing' }, 'words'],
  [{ kind: 'picture' }, 'picture'],
  [{ kind: 'picture', picture: new Blob(['x']) }, null],
  [{ kind: 'weight' }, 'weightG'],
  [{ kind: 'weight', weightG: '11.5 kg' }, null],
  [{ kind: 'weight', weightG: 'heavy' }, 'weightG'],
  [{ kind: 'firing' }, 'firing'],
  [{ kind: 'firing', firing: '212' }, null],
  [{ kind: 'glaze_batch' }, 'batchId'],
  [{ kind: 'glaze_batch', batchId: 'not one' }, 'batchId'],
  [{ kind: 'smell', words: 'earth' }, 'kind'],
])('%j misses %s', (fields, missing) => {
  const read = keepProgressInput.safeParse({ ...form, ...fields });
  expect(read.error?.issues[0]?.path.join('.') ?? null).toBe(missing);
});

test('what was kept without words is found under its firing or its bucket', () => {
  const bare = { firing: '', batch: null };
  const bucket = { number: 'B-7', glaze: 'celadon' };
  expect(keptTitle({ ...bare, kind: 'note', words: 'Thin' })).toBe('Thin');
  expect(keptTitle({ ...bare, kind: 'firing', words: 'a firing', firing: 'glaze 41' })).toBe(
    'Firing glaze 41',
  );
  const batch = { ...bare, kind: 'glaze_batch' as const, batch: bucket };
  expect(keptTitle({ ...batch, words: 'a bucket of glaze' })).toBe('Bucket B-7, celadon');
  expect(keptTitle({ ...bare, kind: 'picture', words: 'a picture' })).toBe('a picture');
});

test('what is known of it is not said twice', () => {
  const kept = { kind: 'note' as const, batch: { number: 'B-7', glaze: 'celadon' } };
  expect(keptFacts({ ...kept, words: 'Fired', firing: 'glaze 41' }, '107 lb')).toEqual([
    '107 lb',
    'firing glaze 41',
    'bucket B-7, celadon',
  ]);
  expect(keptFacts({ ...kept, words: 'glaze 41 of B-7', firing: 'glaze 41' }, '')).toEqual([]);
});
