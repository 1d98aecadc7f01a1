import { z } from 'zod';
import { sameName } from '@/lib/catalogue/rules/piece';
import { collectorFields, type CollectorFields } from '@/lib/collectors/input';
import { collectorKinds } from '@/lib/collectors/rules';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { cellOf, tooLong, type CellFault, type FileLine, type Heading } from './columns';
import type { NamedColumn } from './columns';

/** What a column of a file of people can say. */
export type PeopleColumn = keyof CollectorFields | 'key';

/** The columns in the order in which they are written. */
export const peopleColumns: readonly NamedColumn<PeopleColumn>[] = [
  { column: 'key', also: ['id'] },
  { column: 'kind', also: [] },
  { column: 'name', also: ['full name', 'collector'] },
  { column: 'email', also: ['mail', 'e-mail', 'mail address'] },
  { column: 'phone', also: ['telephone', 'tel'] },
  { column: 'street', also: ['address'] },
  { column: 'city', also: ['town', 'place'] },
  { column: 'state', also: ['province', 'region'] },
  { column: 'postcode', also: ['zip', 'postal code', 'zip code'] },
  { column: 'note', also: ['notes', 'remarks'] },
];

/** A person of the address book as a file knows one; the key is the id. */
export type Person = CollectorFields & { key: string };

/** The people as rows of a file, the heading first. */
export function peopleRows(people: readonly Person[]): string[][] {
  const names = peopleColumns.map((each) => each.column);
  return [names, ...people.map((person) => names.map((name) => person[name] ?? ''))];
}

/** One line, read: what it says of a person; what is left empty says nothing. */
export type PersonRead = {
  line: number;
  key: string | null;
  /** As it is written, for telling. */
  name: string;
  said: Partial<CollectorFields>;
  faults: readonly CellFault[];
};

/**
 * Reads one line of a file of people.
 *
 * @returns with a fault for each cell that cannot be kept: a key that is none, a kind that is not
 *   known, a name that is missing or too long, what is no mail address, what looks like a card's
 *   number
 */
export function readPerson(heading: Heading<PeopleColumn>, of: FileLine): PersonRead {
  const { line, cells } = of;
  const text = (column: PeopleColumn) => cellOf(heading, cells, column);
  const faults: CellFault[] = tooLong(heading, cells);
  const key = text('key').toLowerCase();
  if (key !== '' && !z.uuid().safeParse(key).success) {
    faults.push({
      column: 'key',
      sentence: 'A key is one that this tool wrote. For somebody new, leave it empty.',
    });
  }
  const typed = { name: text('name'), ...typedOf(text) };
  const parsed = collectorFields.safeParse(typed);
  if (!parsed.success) {
    for (const { path, message } of parsed.error.issues) {
      faults.push({ column: String(path[0] ?? 'name'), sentence: kindOr(path[0], message) });
    }
  }
  const card = Object.entries(typed).find(
    ([column, value]) => column !== 'phone' && looksLikeCardNumber(value),
  );
  if (card && !faults.some((fault) => fault.column === card[0])) {
    faults.push({
      column: card[0],
      sentence: 'This looks like the number of a card, and those are not kept here.',
    });
  }
  const said = parsed.success ? onlySaid(parsed.data, typed) : {};
  return { line, key: key === '' ? null : key, name: typed.name, said, faults };
}

function typedOf(text: (column: PeopleColumn) => string): Record<string, string> {
  const rest = ['email', 'phone', 'street', 'city', 'state', 'postcode', 'note'] as const;
  const written = rest.map((column) => [column, text(column)] as const);
  const kind = text('kind').toLowerCase();
  return Object.fromEntries(
    [...written, ['kind', kind] as const].filter(([, value]) => value !== ''),
  );
}

function kindOr(column: PropertyKey | undefined, message: string): string {
  return column === 'kind' ? `The kind is one of these: ${collectorKinds.join(', ')}.` : message;
}

function onlySaid(
  fields: CollectorFields,
  typed: Record<string, string>,
): Partial<CollectorFields> {
  return {
    ...(typed['kind'] === undefined ? {} : { kind: fields.kind }),
    ...(typed['name'] === undefined ? {} : { name: fields.name }),
    ...(typed['email'] === undefined ? {} : { email: fields.email }),
    ...(typed['phone'] === undefined ? {} : { phone: fields.phone }),
    ...(typed['street'] === undefined ? {} : { street: fields.street }),
    ...(typed['city'] === undefined ? {} : { city: fields.city }),
    ...(typed['state'] === undefined ? {} : { state: fields.state }),
    ...(typed['postcode'] === undefined ? {} : { postcode: fields.postcode }),
    ...(typed['note'] === undefined ? {} : { note: fields.note }),
  };
}

