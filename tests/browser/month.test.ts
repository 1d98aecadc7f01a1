import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await openPage(browser);
  await signInAs(page, 'owner');
});
afterAll(() => browser.close());

/** `$1,299.00` as cents, read by hand and not by the product. */
function centsOf(text: string): number {
  const found = /\$([\d,]+)\.(\d\d)/.exec(text);
  if (!found) throw new Error(`${text} is no amount.`);
  return Number(`${found[1] ?? ''}${found[2] ?? ''}`.replaceAll(',', ''));
}

async function netCellsOf(table: string): Promise<number[]> {
  const cells = page.getByRole('table', { name: table }).locator('tbody td:nth-child(3)');
  return (await cells.allInnerTexts()).map(centsOf);
}

/** The month before this one: all of its days are over, so that it has sales in the demo. */
async function openMonthBefore(): Promise<string> {
  await page.goto('/month');
  await page.getByRole('navigation', { name: 'Months' }).getByRole('link').first().click();
  await page.waitForURL(/month=\d{4}-\d\d/);
  return new URL(page.url()).searchParams.get('month') ?? '';
}

test('the month shows its designs as bars, and the table adds up to the sum to the cent', async () => {
  await openMonthBefore();
  const title = await page.getByRole('heading', { level: 1 }).innerText();
  const bars = page.getByRole('figure').getByRole('listitem');
  expect(await bars.count()).toBeGreaterThan(3);
  const cents = await netCellsOf(`${title} by design`);
  const sum = await page.getByText('These lines add up to').innerText();
  expect(cents.reduce((total, each) => total + each, 0)).toBe(centsOf(sum));
  expect(sum).toContain('to the cent what the sales of the month come to');
  await noAxeViolations(page);
});

test('a figure opens to its sale lines, which add up to it, and a line to its receipt', async () => {
  await openMonthBefore();
  const title = await page.getByRole('heading', { level: 1 }).innerText();
  const table = page.getByRole('table', { name: `${title} by design` });
  const first = table.locator('tbody tr').first();
  const net = centsOf(await first.locator('td:nth-child(3)').innerText());
  await first.getByRole('link').click();
  await page.getByRole('columnheader', { name: 'Receipt' }).waitFor();
  const cells = await page.locator('tbody td:nth-child(5)').allInnerTexts();
  expect(cells.map(centsOf).reduce((sum, each) => sum + each, 0)).toBe(net);
  await noAxeViolations(page);
  await page.locator('tbody th a').first().click();
  await page.waitForURL(/\/receipts\/\d+/);
});

test('the CSV of the month has the same sum', async () => {
  const month = await openMonthBefore();
  const sum = centsOf(await page.getByText('These lines add up to').innerText());
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Take it as CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe(`month-by-design-${month}.csv`);
  const [heading, ...lines] = readFileSync(await download.path(), 'utf8')
    .trim()
    .split('\r\n');
  expect(heading).toBe('month,code,design,pieces,net,share in per cent');
  const cents = lines.map((line) => Number((line.split(',').at(-2) ?? '').replace('.', '')));
  expect(cents.reduce((total, each) => total + each, 0)).toBe(sum);
});

test('a month without a sale says how it fills', async () => {
  await page.goto('/month?month=1999-01');
  await page.getByText('Nothing was sold in this month').waitFor();
  await noAxeViolations(page);
});

test('the gallery does not see the month', async () => {
  const other = await openPage(browser);
  await signInAs(other, 'gallery');
  await other.goto('/month');
  await other.getByText('This is not your room').waitFor();
});

test('a calculation is worked out by hand, and says what it needs', async () => {
  await page.goto('/workings?name=money-split');
  await page.getByLabel('Amount, in cents').fill('100');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByText('34 · 33 · 33').waitFor();
  await noAxeViolations(page);
  await page.getByLabel('Amount, in cents').fill('a lot');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByRole('alert').filter({ hasText: 'must be a whole number' }).waitFor();
});
