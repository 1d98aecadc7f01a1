import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, posix, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { bareDateTimes, exportsWithoutDocblock } from '../../helpers/source';
import { headsWithServerOnly, sources, type Source } from '../../helpers/source';

const root = resolve(import.meta.dirname, '../../..');
const code = sources(['app', 'lib', 'seed'], /\.tsx?$/);
const libCode = sources(['lib'], /\.tsx?$/);
const testCode = sources(['tests'], /\.(test|spec)\.ts$/);
const everything = [...code, ...sources(['tests'], /\.(ts|mjs)$/), ...sources(['lib'], /\.mjs$/)];

/** A file of the sort that a check looks at. */
function sample(path: string, text: string): Source {
  return { path, text };
}

test('there is something to check', () => {
  expect(libCode.length).toBeGreaterThan(40);
  expect(testCode.length).toBeGreaterThan(20);
});

test('every export of lib says what it is', () => {
  const bare = libCode.flatMap((file) =>
    exportsWithoutDocblock(file).map((name) => `${file.path}: ${name}`),
  );
  expect(bare).toEqual([]);
});

test('the docblock check sees functions, values, classes and types', () => {
  const text = [
    'export const a = 1;',
    'export function b(): void {}',
    'export type C = string;',
    'export class D {}',
    '/** Told. */',
    'export const e = 1;',
    'export type F = z.infer<typeof e>;',
    'const hidden = 1;',
  ].join('\n');
  expect(exportsWithoutDocblock(sample('lib/x/rules.ts', text))).toEqual(['a', 'b', 'C', 'D']);
});

const neverInBrowser =
  /^lib\/([^/]+\/(reads|writes)(\/[^/]+)?\.tsx?|platform\/db\/[^/]+\.ts|platform\/env\.ts)$/;

test('what reads, writes or holds secrets never reaches a browser', () => {
  const guarded = libCode.filter((file) => neverInBrowser.test(file.path));
  expect(guarded.length).toBeGreaterThan(10);
  const open = guarded.filter((file) => !headsWithServerOnly(file));
  expect(open.map((file) => file.path)).toEqual([]);
});

test('the server-only check wants it first, and knows its files', () => {
  const late = "import { x } from './x';\nimport 'server-only';\n";
  expect(headsWithServerOnly(sample('lib/a/reads.ts', late))).toBe(false);
  expect(headsWithServerOnly(sample('lib/a/reads.ts', "import 'server-only';\n"))).toBe(true);
  expect(neverInBrowser.test('lib/stock/reads/levels.ts')).toBe(true);
  expect(neverInBrowser.test('lib/stock/rules.ts')).toBe(false);
});

