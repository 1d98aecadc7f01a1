import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { signHandOverInput } from '@/lib/commissions/input/agreement/hand-over';
import {
  handOverBody,
  handOverNote,
  type HandOverSaid,
} from '@/lib/commissions/rules/agreement/hand-over';

const said: HandOverSaid = {
  ...{ commissionNumber: 12, title: 'Herons over kelp', collector: 'Marit Oland' },
  ...{ sizeWords: '24 × 48 × 2 in, in 14 pieces, about 44 lb.', parts: 14 },
  ...{ fixings: 'Two cleats into the studs', takenBy: 'Ilse Oland', handedOn: '2027-06-04' },
  ...{ careGiven: true, remarks: '' },
};

test.each([
  ['who took it and when', {}, 'Taken by Ilse Oland on Friday 4 June 2027.'],
  ['its parts', {}, 'Handed over: 14 parts, counted.'],
  ['one part', { parts: 1 }, 'Handed over in one part.'],
  ['its fixings', {}, 'How it is fixed: Two cleats into the studs.'],
  ['the care', {}, 'How to look after it was told'],
  ['the care to come', { careGiven: false }, 'still to be told'],
  ['no remarks', {}, 'nothing was remarked on'],
  ['remarks in one line', { remarks: 'A chip\nlower left ' }, 'Remarks: A chip lower left.'],
] as const)('the hand-over tells %s', (_what, change, words) => {
  expect(handOverBody({ ...said, ...change })).toContain(words);
});

test('what nobody knows is left out', () => {
  const body = handOverBody({ ...said, sizeWords: null, parts: null, fixings: ' ' });
  expect(body).not.toMatch(/null|parts|fixed|×/);
});

test('a hand-over that nobody signed claims nothing that nobody wrote down', () => {
  expect(handOverNote(said)).toBe(
    [
      'Hand-over of commission 12: Herons over kelp',
      'Taken by Ilse Oland on Friday 4 June 2027.',
      'It was written down without a signature.',
    ].join('\n'),
  );
  expect(handOverNote({ ...said, remarks: 'A chip' })).toContain('Remarks: A chip');
});

const form = {
  ...{ requestKey: randomUUID(), commissionId: randomUUID(), handedOn: '2027-06-04' },
  ...{ signedName: 'Ilse Oland', signedAs: 'typed', parts: '14', careGiven: 'yes' },
};

test('the form gives who signed, and what stands above the name', () => {
  expect(signHandOverInput.parse(form)).toMatchObject({
    signedBy: 'Ilse Oland',
    sign: { parts: 14, careGiven: true, fixings: '', signature: { signedAs: 'typed' } },
  });
  expect(signHandOverInput.parse({ ...form, parts: '' }).sign.parts).toBeNull();
});

test.each([
  ['no name', { signedName: ' ' }, 'signedName'],
  ['no way to sign', { signedAs: undefined }, 'signedAs'],
  ['parts in words', { parts: 'all' }, 'parts'],
  ['no parts', { parts: '0' }, 'parts'],
  ['a field nobody asked for', { tip: '5' }, ''],
])('%s is told at its field', (_what, change, field) => {
  const read = signHandOverInput.safeParse({ ...form, ...change });
  expect(read.success ? [] : read.error.issues.map(({ path }) => path.join('.'))).toEqual([field]);
});
