import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let till: Page;

beforeAll(async () => {
  browser = await openBrowser();
  till = await openPage(browser, { width: 1280, height: 800 });
  await signInAs(till, 'gallery');
});

afterAll(async () => {
  await browser.close();
});

/** Opens a receipt of a heron of these days, of which something is still out. */
async function openReceipt(page: Page): Promise<void> {
  await page.goto('/receipts?find=heron');
  const found = page.getByRole('region', { name: /^Found for/ });
  const numbers = await found.getByRole('rowheader').getByRole('link').allTextContents();
  for (const number of numbers) {
    await page.goto(`/receipts/${number}/return`);
    const isLate = (await page.getByText('Only the owner may take it back').count()) > 0;
    if (!isLate && (await page.getByLabel('How many came back').count()) > 0) return;
  }
  throw new Error('No heron is still out.');
}

describe('a piece comes back', () => {
  test('what is missing is told at its field; then it is taken back for a credit', async () => {
    await openReceipt(till);
    await noAxeViolations(till);
    const receipt = new URL(till.url()).pathname.replace('/return', '');
    await till.getByLabel('How many came back').first().fill('99');
    await till.getByText('As store credit').click();
    await till.getByLabel('Why it came back').fill('too large for the wall');
    await till.getByRole('button', { name: 'Take it back' }).click();
    await till
      .getByText(/only \d+ (is|are) still out/)
      .first()
      .waitFor();
    expect(await till.getByLabel('Why it came back').inputValue()).toBe('too large for the wall');

    await till.getByLabel('How many came back').first().fill('1');
    await till.getByRole('button', { name: 'Take it back' }).click();
    await till.waitForURL(/\/receipts\/returns\/\d+$/);
    const paper = till.getByRole('article', { name: /^Return \d+$/ });
    await paper.getByText('back on the shelf').waitFor();
    await noAxeViolations(till);
    const code = await till
      .getByRole('link', { name: /^[2-9A-Z]{4}(-[2-9A-Z]{4}){2}$/ })
      .innerText();
    const pdf = await till.context().request.get(`${till.url()}/pdf`);
    expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');

    await till.goto('/vouchers');
    await till.getByLabel(/^Scan a voucher/).fill(code.toLowerCase());
    await till.getByRole('button', { name: 'Look' }).first().click();
    await till.getByRole('heading', { name: code }).waitFor();
    await noAxeViolations(till);
    await till.goto(receipt);
    await till.getByText('1 brought back since').waitFor();
  });
});

describe('the day’s end', () => {
  test('without any script the drawer is counted, and what is short wants a reason', async () => {
    const state = await till.context().storageState();
    const context = await browser.newContext({
      ...{ javaScriptEnabled: false, storageState: state, baseURL: new URL(till.url()).origin },
      viewport: { width: 390, height: 844 },
    });
    const plain = await context.newPage();
    await plain.goto('/drawer');
    await plain.getByLabel('$20 notes').fill('1');
    await plain.getByLabel('Stays in the drawer').fill('0');
    await plain.getByRole('button', { name: 'Write the count down' }).click();
    await plain
      .getByText(/Say what you think why/)
      .first()
      .waitFor();
    expect(await plain.getByLabel('$20 notes').inputValue()).toBe('1');
    await plain.getByLabel('If it differs: why').fill('counted for a rehearsal');
    await plain.getByRole('button', { name: 'Write the count down' }).click();
    await plain.getByRole('heading', { name: /^Day’s end \d+$/ }).waitFor();
    await plain.getByText('counted for a rehearsal').waitFor();
    await context.close();
    await till.goto('/drawer');
    await noAxeViolations(till);
  });

  test('everything that is touched is large enough, and nothing is wider than the page', async () => {
    for (const size of [
      { width: 1280, height: 800 },
      { width: 800, height: 1280 },
      { width: 390, height: 844 },
    ]) {
      await till.setViewportSize(size);
      await till.goto('/drawer');
      const small = await till
        .locator('form[aria-label="Count the drawer"] :is(button, input:not([type="hidden"]))')
        .evaluateAll((parts) =>
          parts
            .filter((part) => part.getBoundingClientRect().height < 55.5)
            .map((part) => part.outerHTML.slice(0, 120)),
        );
      expect(small).toEqual([]);
      const over = await till.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over).toBeLessThanOrEqual(0);
    }
  });
});