/** Files that open a door to the network without being a list of actions. */
function strayActions(files: readonly Source[]): string[] {
  const opens = files.filter((file) => /^\s*['"]use server['"]/m.test(file.text));
  return opens.map((file) => file.path).filter((path) => !/^app\/(.+\/)?actions\.ts$/.test(path));
}

test('only actions.ts may be called from a browser', () => {
  expect(strayActions(code)).toEqual([]);
  expect(strayActions([sample('app/counter/page.tsx', "'use server';")])).toHaveLength(1);
  expect(strayActions([sample('app/counter/actions.ts', "'use server';")])).toHaveLength(0);
});

/** Files that are named after nothing in the trade. */
function emptyNames(files: readonly Source[]): string[] {
  const empty = /^(utils?|helpers?|common|misc|manager|service)s?$/;
  return files
    .map((file) => file.path)
    .filter((path) => path.split('/').some((part) => empty.test(part.replace(/\..*$/, ''))));
}

test('every file is named after something', () => {
  expect(emptyNames(code)).toEqual([]);
  expect(emptyNames([sample('lib/stock/utils.ts', '')])).toHaveLength(1);
  expect(emptyNames([sample('lib/helpers/stock.ts', '')])).toHaveLength(1);
  expect(emptyNames([sample('lib/stock/rules.ts', '')])).toHaveLength(0);
});

test('every area of lib stands on a floor, and every floor’s area exists or is to come', () => {
  const { floors } = createRequire(import.meta.url)('../../../.dependency-cruiser.cjs') as {
    floors: string[][];
  };
  const listed = new Set(floors.flat());
  const areas = readdirSync(resolve(root, 'lib'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .filter((name) => name !== 'platform' && name !== 'decisions');
  expect(areas.filter((name) => !listed.has(name))).toEqual([]);
  expect(listed.size).toBe(floors.flat().length);
});

test('every time in the schema says whether it is an instant or a day', () => {
  const schema = sources(['prisma'], /\.prisma$/);
  expect(schema.length).toBeGreaterThan(5);
  const bare = schema.flatMap((file) =>
    bareDateTimes(file).map((field) => `${file.path}: ${field}`),
  );
  expect(bare).toEqual([]);
});

test('the check of times sees a bare one', () => {
  const lines = [
    '  at     DateTime',
    '  seenAt DateTime? @default(now())',
    '  onDay  DateTime  @db.Date',
    '  openAt DateTime  @db.Timestamptz(3)',
    '  exact  DateTime  @db.Timestamptz(6)',
  ];
  expect(bareDateTimes(sample('a.prisma', lines.join('\n')))).toEqual(['at', 'seenAt', 'exact']);
});

/** What is too long to be read in one go. */
function tooLong(files: readonly Source[]): string[] {
  return files
    .filter(({ path, text }) => text.trimEnd().split('\n').length > linesMax(path))
    .map(({ path }) => path);
}

function linesMax(path: string): number {
  if (/^(tests|seed)\//.test(path)) return 300;
  return path.endsWith('.tsx') ? 200 : 250;
}

test('no file is longer than a person reads in one go', () => {
  expect(tooLong(everything)).toEqual([]);
  expect(tooLong([sample('lib/a/rules.ts', 'x\n'.repeat(251))])).toHaveLength(1);
  expect(tooLong([sample('app/a/page.tsx', 'x\n'.repeat(201))])).toHaveLength(1);
  expect(tooLong([sample('lib/a/rules.ts', 'x\n'.repeat(250))])).toHaveLength(0);
});

/** Folders with more files of code than can be taken in at a glance. */
function crowded(files: readonly Source[]): string[] {
  const counts = new Map<string, number>();
  for (const { path } of files) counts.set(dirname(path), (counts.get(dirname(path)) ?? 0) + 1);
  return [...counts].filter(([, count]) => count > 12).map(([folder]) => folder);
}

test('no folder of lib holds more than a dozen files', () => {
  expect(crowded([...libCode, ...sources(['lib'], /\.mjs$/)])).toEqual([]);
  const many = Array.from({ length: 13 }, (_, place) => sample(`lib/a/f${place}.ts`, ''));
  expect(crowded(many)).toEqual(['lib/a']);
});

const leftOpen: readonly (readonly [string, RegExp, string])[] = [
  ['something left to do', /\b(TODO|FIXME|XXX)\b/, '// TODO later'],
  ['a check switched off', /eslint-disable|@ts-(ignore|nocheck|expect-error)/, '// @ts-ignore'],
  ['a test passed over', /\b(test|it|describe)\.(skip|only|todo)\b/, "test.skip('x')"],
  ['a snapshot', /toMatch(Inline)?Snapshot/, 'expect(x).toMatchSnapshot()'],
  ['a stand-in for our own code', /vi\.(do)?mock\(/i, "vi.mock('@/lib/stock/reads')"],
];

test.each(leftOpen)('nowhere is there %s', (_label, sign, example) => {
  const others = everything.filter((file) => !file.path.startsWith('tests/rules/house/'));
  expect(others.filter((file) => sign.test(file.text)).map((file) => file.path)).toEqual([]);
  expect(sign.test(example)).toBe(true);
});

/** Imports that climb out of their own area of lib, or their own room of app. */
function climbing(files: readonly Source[]): string[] {
  return files.flatMap(({ path, text }) =>
    [...text.matchAll(/from '(\.\.\/[^']+)'/g)]
      .map((found) => posix.join(dirname(path), found[1] ?? ''))
      .filter((target) => homeOf(target) !== homeOf(path))
      .map((target) => `${path} climbs to ${target}`),
  );
}

function homeOf(path: string): string {
  const parts = path.split('/');
  return parts.slice(0, parts[1] === '(rooms)' ? 3 : 2).join('/');
}

test('across areas and rooms an import names the place', () => {
  expect(climbing(code)).toEqual([]);
  expect(climbing([sample('lib/a/b/c.ts', "import { x } from '../../d/rules';")])).toHaveLength(1);
  expect(climbing([sample('lib/a/c.ts', "import { x } from '../d/rules';")])).toHaveLength(1);
  expect(climbing([sample('lib/a/b/c.ts', "import { x } from '../rules';")])).toHaveLength(0);
});

test('every file of code is in lower case with hyphens', () => {
  const odd = code
    .map((file) => basename(file.path))
    .filter((name) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.d)?\.tsx?$/.test(name));
  expect(odd).toEqual([]);
});
