import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import {
  formatLength,
  formatWeight,
  mostUm,
  parseLength,
  parseWeight,
  umPerInch,
} from '@/lib/units/rules';

const um = fc.integer({ min: 1, max: mostUm });
const grams = fc.integer({ min: 1, max: 10_000_000 });
const valueOf = (read: ReturnType<typeof parseLength | typeof parseWeight>): number =>
  read.ok ? read.value : Number.NaN;

test.prop([fc.integer({ min: 1, max: 60_000 })])(
  'a length in sixteenths of an inch survives being written and read',
  (sixteenths) => {
    const length = Math.round((sixteenths * umPerInch) / 16);
    expect(valueOf(parseLength(formatLength(length, 'in'), 'in'))).toBe(length);
  },
);

test.prop([fc.integer({ min: 1, max: mostUm / 100 })])(
  'a length in tenths of a millimetre survives being written and read',
  (tenths) => {
    expect(valueOf(parseLength(formatLength(tenths * 100, 'mm'), 'mm'))).toBe(tenths * 100);
  },
);

test.prop([um.filter((length) => length > 1_000)])(
  'a length as it is shown is within half a sixteenth of an inch',
  (length) => {
    const shown = valueOf(parseLength(formatLength(length, 'in'), 'in'));
    expect(Math.abs(shown - length)).toBeLessThanOrEqual(umPerInch / 32 + 1);
  },
);

test.prop([um])('the same length is the same in every unit', (length) => {
  const millimetres = `${Math.floor(length / 1_000)}.${String(length % 1_000).padStart(3, '0')}`;
  expect(valueOf(parseLength(`${millimetres} mm`, 'in'))).toBe(length);
});

test.prop([fc.integer({ min: 1, max: 159 })])(
  'a weight in ounces survives being written and read',
  (ounces) => {
    const weight = valueOf(parseWeight(`${ounces} oz`, 'lb'));
    expect(valueOf(parseWeight(formatWeight(weight, 'lb'), 'lb'))).toBe(weight);
  },
);

test.prop([grams.filter((weight) => weight > 15)])(
  'a weight as it is shown is within half of its last step',
  (weight) => {
    const pounds = valueOf(parseWeight(formatWeight(weight, 'lb'), 'lb'));
    const kilograms = valueOf(parseWeight(formatWeight(weight, 'kg'), 'kg'));
    expect(Math.abs(pounds - weight)).toBeLessThanOrEqual(weight < 4_600 ? 15 : 228);
    expect(Math.abs(kilograms - weight)).toBeLessThanOrEqual(weight < 10_000 ? 5 : 50);
  },
);

test.prop([fc.string({ maxLength: 30 })])('no text makes reading a measure fail', (text) => {
  const length = parseLength(text, 'in');
  const weight = parseWeight(text, 'lb');
  expect(length.ok ? length.value > 0 : length.refusal.code.length > 0).toBe(true);
  expect(weight.ok ? weight.value > 0 : weight.refusal.code.length > 0).toBe(true);
});
