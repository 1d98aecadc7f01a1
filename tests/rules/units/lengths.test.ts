import { describe, expect, test } from 'vitest';
import { lengthInput, lengthInputIn } from '@/lib/units/input';
import {
  formatLength,
  formatSize,
  lengthRefusalMessage,
  parseLength,
  type LengthRefusal,
} from '@/lib/units/rules';

describe('lengths as people type them', () => {
  test.each([
    ['a bare number is in the form’s unit', '10', 254_000],
    ['inches by their letters', '10 in', 254_000],
    ['inches by their sign', '10"', 254_000],
    ['inches by their word', '10 inches', 254_000],
    ['a fraction', '10 1/2 in', 266_700],
    ['a fraction behind a hyphen', '10-1/2"', 266_700],
    ['a fraction in one sign', '10½', 266_700],
    ['a fraction alone', '3/8 in', 9_525],
    ['a sixteenth rounds half up', '1/16', 1_588],
    ['a decimal', '10.25 in', 260_350],
    ['feet', '6 ft', 1_828_800],
    ['feet and inches by their signs', '6\' 4 1/2"', 1_943_100],
    ['feet and inches by their letters', '6 ft 4 in', 1_930_400],
    ['feet and a fraction in one sign', '5 ft ½ in', 1_536_700],
    ['feet and no inches', '6 ft 0 in', 1_828_800],
    ['feet and no more', "6'", 1_828_800],
    ['millimetres', '254 mm', 254_000],
    ['centimetres without a gap', '25.4cm', 254_000],
    ['metres', '2.4 m', 2_400_000],
    ['the longest there is', '100 m', 100_000_000],
    ['capitals and spaces', '  10 IN ', 254_000],
  ])('%s', (_label, text, um) => {
    expect(parseLength(text, 'in')).toEqual({ ok: true, value: um });
  });

  test('a bare number means millimetres where the form says so', () => {
    expect(parseLength('254', 'mm')).toEqual({ ok: true, value: 254_000 });
  });

  const refused: Record<LengthRefusal['code'], readonly string[]> = {
    no_length: ['', '  '],
    not_a_length: ['ten', '1/0', '-10', '10 1/2 1/4', '.5'],
    unknown_length_unit: [
      '10 yards',
      '3 hands',
      '6 ft 2 yards',
      '6 ft 2 ft',
      '6 ft 10 mm',
      "6' mm",
    ],
    length_of_zero: ['0', '0 mm', '0.0001 mm'],
    too_long: ['200 m', '400 ft'],
  };
  const rows = Object.entries(refused).flatMap(([code, texts]) =>
    texts.map((text) => [text, code] as const),
  );
  test.each(rows)('%j is refused: %s', (text, code) => {
    const read = parseLength(text, 'in');
    expect(read.ok ? 'taken' : read.refusal.code).toBe(code);
    if (!read.ok) expect(lengthRefusalMessage(read.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('lengths as they are read', () => {
  test.each([
    [254_000, '10 in', '254 mm'],
    [266_700, '10 1/2 in', '266.7 mm'],
    [1_588, '1/16 in', '1.6 mm'],
    [114_300, '4 1/2 in', '114.3 mm'],
    [253_999, '10 in', '254 mm'],
    [23_813, '15/16 in', '23.8 mm'],
    [25_000, '1 in', '25 mm'],
    [0, '0 in', '0 mm'],
  ])('%d micrometres are %s or %s', (um, inches, millimetres) => {
    expect([formatLength(um, 'in'), formatLength(um, 'mm')]).toEqual([inches, millimetres]);
  });

  test('a size gives its height first, as a wall label does', () => {
    const size = { heightUm: 254_000, widthUm: 457_200 };
    expect(formatSize(size, 'in')).toBe('10 × 18 in');
    expect(formatSize({ ...size, depthUm: 12_700 }, 'in')).toBe('10 × 18 × 1/2 in');
    expect(formatSize({ ...size, depthUm: null }, 'mm')).toBe('254 × 457.2 mm');
  });
});

describe('lengths in a form', () => {
  test('a typed length becomes micrometres', () => {
    expect([lengthInput.parse('10 1/2'), lengthInputIn('mm').parse('10')]).toEqual([
      266_700, 10_000,
    ]);
  });

  test('a refused length says why', () => {
    expect(lengthInput.safeParse('10 yards').error?.issues[0]?.message).toMatch(/inches, feet/);
    expect(lengthInput.safeParse('1'.repeat(50)).success).toBe(false);
  });
});
