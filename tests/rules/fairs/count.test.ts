import { expect, test } from 'vitest';
import {
  decideFairCount,
  fairCountWords,
  type CountedRow,
  type StandingRow,
} from '@/lib/fairs/rules/count';

const tern: StandingRow = {
  ...{
    key: 'tern',
    skuId: 'tern',
    editionNumber: null,
    title: 'Tern over Shoals',
    what: '',
    there: 5,
  },
};
const fern: StandingRow = {
  ...{
    key: 'fern#4',
    skuId: 'fern',
    editionNumber: 4,
    title: 'Fern, number 4',
    what: '',
    there: 1,
  },
};

function row(key: string, seen: number, over: Partial<CountedRow> = {}): CountedRow {
  return { key, seen, back: 0, broken: 0, missing: 0, soldUnwritten: 0, ...over };
}

test('what is back, broken and missing moves; the rest still stands there', () => {
  const counted = [row('tern', 5, { back: 2, broken: 1 }), row('fern#4', 1, { missing: 1 })];
  expect(decideFairCount([tern, fern], counted)).toEqual({
    ok: true,
    value: {
      back: [{ skuId: 'tern', quantity: 2 }],
      broken: [{ skuId: 'tern', quantity: 1 }],
      missing: [{ skuId: 'fern', quantity: 1, editionNumber: 4 }],
      soldUnwritten: 0,
      stillThere: 2,
    },
  });
});

test('what was sold without a slip stays until it is rung up', () => {
  const decided = decideFairCount([tern], [row('tern', 5, { back: 3, soldUnwritten: 2 })]);
  expect(decided).toMatchObject({ ok: true, value: { soldUnwritten: 2, stillThere: 2 } });
  if (decided.ok) {
    expect(fairCountWords(decided.value)).toBe(
      '3 are back. 2 are still there. Ring up the 2 sold without a slip at the counter, for this fair.',
    );
  }
});

test('a row that nobody counted still stands there', () => {
  const decided = decideFairCount([tern, fern], [row('fern#4', 1, { back: 1 })]);
  expect(decided).toMatchObject({ ok: true, value: { stillThere: 5 } });
});

test('with everything accounted for the fair is closed', () => {
  const decided = decideFairCount([tern], [row('tern', 5, { back: 4, broken: 1 })]);
  expect(decided.ok && fairCountWords(decided.value)).toBe(
    '4 are back, 1 is broken. Nothing stands there any more, and the fair is closed.',
  );
});

test.each([
  ['a row that has gone', [row('heron', 1)], 'fair_has_changed'],
  ['a sale in between', [row('tern', 6, { back: 9 })], 'fair_has_changed'],
  ['one row twice', [row('tern', 5), row('tern', 5)], 'fair_has_changed'],
  ['more than stand there', [row('tern', 5, { back: 5, missing: 1 })], 'counted_more'],
])('refuses %s', (_label, counted, code) => {
  expect(decideFairCount([tern], counted)).toMatchObject({ ok: false, refusal: { code } });
});
