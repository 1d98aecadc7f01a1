import { expect, test } from 'vitest';
import { rolesInput, signInNameInput } from '@/lib/access/input';
import { firstRunInput } from '@/lib/access/input/set-up';
import { addressOf, deviceWords } from '@/lib/access/rules/device';
import { insideHref } from '@/lib/access/rules/inside-href';

test.each([
  ['/counter', '/counter'],
  ['/diary/book?commission=12', '/diary/book?commission=12'],
  ['', '/'],
  ['//elsewhere.example', '/'],
  ['/\\elsewhere.example', '/'],
  ['https://elsewhere.example', '/'],
  ['javascript:alert(1)', '/'],
  ['/counter\nSet-Cookie: a=b', '/'],
  ['/sign-in?to=/sign-in', '/'],
  ['/sign-out', '/'],
  ['/api/auth/signout', '/'],
  ['/sign-insight', '/sign-insight'],
])('after signing in, “%s” leads to %s', (asked, led) => {
  expect(insideHref(asked)).toBe(led);
});

test.each([
  ['', 'an unknown browser'],
  ['Mozilla/5.0 (X11; Linux x86_64; rv:145.0) Gecko/20100101 Firefox/145.0', 'Firefox on Linux'],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 19_0 like Mac OS X) AppleWebKit/605.1.15 Version/19.0 Mobile/15E148 Safari/604.1',
    'Safari on an iPhone',
  ],
  [
    'Mozilla/5.0 (Linux; Android 16; Phone) AppleWebKit/537.36 Chrome/142.0.0.0 Mobile Safari/537.36',
    'Chrome on an Android phone',
  ],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 Chrome/142.0.0.0 Safari/537.36 Edg/142.0.0.0',
    'Edge on Windows',
  ],
])('a browser that says “%s” is %s', (userAgent, words) => {
  expect(deviceWords(userAgent)).toBe(words);
});

test.each([
  ['', 'unknown'],
  ['192.0.2.7', '192.0.2.7'],
  ['203.0.113.9, 192.0.2.7', '192.0.2.7'],
  ['x'.repeat(200), 'x'.repeat(64)],
])('the nearest address of “%s”', (forwarded, address) => {
  expect(addressOf(forwarded)).toBe(address);
});

test('one tick, several ticks and a tick twice become roles in their order', () => {
  expect(rolesInput.parse('maker')).toEqual(['maker']);
  expect(rolesInput.parse(['maker', 'owner', 'maker'])).toEqual(['owner', 'maker']);
});

test.each([undefined, [], 'king', ['owner', 'king']])('%j is no part here', (sent) => {
  expect(rolesInput.safeParse(sent).success).toBe(false);
});

test.each([
  [' Wren ', 'wren'],
  ['wren.alder-2', 'wren.alder-2'],
])('“%s” signs in as %s', (typed, name) => {
  expect(signInNameInput.parse(typed)).toBe(name);
});

test.each(['', 'w', 'wren alder', '-wren', 'wr\u0435n', 'x'.repeat(41)])(
  '“%s” is no name to sign in with',
  (typed) => {
    expect(signInNameInput.safeParse(typed).success).toBe(false);
  },
);

const form = {
  galleryName: 'Saltwood Relief',
  timeZone: 'America/Los_Angeles',
  state: '',
  ownerName: 'Maren Tidewell',
  signInName: 'maren',
  password: 'tern over shoals',
};

test('rate lines that are left empty are left out', () => {
  const read = firstRunInput.parse({ ...form, authority2: 'Inlet County', rate2: '1.25' });
  expect(read.rates).toEqual([{ authority: 'Inlet County', ratePercent: '1.25' }]);
});

test.each([
  ['an authority without a rate', { authority1: 'Inlet County', rate1: ' ' }, 'rate1'],
  ['a rate without an authority', { authority3: '', rate3: '1.25' }, 'authority3'],
  ['a rate that is no figure', { authority1: 'Inlet County', rate1: 'some' }, 'rate1'],
  ['a zone nobody lives in', { timeZone: 'Saltwood/Harrow' }, 'timeZone'],
  ['a field the form does not have', { isDemo: 'true' }, ''],
])('%s is refused at its field', (_label, fields, path) => {
  const read = firstRunInput.safeParse({ ...form, ...fields });
  expect(read.error?.issues.map((issue) => issue.path.join('.'))).toEqual([path]);
});
