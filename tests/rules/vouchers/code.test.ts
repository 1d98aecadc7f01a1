import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { codeRefusalMessage, codeSigns, makeCode, readCode } from '@/lib/vouchers/rules/code';
import { earliestEnd, isStillGood, mayRunOut, untilWords } from '@/lib/vouchers/rules';

const drawn = fc.array(fc.nat(codeSigns.length - 1), { minLength: 11, maxLength: 11 });

function codeOf(signs: readonly number[]): string {
  let at = 0;
  return makeCode(() => signs[at++] ?? 0);
}

property.prop([drawn])('a number reads back, in small letters and without hyphens', (signs) => {
  const code = codeOf(signs);
  expect(code).toMatch(/^[2-9A-Z]{4}-[2-9A-Z]{4}-[2-9A-Z]{4}$/);
  const typed = [code, code.toLowerCase(), code.replaceAll('-', ' '), code.replaceAll('-', '')];
  expect(typed.map(readCode)).toEqual(typed.map(() => ({ ok: true, value: code })));
});

property.prop([drawn, fc.nat(11), fc.integer({ min: 1, max: codeSigns.length - 1 })])(
  'one sign that was misread is found',
  (signs, place, step) => {
    const plain = codeOf(signs).replaceAll('-', '');
    const was = codeSigns.indexOf(plain[place] ?? '');
    const other = codeSigns[(was + step) % codeSigns.length] ?? '';
    const misread = plain.slice(0, place) + other + plain.slice(place + 1);
    expect(readCode(misread)).toMatchObject({ ok: false, refusal: { code: 'misread' } });
  },
);

property.prop([drawn, fc.nat(9)])('two neighbours that changed places are found', (signs, at) => {
  const plain = codeOf(signs).replaceAll('-', '');
  const [one = '', two = ''] = [plain[at], plain[at + 1]];
  fc.pre(one !== two);
  const swapped = plain.slice(0, at) + two + one + plain.slice(at + 2);
  expect(readCode(swapped).ok).toBe(false);
});

test('no sign looks like another', () => {
  expect(codeSigns).not.toMatch(/[0158BGILOSUYZ]/);
  expect(new Set(codeSigns).size).toBe(23);
});

describe('what is no number is told', () => {
  test.each([
    ['', 'no_code', /Scan/],
    ['gift card', 'not_a_code', /twelve signs/],
    ['2222-2222-222O', 'not_a_code', /twelve signs/],
    ['2222-2222-2223', 'misread', /misread/],
    ['🌊'.repeat(12), 'not_a_code', /twelve signs/],
  ])('%j: %s', (text, code, said) => {
    const read = readCode(text);
    expect(read).toMatchObject({ ok: false, refusal: { code } });
    if (!read.ok) expect(codeRefusalMessage(read.refusal)).toMatch(said);
  });
});

describe('a voucher holds for five years at least', () => {
  test('a day earlier is too early, no end is always right', () => {
    expect(earliestEnd('2026-11-25')).toBe('2031-11-26');
    const ends = [null, '2031-11-26', '2031-11-25'] as const;
    expect(ends.map((end) => mayRunOut('2026-11-25', end))).toEqual([true, true, false]);
  });

  test('its last day counts', () => {
    const days = ['2031-11-26', '2031-11-27'] as const;
    expect(days.map((day) => isStillGood('2031-11-26', day))).toEqual([true, false]);
    expect([untilWords(null), untilWords('2031-11-26')]).toEqual([
      'It does not run out.',
      'Good until Wednesday 26 November 2031.',
    ]);
  });
});
