import { describe, expect, test } from 'vitest';
import { certificateInput } from '@/lib/documents/input/certificate';
import { howManySentences, rightsSentence } from '@/lib/documents/rules/goes-with/certificate';

const typed = {
  ...{ title: 'Nine herons', artist: 'Tidewrack Clay', year: '2027', medium: '', size: '' },
  ...{ weight: '', owner: '' },
};
const edition = { size: 50, artistProofs: 3, statedOn: '2026-03-01', came: 12 } as const;

describe('how many there are of it', () => {
  test.each([
    [{ kind: 'one' as const }, 'One of a kind.'],
    [{ kind: 'open' as const }, 'more may be made'],
    [{ kind: 'edition' as const, number: 7, edition }, 'Number 7/50.'],
    [{ kind: 'edition' as const, number: 52, edition }, 'Number AP 2/3.'],
    [{ kind: 'edition' as const, number: 7, edition }, 'as 50 and 3 artist’s proofs; 12 of them'],
    [
      { kind: 'edition' as const, number: 7, edition: { ...edition, artistProofs: 1 } },
      '1 artist’s proof;',
    ],
    [
      { kind: 'edition' as const, number: 7, edition: { ...edition, artistProofs: 0 } },
      'no artist’s proofs',
    ],
  ])('%o', (many, words) => {
    expect(howManySentences(many).join(' ')).toContain(words);
  });
});

test('the rights stay with whoever made it, with the year where it is known', () => {
  expect(rightsSentence('Oriel Sandray', 2027)).toMatch(/^© 2027 Oriel Sandray\./);
  expect(rightsSentence('Oriel Sandray', null)).toMatch(/^© Oriel Sandray\./);
});

describe('what is typed', () => {
  test('is taken without its edges; the year is a number', () => {
    const read = certificateInput.parse({ ...typed, title: '  Nine herons ' });
    expect(read).toMatchObject({ title: 'Nine herons', year: 2027, number: null });
    expect(certificateInput.parse({ ...typed, year: '' }).year).toBeNull();
  });

  test.each([
    ['title', ' '],
    ['title', 'a'.repeat(121)],
    ['artist', ''],
    ['year', '27'],
    ['year', '3027'],
    ['owner', 'Marit\u0000Oland'],
    ['medium', 'x'.repeat(201)],
    ['number', '1/50'],
  ])('%s: %j is told at its field', (field, value) => {
    const read = certificateInput.safeParse({ ...typed, [field]: value });
    expect(read.error?.issues.map(({ path }) => path)).toEqual([[field]]);
  });
});
