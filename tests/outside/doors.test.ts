import { expect, inject, test } from 'vitest';
import { askOutside } from '../helpers/launches';
import {
  builtActions,
  closedAddresses,
  cookieOf,
  madeUpPages,
  showsInsides,
  visit,
} from '../helpers/visits';

const forged = { cookie: 'next-auth.session-token=eyJhbGciOiJkaXIifQ..made.up.here' };

test('there are addresses and actions to try', () => {
  expect(closedAddresses().length).toBeGreaterThan(20);
  expect(builtActions().length).toBeGreaterThan(10);
});

test.each(closedAddresses())('%s leads a stranger to the door and shows nothing', async (path) => {
  const answer = await visit(path);
  expect(answer.status).toBe(303);
  expect(answer.headers.get('location')).toMatch(/^\/sign-in(\?|$)/);
  expect((await answer.text()).length).toBeLessThan(200);
});

test.each(closedAddresses())('%s knows a made-up session from a real one', async (path) => {
  const looked = await visit(path, { headers: forged });
  // What only takes something in is asked to.
  const answer =
    looked.status === 405 ? await visit(path, { method: 'POST', headers: forged }) : looked;
  const isLed = (answer.headers.get('location') ?? '').includes('/sign-in');
  expect(isLed || [401, 403, 404].includes(answer.status), `${answer.status}`).toBe(true);
});

test.each(madeUpPages())('%s opens nothing: its secret was never given out', async (path) => {
  const answer = await visit(path);
  expect(answer.status).toBe(404);
  expect(await answer.text()).not.toMatch(/commission \d|\$[\d,]+\.\d\d/i);
});

test('no action writes anything for a stranger, or for a made-up session', async () => {
  const before = await everyCount();
  for (const { id, page } of builtActions()) {
    const how = { method: 'POST', body: '[{}]' };
    const stranger = await visit(page, { ...how, headers: { 'next-action': id } });
    const known = /^\/(sign-in|first-run|c\/)/.test(page);
    if (!known) expect([page, stranger.status]).toEqual([page, 303]);
    const made = await visit(page, { ...how, headers: { ...forged, 'next-action': id } });
    expect(showsInsides(await made.text()), page).toBe(false);
  }
  expect(await everyCount()).toEqual(before);
});

test('what is written is nobody else’s: an action asked for from another site is refused', async () => {
  const cookie = await cookieOf('owner');
  const before = await everyCount();
  for (const { id, page } of builtActions().filter((one) => one.page === '/counter')) {
    const headers = { cookie, 'next-action': id, origin: 'https://elsewhere.example' };
    const answer = await visit(page, { method: 'POST', headers, body: '[{}]' });
    expect(answer.status).toBeGreaterThanOrEqual(400);
  }
  expect(await everyCount()).toEqual(before);
});

const wanted: readonly (readonly [string, RegExp])[] = [
  ['content-security-policy', /script-src 'self' 'nonce-[\w+/=]{16,}'/],
  ['content-security-policy', /frame-ancestors 'none'/],
  ['content-security-policy', /object-src 'none'/],
  ['x-content-type-options', /^nosniff$/],
  ['x-frame-options', /^DENY$/],
  ['referrer-policy', /^(same-origin|no-referrer)$/],
  ['cross-origin-opener-policy', /^same-origin$/],
  ['cache-control', /no-store/],
];

test.each(['/sign-in', '/counter', '/nowhere'])(
  '%s carries the headers that guard it',
  async (path) => {
    const answer = await visit(path);
    const missing = wanted.filter(([name, value]) => !value.test(answer.headers.get(name) ?? ''));
    expect(missing).toEqual([]);
    expect(answer.headers.get('x-powered-by')).toBeNull();
  },
);

test('each answer has a nonce of its own, and its page uses no other', async () => {
  const first = await visit('/sign-in');
  const second = await visit('/sign-in');
  const [one, other] = [nonceOf(first), nonceOf(second)];
  expect(one).not.toBe(other);
  const scripts = [...(await first.text()).matchAll(/<script\b([^>]*)>/g)].map((found) => found[1]);
  expect(scripts.length).toBeGreaterThan(0);
  expect(scripts.filter((words) => !words?.includes(`nonce="${one}"`))).toEqual([]);
});

test('the session cookie is out of reach of scripts and of other sites', async () => {
  const asked = await visit('/api/auth/csrf');
  const cookies = asked.headers.getSetCookie();
  expect(cookies.length).toBeGreaterThan(0);
  expect(cookies.filter((one) => !/HttpOnly/i.test(one) || !/SameSite=Lax/i.test(one))).toEqual([]);
});

const oddAddresses = [
  ...['/receipts/0', '/receipts/99999999999999999999', '/receipts/1e3', '/receipts/%00'],
  ...['/stock/%00', '/stock/..%2f..%2fetc%2fpasswd', `/stock/${'x'.repeat(5000)}`],
  ...['/commissions/%FF', '/commissions/nope', '/collectors/not-a-uuid', '/diary/not-a-uuid'],
  ...['/files/not-a-uuid', '/files/00000000-0000-0000-0000-000000000000', '/staff/not-a-uuid'],
  ...['/month?month=9999-99', '/month/not-a-design', '/month/csv?month=nope', '/studio/-1'],
  ...["/stock?q='%22%3B%00", '/books?from=nope&to=%F0', '/nowhere/at/all'],
];

test.each(oddAddresses)(
  '%s is answered in plain words, not with the program’s insides',
  async (path) => {
    const cookie = await cookieOf('owner');
    const answer = await visit(path, { headers: { cookie } });
    expect(answer.status).toBeLessThan(500);
    expect(showsInsides(await answer.text())).toBe(false);
  },
);

test('the sign of insides is seen', () => {
  expect(showsInsides('Error: x\n    at readIt (/app/lib/a.ts:3:4)')).toBe(true);
  expect(showsInsides('<p>Nothing was half done.</p>')).toBe(false);
});

function nonceOf(answer: Response): string {
  return /'nonce-([^']+)'/.exec(answer.headers.get('content-security-policy') ?? '')?.[1] ?? '';
}

/** How many rows every table has; what the door itself notes about tries is left out. */
async function everyCount(): Promise<unknown[]> {
  const tables = await askOutside(
    inject('dataDir'),
    `select table_name as name,
       (xpath('/row/n/text()', query_to_xml(
         format('select count(*) as n from %I', table_name), false, true, '')))[1]::text as rows
     from information_schema.tables
     where table_schema = 'public' and table_type = 'BASE TABLE'
       and table_name not in ('SignInTry', 'StaffSession', 'AuditLine')
     order by 1`,
  );
  expect(tables.length).toBeGreaterThan(20);
  return tables;
}
