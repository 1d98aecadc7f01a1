import { describe, expect, test } from 'vitest';
import { csvText } from '@/lib/files/rules/csv';
import { journalCsv } from '@/lib/documents/rules/journal';
import { addressLines } from '@/lib/documents/rules';

describe('a field of a file', () => {
  test.each([
    ['Sword Fern', 'Sword Fern'],
    ['Tern, over Shoals', '"Tern, over Shoals"'],
    ['a 10" tile', '"a 10"" tile"'],
    ['two\nlines', '"two\nlines"'],
    ['=1+1', "'=1+1"],
    ['+1+1', "'+1+1"],
    ['-1+1', "'-1+1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['=cmd,"x"', `"'=cmd,""x"""`],
    ['\tx', "'\tx"],
    ['-12.50', '-12.50'],
    ['12.50', '12.50'],
    ['', ''],
  ])('%j is written as %j', (text, written) => {
    expect(csvText([[text]])).toBe(`\uFEFF${written}\r\n`);
  });

  test('rows end in CRLF, and the file says that it is UTF-8', () => {
    expect(csvText([['a', 'b'], ['ü']])).toBe('\uFEFFa,b\r\nü\r\n');
  });
});

test('the journal as a file: one row for each posting, in plain figures', () => {
  const file = journalCsv([
    {
      number: 7,
      on: '2026-11-20',
      at: new Date('2026-11-20T20:00:00Z'),
      memo: '=Sold, twice',
      paper: { kind: 'payment', number: 3, commissionNumber: 12 },
      postings: [
        {
          ...{ account: '1010', accountName: 'Card clearing', amountCents: 129_900n },
          ...{ authority: null, commissionNumber: null },
        },
        {
          ...{ account: '2000', accountName: 'Collectors’ deposits', amountCents: -129_900n },
          ...{ authority: null, commissionNumber: 12 },
        },
      ],
    },
  ]);
  expect(file.split('\r\n').slice(1)).toEqual([
    `7,2026-11-20,"'=Sold, twice",payment 3,1010,Card clearing,1299.00,,,`,
    `7,2026-11-20,"'=Sold, twice",payment 3,2000,Collectors’ deposits,,1299.00,,12`,
    '',
  ]);
});

test('an address leaves out what is not known', () => {
  const full = { street: '14 Skiff Lane', city: 'Harrow Inlet', state: 'WA', postcode: '98000' };
  expect(addressLines({ ...full, phone: '', email: 'door@example.org' })).toEqual([
    '14 Skiff Lane',
    'Harrow Inlet, WA 98000',
    'door@example.org',
  ]);
  const bare = { street: '', city: '', state: 'WA', postcode: '', phone: '', email: '' };
  expect(addressLines(bare)).toEqual(['WA']);
});
