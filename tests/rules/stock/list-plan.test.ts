import { expect, test } from 'vitest';
import { readHeading } from '@/lib/stock/rules/list-columns';
import { planStockList, type KnownPiece } from '@/lib/stock/rules/list-plan';
import { rowReader } from '@/lib/stock/rules/list-row';
import { changeWords, countPlan, planAsShown } from '@/lib/stock/rules/list-summary';

const tern: KnownPiece = {
  id: '0199aaaa-0000-4000-8000-000000000001',
  code: 'TERN-10-CI',
  title: 'Tern over Shoals',
  kind: 'relief_tile',
  colourway: 'Celadon over iron slip',
  widthUm: 254_000,
  heightUm: 254_000,
  depthUm: null,
  weightG: null,
  priceCents: 13_800n,
  costCents: 4_350n,
  gtin: '2000000000015',
  making: 'open_stock',
  here: 4,
};
const panel: KnownPiece = {
  ...tern,
  ...{ id: '0199aaaa-0000-4000-8000-000000000002', code: 'HERON-W-AS', gtin: null },
  ...{ kind: 'wall_panel', making: 'one_off', here: 1 },
};
const known = {
  pieces: new Map([tern, panel].map((piece) => [piece.code, piece])),
  codeOfGtin: new Map([['2000000000015', 'TERN-10-CI']]),
};
const columns =
  'code,title,kind,width,height,depth,unit,colourway,price,cost,weight,here,barcode,making';

function planOf(heading: string, ...lines: string[]) {
  const read = readHeading(heading.split(','));
  if (!read.ok) throw new Error(read.refusal.code);
  const readRow = rowReader(read.value, 'in');
  const rows = lines.map((line, at) => readRow(line.split(','), at + 2));
  return planStockList(rows, known);
}

const fern = 'FERN-5-CO,Sword Fern,relief tile,5,5,3/4,in,Copper moss,42.00,14.80,1 lb 2 oz';

test('a code that is not known yet is a new piece, with all that the line says', () => {
  expect(planOf(columns, `${fern},30,,`)).toEqual([
    {
      verdict: 'new',
      line: 2,
      code: 'FERN-5-CO',
      here: 30,
      piece: {
        code: 'FERN-5-CO',
        title: 'Sword Fern',
        kind: 'relief_tile',
        colourway: 'Copper moss',
        widthUm: 127_000,
        heightUm: 127_000,
        depthUm: 19_050,
        weightG: 510,
        priceCents: 4_200n,
        costCents: 1_480n,
        gtin: null,
        making: 'open_stock',
      },
    },
  ]);
});

test.each([
  ['the price', 'code,price', 'TERN-10-CI,$142.00', 'price from $138.00 to $142.00'],
  ['the count', 'code,here', 'TERN-10-CI,7', 'here from 4 to 7'],
  ['the count, to none', 'code,here', 'TERN-10-CI,0', 'here from 4 to 0'],
  ['the size', 'code,width', 'TERN-10-CI,10 1/2 in', 'width from 10 in to 10 1/2 in'],
  ['the weight', 'code,weight', 'TERN-10-CI,850 g', 'weight from nothing to 1 lb 14 oz'],
  ['the kind', 'code,kind', 'TERN-10-CI,Plaques', 'kind from relief tile to plaque'],
  ['the making', 'code,making', 'TERN-10-CI,Edition', 'making from open stock to edition'],
  [
    'the title',
    'code,title',
    'TERN-10-CI,Terns at Dusk',
    'title from Tern over Shoals to Terns at Dusk',
  ],
  [
    'the barcode',
    'code,barcode',
    'TERN-10-CI,6291041500213',
    'barcode from 2000000000015 to 6291041500213',
  ],
])('%s of a known piece changes, and nothing else', (_label, heading, line, words) => {
  const [row] = planOf(heading, line);
  expect(row?.verdict).toBe('changed');
  if (row?.verdict !== 'changed') return;
  expect(row.changes.map((change) => changeWords(change, 'in'))).toEqual([words]);
});

test.each([
  ['only the code', 'code', 'TERN-10-CI'],
  ['empty cells', 'code,title,price,here', 'TERN-10-CI,,,'],
  ['the same facts', 'code,price,here,width', 'tern-10-ci,138,4,254 mm'],
  ['the title in other capitals', 'code,title', 'TERN-10-CI,TERN  over shoals'],
])('a known piece stays the same with %s', (_label, heading, line) => {
  expect(planOf(heading, line)).toEqual([{ verdict: 'same', line: 2, code: 'TERN-10-CI' }]);
});

