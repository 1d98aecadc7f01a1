import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await openPage(browser);
  await signInAs(page, 'gallery');
});
afterAll(() => browser.close());

test('a piece is ordered in a moment: what is said first, then whose it is, then the deposit', async () => {
  await page.goto('/orders/new?find=barnacle+field+tile');
  await page.getByRole('link', { name: 'Barnacle Field' }).first().click();
  await page.getByRole('heading', { name: 'Like Barnacle Field' }).waitFor();
  await page.getByLabel('How many').fill('3');
  await page.getByRole('button', { name: 'Look again' }).click();
  await page.waitForURL(/quantity=3/);
  expect(await page.getByText(/No mould of this design is written down/).count()).toBe(1);
  expect(await page.getByText(/That is about, and no promise/).count()).toBe(1);
  await noAxeViolations(page);

  await page.getByRole('button', { name: 'Take the order, and the deposit' }).click();
  await page.getByText('Say it to them first, then tick it.').waitFor();
  await page.getByLabel('Name', { exact: true }).fill('Odalys Brandt 🌊');
  await page.getByLabel(/I said it/).check();
  await page.getByRole('button', { name: 'Take the order, and the deposit' }).click();
  await page.waitForURL(/\/counter\?slip=/);
  await page
    .getByText(/Deposit on special order/)
    .first()
    .waitFor();

  await page.goto('/promises');
  await page.getByRole('row').filter({ hasText: 'Odalys Brandt' }).waitFor();
  await noAxeViolations(page);
});
