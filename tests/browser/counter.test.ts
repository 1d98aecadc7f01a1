import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let till: Page;
let secondTill: Page;

beforeAll(async () => {
  browser = await openBrowser();
  till = await openPage(browser);
  secondTill = await openPage(browser, { width: 820, height: 1180 });
  await signInAs(till, 'gallery');
  await signInAs(secondTill, 'owner');
});

afterAll(() => browser.close());

/** A piece of the demo with that many of it at the counter, as the counter itself lists it. */
async function aPieceWith(page: Page, here: (count: number) => boolean): Promise<string> {
  for (const letters of ['tern', 'fog', 'heron', 'cedar', 'stones', 'rain', 'fern', 'kelp']) {
    await page.goto(`/counter?find=${letters}&typing=1`);
    const rows = await page.getByRole('list', { name: 'Found' }).getByRole('link').allInnerTexts();
    for (const row of rows) {
      const count = /(\d+) here/.exec(row);
      const sku = /[A-Z0-9]+(?:-[A-Z0-9]+)+/.exec(row);
      if (count && sku && here(Number(count[1]))) return sku[0];
    }
  }
  throw new Error('The demo has no such piece at the counter.');
}

async function countOf(page: Page, sku: string): Promise<number> {
  await page.goto(`/counter?find=${sku}&typing=1`);
  const row = page.getByRole('list', { name: 'Found' }).getByRole('link').filter({ hasText: sku });
  const text = await row.first().innerText();
  return Number(/(\d+) here/.exec(text)?.[1] ?? '0');
}

/** As a scanner does it: fast, at wherever the cursor is, with Enter at the end. */
async function scan(page: Page, code: string): Promise<void> {
  await page.keyboard.type(code, { delay: 4 });
  await page.keyboard.press('Enter');
}

const total = (page: Page) => page.locator('dl div', { hasText: /^Total/ }).locator('data');
const find = (page: Page) => page.getByLabel('Find a piece');

describe('a sale at the counter', () => {
  test('two scans, the money in cash, everything by keyboard', async () => {
    const several = await aPieceWith(till, (count) => count >= 2);
    const before = await countOf(till, several);
    await till.goto('/counter');
    await find(till).waitFor();
    await noAxeViolations(till);
    await scan(till, several);
    await scan(till, several);
    const quantity = till
      .getByRole('list', { name: 'On the slip' })
      .getByText('2', { exact: true });
    await quantity.waitFor();
    await noAxeViolations(till);

    await till.reload();
    await quantity.waitFor();
    const shown = await total(till).innerText();
    const cents = Number(await total(till).getAttribute('value'));

    await find(till).focus();
    await till.keyboard.press('Enter');
    expect(await till.getByLabel('Given').evaluate((el) => el === document.activeElement)).toBe(
      true,
    );
    await till.keyboard.type('1');
    await till.keyboard.press('Enter');
    const refused = till.getByRole('form').getByRole('alert');
    await refused.waitFor();
    expect(await refused.innerText()).toContain(`$1.00 is not enough for ${shown}`);
    expect(await till.getByLabel('Given').inputValue()).toBe('1');

    const given = Math.ceil(cents / 100) + 5;
    await till.getByLabel('Given').fill(String(given));
    await till.keyboard.press('Enter');
    await till.getByRole('heading', { name: 'Sold' }).waitFor();
    const back = await till
      .getByText('Goes back')
      .locator('..')
      .locator('data')
      .getAttribute('value');
    expect(Number(back)).toBe(given * 100 - cents);
    await noAxeViolations(till);

    await till.getByRole('link', { name: /^Receipt \d+$/ }).click();
    await till.getByRole('article').waitFor();
    expect(await till.getByRole('article').innerText()).toContain(shown);
    await noAxeViolations(till);
    expect(await countOf(till, several)).toBe(before - 2);
  });

  test('a scan of letters with three typed finds, and one touch puts it on the slip', async () => {
    await till.goto('/counter');
    await find(till).pressSequentially('ter', { delay: 40 });
    const found = till.getByRole('list', { name: 'Found' });
    await found.waitFor();
    await found
      .getByRole('link')
      .filter({ hasText: /\d here/ })
      .first()
      .click();
    await till.getByRole('list', { name: 'On the slip' }).waitFor();
    expect(await find(till).inputValue()).toBe('');
    expect(await find(till).evaluate((el) => el === document.activeElement)).toBe(true);
  });

  test('a code that was misread is told, and stays where it was typed', async () => {
    await till.goto('/counter');
    await find(till).waitFor();
    await scan(till, '2000000000012');
    await till.getByText('2000000000012 was misread').waitFor();
  });

  test('the number of a card is refused, and nothing is sold', async () => {
    const sku = await aPieceWith(till, (count) => count >= 1);
    await till.goto(`/counter?slip=${sku}`);
    await till.getByLabel('Card', { exact: true }).check();
    await till.getByLabel(/^Slip number of the terminal/).fill('4111 1111 1111 1111');
    await till.getByRole('button', { name: 'Take the money' }).click();
    await till.getByRole('alert').getByText('That looks like the number of a card').waitFor();
    await noAxeViolations(till);
  });
});

describe('two tills', () => {
  test('the last one is sold once; the other is told who sold it and when', async () => {
    const last = await aPieceWith(till, (count) => count === 1);
    await till.goto(`/counter?slip=${last}`);
    await secondTill.goto(`/counter?slip=${last}`);
    await secondTill.getByLabel('Card', { exact: true }).check();
    await secondTill.getByRole('button', { name: 'Take the money' }).click();
    await secondTill.getByRole('heading', { name: 'Sold' }).waitFor();

    await till.getByRole('button', { name: 'Just right' }).click();
    const told = till.getByRole('form').getByRole('alert');
    await told.waitFor();
    expect(await told.innerText()).toMatch(
      /The last .+ was sold (just now|a minute ago), at the counter, by Maren Tidewell\./,
    );
    await till.goto('/counter');
    await find(till).waitFor();
    await scan(till, last);
    await till.getByText('put the count right in Stock first').waitFor();
    expect(await till.getByText('Nothing is on it yet.').count()).toBe(1);
    await noAxeViolations(till);
  });

  test('pressed twice, it is one sale', async () => {
    const sku = await aPieceWith(till, (count) => count >= 2);
    const before = await countOf(till, sku);
    await till.goto(`/counter?slip=${sku}`);
    await till.getByRole('button', { name: 'Just right' }).dblclick();
    await till.getByRole('heading', { name: 'Sold' }).waitFor();
    expect(await countOf(till, sku)).toBe(before - 1);
  });
});
