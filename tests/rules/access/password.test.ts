import { expect, test } from 'vitest';
import {
  passwordRefusalMessage,
  readPassword,
  type PasswordRefusal,
} from '@/lib/access/rules/password';

const names = ['Maren Tidewell', 'maren'];

const refused: Record<PasswordRefusal['code'], readonly string[]> = {
  password_too_short: ['', 'elevenchars', 'é́́́'],
  password_too_long: ['kelp and limpets '.repeat(8)],
  password_too_common: [
    'password1234',
    'Password-1234',
    'qwerty 123 456',
    'aaaaaaaaaaaa',
    'kiln kiln kiln',
    '            ',
    '23456789:;<=',
    'zyxwvutsrqpo',
    '121212121212',
  ],
  password_is_the_name: [
    'marentidewell',
    'maren-tidewell-1',
    '2026 Maren Tidewell',
    'Maren1234567',
  ],
};

test.each(Object.entries(refused).flatMap(([code, all]) => all.map((typed) => [code, typed])))(
  'refused as %s: “%s”',
  (code, typed) => {
    expect(readPassword(typed, names)).toMatchObject({ ok: false, refusal: { code } });
  },
);

test.each([
  'tern over shoals',
  'demo-clay-owner',
  'maren likes kelp',
  'ünïcödé glaze',
  'x9!k2@m4#p6$',
])('taken as it is: “%s”', (typed) => {
  expect(readPassword(typed, names)).toEqual({ ok: true, value: typed });
});

test('exactly twelve and exactly 128 characters are taken, counted as people count', () => {
  expect(readPassword('kelp🌊limpets', []).ok).toBe(true);
  expect(readPassword('tidal pools '.repeat(11).slice(0, 127) + '!', []).ok).toBe(true);
  expect(readPassword('tidal pools '.repeat(11).slice(0, 128) + '!', []).ok).toBe(false);
});

test('too short is told before too common', () => {
  expect(readPassword('aaaa', [])).toMatchObject({ refusal: { code: 'password_too_short' } });
});

test('letters that are written in two ways become one password', () => {
  const composed = readPassword('caf\u00e9 au lait!', []);
  const decomposed = readPassword('cafe\u0301 au lait!', []);
  expect(composed).toEqual(decomposed);
});

test('every refusal is a full sentence', () => {
  const all: PasswordRefusal[] = [
    { code: 'password_too_short', lengthLeast: 12 },
    { code: 'password_too_long', lengthMost: 128 },
    { code: 'password_too_common' },
    { code: 'password_is_the_name' },
  ];
  for (const refusal of all) expect(passwordRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});
