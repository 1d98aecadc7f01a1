import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { readCsvFile } from '@/lib/data/reads/csv-file';
import { csvText, guarded, withoutGuard } from '@/lib/files/rules/csv';

/** Any text that a database can keep: no NUL. */
const anyText = fc
  .string({ unit: 'grapheme', maxLength: 20 })
  .map((text) => text.replaceAll('\u0000', ''));
const trickyText = fc
  .array(fc.constantFrom("'", '"', '=', '+', '-', '@', ',', ';', '\r', '\n', '\t', '1', 'a'), {
    maxLength: 8,
  })
  .map((signs) => signs.join(''));
const cell = fc.oneof(anyText, trickyText);

test.prop([cell])('what is guarded comes back as it was', (text) => {
  expect(withoutGuard(guarded(text))).toBe(text);
});

test.prop([cell])(
  'nothing that is guarded begins like a formula, unless it is a number',
  (text) => {
    expect(guarded(text)).not.toMatch(/^(?:[=@\t\r\n]|[+-](?!\d+(?:\.\d+)?$))/);
  },
);

test.prop([fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 12 })])(
  'rows written as a file are read as they were',
  async (rows) => {
    const marked = rows.map(([first, ...rest]) => [`x${first}`, ...rest]);
    const whole = [['one', 'two', 'three'], ...marked];
    const file = await readCsvFile(new TextEncoder().encode(csvText(whole)));
    expect(file.ok && file.value.lines.map((line) => line.cells)).toEqual(marked);
  },
);
