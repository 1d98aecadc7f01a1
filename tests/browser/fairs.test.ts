import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  page = await openPage(browser, { width: 800, height: 1280 });
  await signInAs(page, 'gallery');
});

afterAll(() => browser.close());

/** The SKU of a piece of which several stand on the floor, as the stock room lists it. */
async function aPieceHere(): Promise<string> {
  for (const letters of ['stones', 'kelp', 'rain', 'fern', 'tern', 'heron']) {
    await page.goto(`/stock?find=${letters}`);
    const text = await page.locator('main').innerText();
    const found = text.matchAll(/([A-Z0-9]+(?:-[A-Z0-9]+)+)\s+\$[\d,.]+\s+(\d+) here/g);
    for (const [, sku = '', count = '0'] of found) if (Number(count) >= 2) return sku;
  }
  throw new Error('The demo has no such piece on the floor.');
}

test('a fair is written down, a piece goes along, gets its label, and is counted back in', async () => {
  const sku = await aPieceHere();
  await page.goto('/fairs/new');
  await page.getByLabel('Name of the fair').fill('Kelp Fair');
  await page.getByLabel('First day').fill('2031-03-08');
  await page.getByLabel('Last day').fill('2031-03-07');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByText('The last day comes before the first.').waitFor();
  expect(await page.getByLabel('Name of the fair').inputValue()).toBe('Kelp Fair');
  await page.getByLabel('Last day').fill('2031-03-09');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('heading', { name: 'Kelp Fair' }).waitFor();
  await noAxeViolations(page);

  await page.getByRole('link', { name: 'Take pieces along' }).first().click();
  const list = page.getByLabel('What goes along');
  await list.fill('NOPE-1');
  await page.getByRole('button', { name: 'Take them along' }).click();
  await page.getByText('NOPE-1 is not in the catalogue.').first().waitFor();
  expect(await list.inputValue()).toBe('NOPE-1');
  await list.fill(`${sku}\n`);
  await page.getByRole('button', { name: 'Take them along' }).click();
  await page.getByText('1 piece goes along').waitFor();
  await noAxeViolations(page);

  await page.goto(`/stock/labels?sku=${sku}&codes=both`);
  await page
    .getByRole('img', { name: 'The first of 1 sheet: 1 of 30 labels are written.' })
    .waitFor();
  await noAxeViolations(page);
  const href = await page.getByRole('link', { name: 'Print price tags' }).getAttribute('href');
  const pdf = await page.request.get(href ?? '');
  expect(pdf.headers()['content-type']).toBe('application/pdf');

  await page.goto('/fairs');
  await page.getByRole('link', { name: 'Kelp Fair' }).click();
  await page.getByRole('link', { name: 'Count back in' }).click();
  await page.getByLabel('Back', { exact: true }).fill('2');
  await page.getByRole('button', { name: 'Write the count down' }).click();
  await page.getByText('2 of').first().waitFor();
  await page.getByLabel('Back', { exact: true }).fill('1');
  await page.getByRole('button', { name: 'Write the count down' }).click();
  await page.getByText('nothing stands there any more').first().waitFor();
});
