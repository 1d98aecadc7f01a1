import { expect, test } from 'vitest';
import { readListFile } from '@/lib/stock/reads/list-file';
import { listFileRefusalMessage } from '@/lib/stock/rules/list-refusals';

const read = (text: string, system: 'in' | 'mm' = 'in') =>
  readListFile(Buffer.from(text, 'utf8'), system);

async function rowsOf(text: string, system: 'in' | 'mm' = 'in') {
  const list = await read(text, system);
  if (!list.ok) throw new Error(listFileRefusalMessage(list.refusal));
  return list.value.rows;
}

test('a line is numbered as a person counts, right also after line breaks inside cells', async () => {
  for (const end of ['\n', '\r\n', '\r']) {
    const file = [
      'code,title',
      'AA-1,"Tern',
      'over',
      'Shoals"',
      '',
      'AA-2,Fern',
      'AA-3,"A',
      'B"',
      'x-',
    ].join(end);
    const rows = await rowsOf(file);
    expect(rows.map((row) => [row.code, row.line])).toEqual([
      ['AA-1', 2],
      ['AA-2', 6],
      ['AA-3', 7],
      ['x-', 9],
    ]);
    expect(rows[0]?.listed.title).toBe('Tern over Shoals');
    expect(rows[3]?.faults).toHaveLength(1);
  }
});

test('blank lines before the heading count as lines', async () => {
  const rows = await rowsOf('\n\n code , price \nAA-1,5\n');
  expect(rows.map((row) => [row.line, row.listed.priceCents])).toEqual([[4, 500n]]);
});

test.each([
  ['a byte order mark', '\ufeffcode,price\nAA-1,42'],
  ['headings in any case', ' Price ,CODE\n42,aa-1'],
  ['a price with sign and commas', 'code,price\nAA-1,"$42.00"'],
  ['semicolons', 'code;price\nAA-1;42'],
  ['tabs', 'code\tprice\nAA-1\t42'],
  ['every cell in quotation marks', '"code","price"\r\n"AA-1","42.00"\r\n'],
  ['no line end at the end', 'code,price\nAA-1,42'],
])('%s makes no difference', async (_label, file) => {
  const rows = await rowsOf(file);
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ code: 'AA-1', listed: { priceCents: 4_200n }, faults: [] });
});

test('quotation marks inside a cell are doubled, as RFC 4180 has it', async () => {
  const rows = await rowsOf('code,title,price\nAA-1,"The ""old"" bird, wading","$1,299.00"');
  expect(rows[0]?.listed).toEqual({ title: 'The "old" bird, wading', priceCents: 129_900n });
});

test.each([
  ['in the cell', 'code,width\nAA-1,254 mm', 254_000],
  ['in inches with a fraction', 'code,width\nAA-1,4 1/2 in', 114_300],
  ['in its own column', 'code,width,unit\nAA-1,254,mm', 254_000],
  ['in the heading', 'code,Width (mm)\nAA-1,254', 254_000],
  ['in the cell, against the column', 'code,width,unit\nAA-1,10 in,mm', 254_000],
  ['nowhere: inches here', 'code,width\nAA-1,10', 254_000],
])('a width has its unit %s', async (_label, file, widthUm) => {
  const [row] = await rowsOf(file);
  expect(row?.faults).toEqual([]);
  expect(row?.listed).toEqual({ widthUm });
});

test('where the gallery measures in millimetres, a bare width is in millimetres', async () => {
  const [row] = await rowsOf('code,width,weight\nAA-1,254,2.5', 'mm');
  expect(row?.listed).toEqual({ widthUm: 254_000, weightG: 2_500 });
});

test('headings that mean nothing here are named', async () => {
  const list = await read('code,Shelf,price,Maker\nAA-1,3,5,Ada');
  expect(list).toMatchObject({ ok: true, value: { passedOver: ['Shelf', 'Maker'] } });
});

test('more cells than headings refuse the line, empty ones at its end do not', async () => {
  const rows = await rowsOf('code,price\nAA-1,1,299.00\nAA-2,5,,\n');
  expect(rows.map((row) => row.faults.length)).toEqual([1, 0]);
});

test.each([
  ['empty_file', Buffer.from('')],
  ['empty_file', Buffer.from(' \r\n \n')],
  ['empty_file', Buffer.from(',,\n,')],
  ['spreadsheet_file', Buffer.from('PK\u0003\u0004rest', 'latin1')],
  ['not_text', Buffer.from('code\u0000,price')],
  ['not_utf8', Buffer.from('code,title\nAA-1,Caf\u00e9', 'latin1')],
  ['not_utf8', Buffer.from('\ufeffcode,title', 'utf16le')],
  ['not_csv', Buffer.from('code,title\nAA-1,"Tern\nAA-2,Fern\n')],
  ['column_twice', Buffer.from('code,price,Retail\nAA-1,5,5')],
  ['no_code_column', Buffer.from('title,price\nTern,5')],
  ['no_pieces', Buffer.from('code,price\n\n')],
])('%s is told in one sentence', async (code, bytes) => {
  const list = await readListFile(bytes, 'in');
  expect(list).toMatchObject({ ok: false, refusal: { code } });
  if (!list.ok) expect(listFileRefusalMessage(list.refusal)).toMatch(/^[A-Z].+[.?]$/);
});

test('the line where a quotation mark was left open is named', async () => {
  const list = await read('code,title\nAA-1,Fern\nAA-2,"Tern\nAA-3,Kelp\n');
  expect(list).toEqual({ ok: false, refusal: { code: 'not_csv', line: 3 } });
});

test('a file of more than 25 MB is refused before it is read', async () => {
  const list = await readListFile(Buffer.alloc(25_000_001, 'a'), 'in');
  expect(list).toMatchObject({ ok: false, refusal: { code: 'file_too_large' } });
});
