import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await openPage(browser, { width: 1280, height: 800 });
  await signInAs(page, 'owner');
});
afterAll(() => browser.close());

async function lookAt(holds: string, name: string, csv: string): Promise<void> {
  await page.goto('/data');
  await page.getByLabel(holds).check();
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(csv, 'utf8') };
  await page.getByLabel('The file').setInputFiles(file);
  await page.getByRole('button', { name: 'Look at it' }).click();
}

test('the owner brings an address book in, without the line that was refused, and takes it out again', async () => {
  const rows = ['name,email,shoe size', 'Quill Harrowgate,quill@example.org,9', 'Nobody,no mail,'];
  await lookAt('People', 'address-book.csv', rows.join('\n'));
  await page.getByText('1 new, 1 refused.').waitFor();
  await page.getByText('passed over: shoe size').waitFor();
  await noAxeViolations(page);
  await page.getByRole('button', { name: 'Bring in 1 line' }).click();
  await page.getByText('One line was refused').waitFor();
  await page.getByLabel('Leave the refused lines out').check();
  await page.getByRole('button', { name: 'Bring in 1 line' }).click();
  await page.getByText('It was brought in: 1 new, 1 refused.').waitFor();
  await noAxeViolations(page);

  await page.goto('/data');
  await noAxeViolations(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'The people' }).click(),
  ]);
  expect(readFileSync(await download.path(), 'utf8')).toContain(',Quill Harrowgate,quill@');
});

test('a file without its columns is told in one sentence', async () => {
  await lookAt('Sales of earlier books', 'sales.csv', 'day,net\n2024-05-31,4.00\n');
  await page.getByRole('alert').filter({ hasText: 'one of them must be “tenders”' }).waitFor();
});

test('what to make next says how it was worked out, and begins a job', async () => {
  await page.goto('/stock/make-next');
  await page.getByText('How this was worked out').first().click();
  await page.getByText('would be lost', { exact: false }).first().waitFor();
  await noAxeViolations(page);
  await page
    .getByRole('link', { name: /^Begin \d+$/ })
    .first()
    .click();
  await page.getByRole('heading', { name: 'Begin something new' }).waitFor();
});
