import { describe, expect, test } from 'vitest';
import {
  draftOf,
  letterKinds,
  mailtoOf,
  withoutAddresses,
  wordsWithAddress,
} from '@/lib/commissions/rules/page/letters';
import { isOneAddress, oneLine } from '@/lib/platform/mail';

const about = { toName: 'Marit Oland', title: 'Herons for the stair', gallery: 'Tidewrack Clay' };
const address = `https://gallery.example/c/${'a'.repeat(43)}`;

test.each(letterKinds)(
  'the letter "%s" greets, names the work and is signed by the house',
  (kind) => {
    const { subject, words } = draftOf(kind, about);
    expect(words).toMatch(/^Dear Marit Oland,\n\n/);
    expect(words).toMatch(/\n\nWith kind regards,\nTidewrack Clay$/);
    expect(`${subject} ${words}`).toContain('Herons for the stair');
    expect(words).not.toMatch(/click|log in|account|portal/i);
  },
);

test('a letter about colours says that the tile in the hand counts', () => {
  expect(draftOf('sketch', about).words).toContain('the fired tile in your hand');
});

test('the address stands under the words, and is not kept with them', () => {
  const sent = wordsWithAddress('Dear Marit', address);
  expect(sent).toContain(`\n${address}\n`);
  expect(withoutAddresses(sent)).not.toContain('aaaa');
  expect(withoutAddresses('See /c/short')).toBe('See /c/short');
});

test('the letter opens whole in one’s own mail', () => {
  const mailto = mailtoOf('marit@fernhollow.example', { subject: 'A & B?', words: 'one\ntwo & 3' });
  expect(mailto).toBe(
    'mailto:marit%40fernhollow.example?subject=A%20%26%20B%3F&body=one%0D%0Atwo%20%26%203',
  );
});

describe('the head of a letter takes nothing but what it should', () => {
  test.each([
    ['marit@fernhollow.example', true],
    ['m.oland+art@post.fernhollow.example', true],
    ['marit@fernhollow.example\nBcc: all@fernhollow.example', false],
    ['marit@fernhollow.example, all@fernhollow.example', false],
    ['Marit <marit@fernhollow.example>', false],
    ['marit@fernhollow.example\r', false],
    ['marit', false],
    ['marit@fernhollow', false],
    [`${'a'.repeat(65)}@fernhollow.example`, false],
    [`a@${'b'.repeat(250)}.example`, false],
  ])('%j is one address: %s', (text, is) => {
    expect(isOneAddress(text)).toBe(is);
  });

  test.each([
    ['Herons\r\nBcc: all@fernhollow.example', 'Herons Bcc: all@fernhollow.example'],
    ['Herons\u2028and\u0000terns', 'Herons and terns'],
    ['  Herons ', 'Herons'],
  ])('%j becomes one line', (text, line) => {
    expect(oneLine(text)).toBe(line);
  });
});
