import { describe, expect, test } from 'vitest';
import { headingOf } from '@/lib/data/rules/columns';
import {
  peopleColumns,
  peopleRows,
  planPeople,
  readPerson,
  type Person,
} from '@/lib/data/rules/people';

const wrenKey = '0196f3c0-0000-7000-8000-000000000001';
const otherKey = '0196f3c0-0000-7000-8000-000000000002';
const wren: Person = {
  ...{ key: wrenKey, kind: 'person', name: 'Wren Alder', email: 'wren@example.org' },
  ...{ phone: '555 0101', street: null, city: 'Tern Bay', state: null, postcode: null },
  note: 'likes herons',
};
const columns = ['key', 'kind', 'name', 'email', 'phone', 'city', 'note'];

function plan(rows: readonly string[][], known: readonly Person[] = [wren], heading = columns) {
  const read = headingOf(heading, peopleColumns, ['name']);
  if (!read.ok) throw new Error(read.refusal.code);
  const lines = rows.map((cells, at) => readPerson(read.value, { line: at + 2, cells }));
  return planPeople(lines, known);
}
const faultsOf = (cells: string[]) => {
  const [row] = plan([cells]);
  return row?.verdict === 'refused' ? row.faults.map((fault) => fault.column) : [];
};

describe('who is meant', () => {
  test.each([
    ['by key', [wrenKey, '', 'Wren', '', '', '', '']],
    ['by mail, whatever its capitals', ['', '', 'W. Alder', 'WREN@example.org', '', '', '']],
    ['by telephone and name', ['', '', 'wren  alder', '', '5550101', '', '']],
  ])('%s', (_label, cells) => {
    expect(plan([cells])[0]).toMatchObject({ verdict: 'changed', id: wrenKey });
  });

  test.each([
    ['the same telephone, another name', ['', '', 'Juniper Alder', '', '555 0101', '', '']],
    ['the name alone, of someone with a telephone', ['', '', 'Wren Alder', '', '', '', '']],
    ['a key that nobody has', [otherKey, '', 'Wren Alder', 'wren@example.org', '', '', '']],
  ])('somebody new: %s', (_label, cells) => {
    expect(plan([cells])[0]?.verdict).toBe('new');
  });

  test('a key that nobody has becomes the key of the new one', () => {
    expect(plan([[otherKey, '', 'Ash', '', '', '', '']])[0]).toMatchObject({ id: otherKey });
  });

  test('two people with one mail address are not told apart', () => {
    const twin = { ...wren, key: otherKey };
    expect(plan([['', '', 'Wren', 'wren@example.org', '', '', '']], [wren, twin])[0]).toMatchObject(
      { verdict: 'refused', faults: [{ column: 'name' }] },
    );
  });
});

describe('what changes', () => {
  test('what is left empty stays as it is known', () => {
    const [row] = plan([[wrenKey, '', 'Wren Alder', '', '555 0199', '', '']]);
    expect(row).toMatchObject({
      verdict: 'changed',
      changes: ['phone'],
      fields: { email: 'wren@example.org', phone: '555 0199', city: 'Tern Bay' },
    });
  });

  test('nothing new is the same', () => {
    expect(plan([[wrenKey, 'Person', 'Wren Alder', '', '', 'Tern Bay', '']])[0]?.verdict).toBe(
      'same',
    );
  });

  test('what was taken out is the same when it is brought in', () => {
    const [heading = [], ...rows] = peopleRows([wren]);
    expect(plan(rows, [wren], heading)[0]?.verdict).toBe('same');
  });
});

describe('what is refused', () => {
  test.each([
    ['key', ['abc', '', 'Wren', '', '', '', '']],
    ['kind', ['', 'robot', 'Wren', '', '', '', '']],
    ['name', ['', '', '', '', '', '', '']],
    ['name', ['', '', 'W'.repeat(121), '', '', '', '']],
    ['email', ['', '', 'Wren', 'no mail', '', '', '']],
    ['note', ['', '', 'Wren', '', '', '', 'n'.repeat(2_001)]],
    ['note', ['', '', 'Wren', '', '', '', 'card 4111 1111 1111 1111']],
    ['line', ['', '', 'Wren', '', '', '', '', 'one more']],
  ])('at its %s', (column, cells) => {
    expect(faultsOf(cells)).toEqual([column]);
  });

  test('the same person twice in the file, at both lines', () => {
    const twice = plan([
      ['', '', 'Ash', 'ash@example.org', '', '', ''],
      ['', '', 'Ash Linden', 'Ash@example.org', '', '', ''],
    ]);
    expect(twice.map((row) => row.verdict)).toEqual(['refused', 'refused']);
  });
});

test('a heading needs the name, names no column twice, and passes over what it does not know', () => {
  expect(headingOf(['mail'], peopleColumns, ['name'])).toMatchObject({
    refusal: { code: 'column_missing', column: 'name' },
  });
  expect(headingOf(['Name', 'full name'], peopleColumns, ['name'])).toMatchObject({
    refusal: { code: 'column_twice', column: 'name' },
  });
  const read = headingOf(['NAME', 'Zip_Code', 'Shoe size'], peopleColumns, ['name']);
  expect(read.ok && [...read.value.places.keys()]).toEqual(['name', 'postcode']);
  expect(read.ok && read.value.passedOver).toEqual(['Shoe size']);
});
