import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { isAllowed, permissions, roles, type Permission, type Role } from '@/lib/access/rules';

// Written by hand, apart from the product's own table: O owner, G gallery, M maker, B books.
const expected: Record<Permission, string> = {
  'counter.sell': 'OG',
  'counter.discount_beyond': 'O',
  'counter.return_beyond': 'O',
  'counter.give_back': 'OG',
  'counter.close_day': 'OG',
  'receipts.see': 'OGB',
  'stock.see': 'OGMB',
  'stock.load': 'OG',
  'stock.move': 'OGM',
  'stock.hold': 'OG',
  'stock.value': 'OB',
  'catalogue.keep': 'OG',
  'catalogue.price': 'O',
  'orders.take': 'OG',
  'orders.see': 'OGM',
  'outside.keep': 'OG',
  'data.take_out': 'OB',
  'data.bring_in': 'O',
  'trade.keep': 'O',
  'tax.see': 'OGB',
  'collectors.see': 'OGMB',
  'collectors.write': 'OG',
  'collectors.merge': 'OG',
  'collectors.erase': 'O',
  'commissions.see': 'OGMB',
  'commissions.see_money': 'OGB',
  'commissions.propose': 'O',
  'commissions.give_back': 'O',
  'commissions.write': 'OGM',
  'commissions.agree': 'O',
  'commissions.take_money': 'OG',
  'commissions.hand_over': 'O',
  'commissions.override_start': 'O',
  'commissions.end': 'O',
  'studio.see': 'OGM',
  'studio.move': 'OM',
  'studio.keep': 'OM',
  'diary.see': 'OGM',
  'diary.book': 'OGM',
  'diary.before_paid': 'O',
  'installation.do': 'OGM',
  'sending.do': 'OGM',
  'month.see': 'OB',
  'books.see': 'OB',
  'staff.keep': 'O',
  'settings.keep': 'O',
  'workings.see': 'OGMB',
  'files.see': 'OGMB',
  'self.keep': 'OGMB',
};
const letters: Record<Role, string> = { owner: 'O', gallery: 'G', maker: 'M', books: 'B' };
const known = Object.keys(permissions);

test.each(Object.entries(expected))('%s is for %s and for nobody else', (permission, who) => {
  const held = roles.filter((role) => isAllowed([role], permission as Permission));
  expect(held.map((role) => letters[role]).join('')).toBe(who);
});

test('no permission is missing from the hand-written table', () => {
  expect(known.toSorted()).toEqual(Object.keys(expected).toSorted());
});

const root = join(import.meta.dirname, '../..');
const files = readdirSync(join(root, 'app'), { recursive: true, encoding: 'utf8' }).map(
  (path) => `app/${path}`,
);
const text = (path: string) => readFileSync(join(root, path), 'utf8');

/** The door is the one place where nobody is signed in yet. */
const doors = ['app/sign-in/actions.ts', 'app/first-run/actions.ts'];

const isCollectors = (path: string) => path.startsWith('app/c/');
const isCalendar = (path: string) => path.startsWith('app/calendar/');
const isBySecret = (path: string) => isCollectors(path) || isCalendar(path);

/** Who stands before the actions of a file: the door, a collector's own address, or a permission. */
function makerOf(path: string): string {
  if (doors.includes(path)) return 'doorAction';
  return isCollectors(path) ? 'pageAction' : 'formAction';
}

