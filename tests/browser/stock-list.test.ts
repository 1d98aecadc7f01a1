import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';
import { root } from '@/tests/helpers/server';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await openPage(browser);
  await signInAs(page, 'gallery');
});
afterAll(() => browser.close());

const template = readFileSync(join(root, 'seed/stock-list-template.csv'), 'utf8');

async function lookAt(csv: string, name = 'spring-stock.csv') {
  await page.goto('/stock/list');
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(csv, 'utf8') };
  await page.getByLabel('Your list').setInputFiles(file);
  await page.getByRole('button', { name: 'Look at it' }).click();
}

/** The template with a dearer first piece, a new piece, and one line that cannot be read. */
function changedTemplate(): string {
  // Counts are left out: some of the pieces are held, and a list does not count those away.
  const lines = template
    .trimEnd()
    .split('\r\n')
    .map((line) => line.replace(/,\d+,(?=\d*,[a-z ]+$)/, ',,'));
  const dearer = (lines[1] ?? '').replace('$138.00', '"$1,142.50"');
  const fresh =
    'GULL-5-MOO,Gull on a Post,relief tile,5,127 mm,3/4,in,Moon white,$44.00,,520 g,3,,open stock';
  const unreadable = 'NEW 1,Bad Code,bowl,8,3,8,in,Moon white,$5.00,,,1,,';
  return [lines[0], dearer, ...lines.slice(2), fresh, unreadable, ''].join('\r\n');
}

test('a list can be taken from the page, to start from', async () => {
  await page.goto('/stock/list');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Take a list to start from' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('stock-list.csv');
  expect(readFileSync(await download.path(), 'utf8')).toBe(template);
  await noAxeViolations(page);
});

test('a changed list is looked at, brought in without its refused line, and hangs in the stock room', async () => {
  await lookAt(changedTemplate());
  await page.waitForURL(/\/stock\/list\/[0-9a-f-]{36}$/);
  const refused = page.getByRole('row').filter({ hasText: 'NEW 1' });
  expect(await refused.innerText()).toMatch(/^61\s.*A SKU has letters, digits/s);
  const dearer = page.getByRole('row').filter({ hasText: 'price from $138.00 to $1,142.50' });
  expect(await dearer.count()).toBe(1);
  await noAxeViolations(page);

  await page.getByRole('button', { name: /^Bring in \d+ pieces$/ }).click();
  await page.getByText('One line was refused').waitFor();
  await page.goto('/stock?find=gull+on+a+post');
  await page.getByText('Nothing looks like that').waitFor();

  await page.goBack();
  await page.getByLabel('Leave the refused line out').check();
  await page.getByRole('button', { name: /^Bring in \d+ pieces$/ }).click();
  await page.getByText('It was brought in').waitFor();

  await page.goto('/stock?find=gull+post');
  await page.getByRole('link', { name: 'Gull on a Post' }).click();
  await page.getByRole('heading', { name: 'Gull on a Post' }).waitFor();
  expect(await page.getByText('3 were here when the list began').count()).toBe(1);
  await noAxeViolations(page);
});

test.each([
  ['a file without a code column', 'title,price\nTern,5\n', /one of them must be "code"/],
  ['an empty file', ' ', /The file is empty/],
  ['a quotation mark left open', 'code,title\nAA-1,"Tern\n', /near line 2 has no partner/],
])('%s is told in one sentence', async (_label, csv, sentence) => {
  await lookAt(csv);
  await page.getByRole('alert').filter({ hasText: sentence }).waitFor();
});

test('a piece that broke at the counter is written down, and its history tells it', async () => {
  await page.goto('/stock/GULL-5-MOO');
  await page.getByText('Something came, broke or was counted').click();
  const form = page.getByRole('form', { name: 'Correct what is here' });
  await form.getByLabel('Broken').check();
  await form.getByLabel('How many').fill('9');
  await form.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('By our count only 3 are here.').waitFor();
  expect(await form.getByLabel('How many').inputValue()).toBe('9');
  await form.getByLabel('How many').fill('1');
  await form.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('Written down: 2 here now.').waitFor();
  await page.reload();
  expect(await page.getByRole('listitem').filter({ hasText: '1 broke' }).count()).toBe(1);
});

test('a piece is found on a phone, with a slip of the finger', async () => {
  const phone = await openPage(browser, { width: 390, height: 844 });
  await signInAs(phone, 'maker');
  await phone.goto('/stock');
  await phone.getByLabel('Find a piece').fill('hreon');
  await phone.getByRole('button', { name: 'Find' }).click();
  await phone.getByRole('link', { name: 'Heron at Low Water' }).first().waitFor();
  expect(await phone.getByRole('link', { name: 'Bring in a stock list' }).count()).toBe(0);
  await noAxeViolations(phone);
});
