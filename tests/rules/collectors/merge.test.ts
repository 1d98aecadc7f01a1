import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import {
  livingOf,
  mayMerge,
  mergeRefusalMessage,
  type Laid,
  type MergeRefusal,
  type ToMerge,
} from '@/lib/collectors/rules/merge';

function entry(name: string, over: Partial<ToMerge> = {}): ToMerge {
  return { id: name, name, terms: null, mergedIntoName: null, ...over };
}

const discount = { way: 'discount', percent: '15' } as const;

describe('two are one', () => {
  test.each([
    ['without terms', entry('Ida'), entry('Ida C.')],
    ['with terms on one side', entry('Ida', { terms: discount }), entry('Ida C.')],
    [
      'with the same terms, however they are written',
      entry('Ida', { terms: discount }),
      entry('Ida C.', { terms: { way: 'discount', percent: '15.00' } }),
    ],
  ])('%s', (_label, kept, gone) => {
    expect(mayMerge(kept, gone)).toEqual({ ok: true, value: true });
  });
});

const merged = { mergedIntoName: 'Ida Corrin' };
const refusals: Partial<Record<MergeRefusal['code'], [ToMerge, ToMerge, RegExp]>> = {
  same_entry: [entry('Ida', merged), entry('Ida', merged), /one and the same entry/],
  merged_already: [
    entry('Ida', { terms: discount }),
    entry('Ida C.', { ...merged, terms: { way: 'discount', percent: '10' } }),
    /^Ida C\. was found to be the same as Ida Corrin in the meantime/,
  ],
  terms_differ: [
    entry('Ida', { terms: discount }),
    entry('Ida C.', { terms: { way: 'referral_fee', percent: '15' } }),
    /^Ida gets a trade discount of 15 in 100, Ida C\. gets a referral fee of 15 in 100\. Let the owner settle/,
  ],
};

test.each(Object.entries(refusals))('%s is refused in its order', (code, [kept, gone, words]) => {
  const may = mayMerge(kept, gone);
  expect(may).toMatchObject({ ok: false, refusal: { code } });
  if (!may.ok) expect(mergeRefusalMessage(may.refusal)).toMatch(words);
});

test.each([
  { code: 'not_allowed', permission: 'collectors.merge' } as const,
  { code: 'key_used_for_something_else' } as const,
  { code: 'unknown_collector' } as const,
  { code: 'set_apart_already' } as const,
])('$code is told in a full sentence', (refusal) => {
  expect(mergeRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});

const names = ['a', 'b', 'c', 'd', 'e'] as const;
const act = fc.record({
  undo: fc.boolean(),
  one: fc.constantFrom(...names),
  other: fc.constantFrom(...names),
});

/** Lays and undoes as the commands do: only what stands for itself is laid into another. */
function play(acts: readonly { undo: boolean; one: string; other: string }[]): Laid[] {
  return acts.reduce<Laid[]>((laid, { undo, one, other }) => {
    if (undo) return laid.filter(({ goneId }) => goneId !== one);
    const living = livingOf(names, laid);
    const stand = living.get(one) === one && living.get(other) === other && one !== other;
    return stand ? [...laid, { keptId: one, goneId: other }] : laid;
  }, []);
}

law.prop([fc.array(act, { maxLength: 14 })])(
  'whatever is laid and undone, everybody is looked up at one that stands for itself',
  (acts) => {
    const laid = play(acts);
    const living = livingOf(names, laid);
    const gone = new Set(laid.map(({ goneId }) => goneId));
    for (const name of names) {
      const under = living.get(name) ?? '';
      expect(living.get(under)).toBe(under);
      expect(gone.has(under)).toBe(false);
      expect(gone.has(name)).toBe(under !== name);
    }
  },
);

law.prop([fc.array(act, { maxLength: 10 }), fc.array(act, { maxLength: 4 })])(
  'undoing the last merge sets everybody apart exactly as before',
  (acts, more) => {
    const before = play(acts);
    const after = play([...acts, ...more.filter(({ undo }) => !undo)]);
    const undone = after.filter(({ goneId }) => before.some((each) => each.goneId === goneId));
    expect(livingOf(names, undone)).toEqual(livingOf(names, before));
  },
);

test('those laid into one that is laid into another go with it, and come back with it', () => {
  const both = [
    { keptId: 'a', goneId: 'b' },
    { keptId: 'c', goneId: 'a' },
  ];
  expect([...livingOf(['a', 'b', 'c'], both).values()]).toEqual(['c', 'c', 'c']);
  expect([...livingOf(['a', 'b', 'c'], both.slice(0, 1)).values()]).toEqual(['a', 'a', 'c']);
  expect([...livingOf(['a', 'b', 'c'], both.slice(1)).values()]).toEqual(['c', 'b', 'c']);
});