/** What is wrong with a file of actions; nothing when every export is made by the wrapper. */
function faultsOfActions(path: string, code: string): string[] {
  const maker = makerOf(path);
  const exported = [...code.matchAll(/^export (?:default |async |const |function |\{)+(.*)$/gm)];
  const made = [
    ...code.matchAll(new RegExp(`^export const (\\w+) = ${maker}\\(\\s*([^,]+),`, 'gm')),
  ];
  const faults = made.flatMap(([, name, first = '']) =>
    maker !== 'formAction' || known.includes(first.trim().replaceAll("'", ''))
      ? []
      : [`${path}: ${name} asks for no known permission`],
  );
  if (exported.length === 0) faults.push(`${path}: nothing is exported`);
  if (exported.length !== made.length) faults.push(`${path}: an export is not made by ${maker}`);
  return faults;
}

/** What is wrong with a page of the rooms; nothing when it asks who is there, and for what. */
function faultsOfPage(path: string, code: string): string[] {
  const asked = [...code.matchAll(/await requireActor\(\s*'([a-z._]+)'\s*,?\s*\)/g)].map(
    ([, permission = '']) => permission,
  );
  if (asked.length === 0) return [`${path}: requireActor is not asked with a permission`];
  return asked.filter((each) => !known.includes(each)).map((each) => `${path}: what is ${each}?`);
}

const actionFiles = files.filter((path) => path.endsWith('/actions.ts'));
const pages = files.filter((path) => /^app\/\(rooms\)\/(.*\/)?page\.tsx$/.test(path));
const routes = files.filter((path) => path.endsWith('/route.ts'));

test.each(actionFiles)('every action of %s asks who sends it', (path) => {
  expect(faultsOfActions(path, text(path))).toEqual([]);
});

test.each(pages)('%s asks who is looking', (path) => {
  expect(faultsOfPage(path, text(path))).toEqual([]);
});

test.each(routes.filter((path) => !path.startsWith('app/api/auth/') && !isBySecret(path)))(
  '%s asks who is asking',
  (path) => {
    expect(text(path)).toMatch(/await (requireActor|findActor)\(/);
  },
);

const calendars = files.filter((path) => isCalendar(path) && /\.tsx?$/.test(path));

test.each(calendars)('%s opens by its secret alone, and tells of its owner alone', (path) => {
  expect(text(path)).toMatch(/await openFeed\(\(await params\)\.secret\)/);
  const asked = [...text(path).matchAll(/appointments?ForCalendar\(\s*([^,)]+)/g)];
  expect(asked.map(([, first]) => first)).toEqual(['feed.staffId']);
});

const collectors = files.filter(
  (path) => isCollectors(path) && /\/(page\.tsx|route\.ts)$/.test(path),
);

test.each(collectors)('%s opens by its address alone', (path) => {
  expect(text(path)).toMatch(/await open(Page|ForFile)\(params\)/);
  expect(text(path)).not.toMatch(/searchParams\)?\.(token|commission)/);
});

test('a collector’s page reads no commission but that of its address', () => {
  expect(collectors.length).toBeGreaterThanOrEqual(4);
  const parts = files.filter((path) => isCollectors(path) && /\.tsx?$/.test(path));
  const named = parts.flatMap((path) =>
    [...text(path).matchAll(/(\w+ForCollector)\(\s*([^,)]+)/g)]
      .filter(([, , first = '']) => !/(^|\.)link\.commissionId$/.test(first.trim()))
      .map(([whole]) => `${path}: ${whole}`),
  );
  expect(named).toEqual([]);
});

test('something was looked at', () => {
  expect(actionFiles.length).toBeGreaterThanOrEqual(4);
  expect(pages.length).toBeGreaterThanOrEqual(4);
  expect(routes.length).toBeGreaterThanOrEqual(2);
});

test('"use server" stands only in files named actions.ts', () => {
  const sources = files.filter((path) => /\.tsx?$/.test(path));
  const marked = sources.filter((path) => /^['"]use server['"]/m.test(text(path)));
  expect(marked.toSorted()).toEqual(actionFiles.toSorted());
});

test.each([
  ['a bare function', "'use server';\nexport async function sell() {}"],
  ['a default export', "'use server';\nexport default formAction('counter.sell', s, sell);"],
  ['a wrapper of its own', "'use server';\nexport const sell = wrap('counter.sell', s, act);"],
  ['an unknown permission', "'use server';\nexport const sell = formAction('counter.buy', s, a);"],
  ['a re-export', "'use server';\nexport { sell } from './elsewhere';"],
  ['the door’s wrapper inside', "'use server';\nexport const sell = doorAction(s, act);"],
  ['a collector’s wrapper inside', "'use server';\nexport const sell = pageAction(s, act);"],
])('these checks see %s', (_label, code) => {
  expect(faultsOfActions('app/(rooms)/counter/actions.ts', code)).not.toEqual([]);
});

test.each([
  ['no question', 'export default async function Page() { return null; }'],
  ['no permission', 'const actor = await requireActor();'],
  ['an unknown permission', "await requireActor('counter.buy');"],
])('these checks see a page with %s', (_label, code) => {
  expect(faultsOfPage('app/(rooms)/counter/page.tsx', code)).not.toEqual([]);
});