test.each([
  ['no code', 'code,price', [',5'], 'code: Write a SKU, such as TS-10-CI.'],
  ['a code with a space', 'code', ['TS 10'], 'code: A SKU has letters'],
  ['an unreadable price', 'code,price', ['TERN-10-CI,"12'], 'price: Write the amount in figures'],
  [
    'a price below zero',
    'code,price',
    ['TERN-10-CI,-5'],
    'price: Write the amount without a minus',
  ],
  ['an unknown kind', 'code,kind', ['TERN-10-CI,mug'], 'kind: The kind is one of these: relief'],
  ['an unknown unit', 'code,width', ['TERN-10-CI,10 yd'], 'width: Write the length in inches'],
  ['half a piece', 'code,here', ['TERN-10-CI,1.5'], 'here: How many are here is a whole number'],
  ['too many pieces', 'code,here', ['TERN-10-CI,100001'], 'here: How many are here is a whole'],
  ['a wrong check digit', 'code,barcode', ['TERN-10-CI,6291041500214'], 'barcode: A barcode has'],
  ['an unknown making', 'code,making', ['TERN-10-CI,twice'], 'making: The making is one of these'],
  [
    'a code that stands twice',
    'code,price',
    ['TERN-10-CI,5', 'tern-10-ci,6'],
    'code: The same code stands in line 3 too.',
  ],
  [
    'a barcode that stands twice',
    'code,barcode',
    ['TERN-10-CI,6291041500213', 'HERON-W-AS,6291041500213'],
    'barcode: The same barcode stands in line 3 too.',
  ],
  [
    "another piece's barcode",
    'code,barcode',
    ['HERON-W-AS,2000000000015'],
    'barcode: This barcode is on TERN-10-CI already.',
  ],
  ['a new piece without a title', 'code,price', ['NEW-1,5'], 'title: A new piece needs a title.'],
  ['two of a one-off', 'code,here', ['HERON-W-AS,2'], 'here: A one-off exists once'],
  [
    'two of a piece that becomes a one-off',
    'code,making',
    ['TERN-10-CI,one-off'],
    'here: A one-off exists once',
  ],
])('%s is refused, with the reason', (_label, heading, lines, words) => {
  const [row] = planOf(heading, ...lines);
  expect(row?.verdict).toBe('refused');
  if (row?.verdict !== 'refused') return;
  const [fault] = row.faults;
  expect(`${fault?.column ?? ''}: ${fault?.sentence ?? ''}`).toContain(words);
});

test('a code that stands twice refuses every line that has it, and no other', () => {
  const plan = planOf('code,price', 'TERN-10-CI,5', 'HERON-W-AS,6', 'TERN-10-CI,5');
  expect(plan.map((row) => row.verdict)).toEqual(['refused', 'changed', 'refused']);
});

test('every fault of a line is told, not only the first', () => {
  const [row] = planOf('code,kind,price,here', 'NEW-1,mug,x,y');
  expect(row).toMatchObject({
    faults: [{ column: 'kind' }, { column: 'price' }, { column: 'here' }],
  });
});

test('refused lines are shown first, then changed ones, new ones, and the rest', () => {
  const plan = planOf(columns, 'HERON-W-AS', `${fern},3,,`, 'TERN-10-CI,Terns', 'X,');
  expect(countPlan(plan)).toEqual({ newRows: 1, changedRows: 1, sameRows: 1, refusedRows: 1 });
  expect(planAsShown(plan).map((row) => row.verdict)).toEqual([
    'refused',
    'changed',
    'new',
    'same',
  ]);
});

test.each([
  ['fewer of an edition', { numbersLeft: 3 }, '3,', /which number is gone/],
  ['more than an edition has left', { numbersLeft: 3 }, '8,', /only 3 left/],
  ['an edition as open stock', { numbersLeft: 3 }, '4,open stock', /was stated, and stays/],
  ['fewer than are held', { held: 3 }, '2,', /3 of them are held/],
  ['a second as an edition', { isSecond: true }, '4,edition', /no piece of an edition/],
])('a list does not make %s', (_label, marks, cells, words) => {
  const read = readHeading(['code', 'here', 'making']);
  if (!read.ok) throw new Error(read.refusal.code);
  const row = rowReader(read.value, 'in')(['TERN-10-CI', ...cells.split(',')], 2);
  const making = 'numbersLeft' in marks ? 'edition' : 'open_stock';
  const piece: KnownPiece = { ...tern, making, ...marks };
  const [planned] = planStockList([row], { ...known, pieces: new Map([[piece.code, piece]]) });
  expect(planned?.verdict === 'refused' && planned.faults[0]?.sentence).toMatch(words);
});
