import { describe, expect, test } from 'vitest';
import { readCsvFile } from '@/lib/data/reads/csv-file';
import { csvText, guarded, withoutGuard } from '@/lib/files/rules/csv';

const bytesOf = (text: string) => new TextEncoder().encode(text);
async function cellsOf(text: string) {
  const file = await readCsvFile(bytesOf(text));
  if (!file.ok) return file.refusal.code;
  return [file.value.heading, ...file.value.lines.map((line) => line.cells)];
}

describe('RFC 4180, section 2: its own examples', () => {
  test.each([
    ['1, records on lines of their own', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'],
    ['2, no line end after the last', 'aaa,bbb,ccc\r\nzzz,yyy,xxx'],
    ['5, cells in quotation marks', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx'],
  ])('%s', async (_label, text) => {
    expect(await cellsOf(text)).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });

  test('6, a line end inside quotation marks', async () => {
    expect(await cellsOf('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });

  test('7, a quotation mark is written twice', async () => {
    const line = '"aaa","b""bb","ccc"';
    expect(await cellsOf(`${line}\r\n${line}`)).toEqual([
      ['aaa', 'b"bb', 'ccc'],
      ['aaa', 'b"bb', 'ccc'],
    ]);
  });
});

const hard = [
  'Ødegård & Søn',
  'שלום עולם',
  '🌊🦦',
  'a "quoted" word',
  'one,two;three\tfour',
  'two\nlines',
  'two\r\nlines',
  '=1+1',
  "'=1+1",
  "''+1",
  "'t Anker",
  "'",
  '@home',
  '+1 555 0100',
  '-12.50',
  '-12.50 and more',
  '\tindented',
  '＝1',
  'true',
];

test('every text comes back as it was', async () => {
  const rows = [['text', 'again'], ...hard.map((text) => [text, text])];
  expect(await cellsOf(csvText(rows))).toEqual(rows);
});

test.each([
  ['=1+1', "'=1+1"],
  ["'=1+1", "''=1+1"],
  ['-12.50', '-12.50'],
  ['-1+1', "'-1+1"],
  ["'t Anker", "'t Anker"],
  ['', ''],
])('%j is guarded as %j', (text, safe) => {
  expect(guarded(text)).toBe(safe);
  expect(withoutGuard(safe)).toBe(text);
});

test.each([
  ['nothing', '', 'empty_file'],
  ['only a mark', '\uFEFF', 'empty_file'],
  ['a heading alone', 'name\r\n', 'no_lines'],
  ['a lone quotation mark', 'name\r\n"Wren', 'not_csv'],
  ['a spreadsheet', 'PK\u0003\u0004rest', 'spreadsheet_file'],
  ['no text', 'name\r\na\u0000b', 'not_text'],
])('%s is refused', async (_label, text, code) => {
  expect(await cellsOf(text)).toBe(code);
});

test('letters that are not UTF-8 are refused, and the sign for them is not', async () => {
  const latin = Uint8Array.from([...bytesOf('name\r\nR'), 0xe9]);
  expect(await readCsvFile(latin)).toMatchObject({ refusal: { code: 'not_utf8' } });
  expect(await cellsOf('name\r\na\ufffdb')).toEqual([['name'], ['a\ufffdb']]);
});

test('lines are counted as an editor counts them', async () => {
  const file = await readCsvFile(bytesOf('name\r\n\r\n"two\r\nlines"\r\nthird\r\n'));
  expect(file.ok && file.value.lines.map((line) => line.line)).toEqual([3, 5]);
});

test('semicolons and tabs are read where the heading has them', async () => {
  const rows = [
    ['name', 'city'],
    ['Wren, A.', 'Tern Bay'],
  ];
  expect(await cellsOf('name;city\nWren, A.;Tern Bay')).toEqual(rows);
  expect(await cellsOf('name\tcity\rWren, A.\tTern Bay')).toEqual(rows);
});

test('more than a hundred thousand lines are refused', async () => {
  expect(await cellsOf(`name\n${'a\n'.repeat(100_001)}`)).toBe('too_many_lines');
});