/** What one line would do. */
export type PlannedPerson =
  | { verdict: 'new'; line: number; name: string; id: string | null; fields: CollectorFields }
  | {
      verdict: 'changed';
      line: number;
      name: string;
      id: string;
      fields: CollectorFields;
      changes: readonly (keyof CollectorFields)[];
    }
  | { verdict: 'same'; line: number; name: string }
  | { verdict: 'refused'; line: number; name: string; faults: readonly CellFault[] };

/**
 * What a file of people would do, line by line.
 *
 * A key names the person. Without one a person is known by their mail address, else by telephone
 * and name, else by the name alone where neither side knows more. What is left empty stays as it
 * is known. Refused, in this order: cells that cannot be kept, the same person twice in the file,
 * a mail address or name that several people have.
 */
export function planPeople(read: readonly PersonRead[], known: readonly Person[]): PlannedPerson[] {
  const byKey = new Map(known.map((person) => [person.key, person]));
  const byFace = peopleByFace(known);
  const lines = linesByFace(read);
  return read.map((row): PlannedPerson => {
    const { line, name, key, said } = row;
    const face = key ?? facesOf(faceOf(row))[0] ?? '';
    const faults = row.faults.length > 0 ? row.faults : twice(lines.get(face) ?? [], line);
    if (faults.length > 0) return { verdict: 'refused', line, name, faults };
    const found = key === null ? (byFace.get(face) ?? []) : listOfOne(byKey.get(key));
    if (found.length > 1) {
      const sentence = 'Several people are known like this. Write the key of the one who is meant.';
      return { verdict: 'refused', line, name, faults: [{ column: 'name', sentence }] };
    }
    return planOne({ line, name, id: key, said }, found[0]);
  });
}

function listOfOne(person: Person | undefined): readonly Person[] {
  return person ? [person] : [];
}

function planOne(
  row: { line: number; name: string; id: string | null; said: Partial<CollectorFields> },
  known: Person | undefined,
): PlannedPerson {
  const { said, ...line } = row;
  if (!known) {
    return { verdict: 'new', ...line, fields: collectorFields.parse({ ...nothing, ...said }) };
  }
  const { key: id, ...before } = known;
  const names = peopleColumns.flatMap(({ column }) => (column === 'key' ? [] : [column]));
  const changes = names.filter((name) => said[name] !== undefined && said[name] !== before[name]);
  if (changes.length === 0) return { verdict: 'same', line: line.line, name: line.name };
  return { verdict: 'changed', ...line, id, fields: { ...before, ...said }, changes };
}

const nothing = { kind: 'person', note: '' } as const;

type Face = { name: string; email: string | null; phone: string | null };

function faceOf(row: PersonRead): Face {
  return { name: row.name, email: row.said.email ?? null, phone: row.said.phone ?? null };
}

/** How a person may be known without a key, the surest first. */
function facesOf({ name, email, phone }: Face): string[] {
  const called = sameName(name);
  return [
    ...(email === null ? [] : [`mail ${email.toLowerCase()}`]),
    ...(phone === null ? [] : [`phone ${phone.replace(/\D/g, '')} ${called}`]),
    ...(email === null && phone === null ? [`name ${called}`] : []),
  ];
}

function peopleByFace(known: readonly Person[]): ReadonlyMap<string, readonly Person[]> {
  const found = new Map<string, Person[]>();
  for (const person of known) {
    for (const face of facesOf(person)) {
      const others = found.get(face);
      if (others) others.push(person);
      else found.set(face, [person]);
    }
  }
  return found;
}

function linesByFace(read: readonly PersonRead[]): ReadonlyMap<string, readonly number[]> {
  const found = new Map<string, number[]>();
  for (const row of read) {
    const face = row.key ?? facesOf(faceOf(row))[0] ?? '';
    const lines = found.get(face);
    if (lines) lines.push(row.line);
    else found.set(face, [row.line]);
  }
  return found;
}

function twice(lines: readonly number[], line: number): CellFault[] {
  const others = lines.filter((each) => each !== line).slice(0, 4);
  if (others.length === 0) return [];
  const where = others.length === 1 ? `line ${others.join()}` : `lines ${others.join(', ')}`;
  return [{ column: 'name', sentence: `The same person stands in ${where} too.` }];
}
