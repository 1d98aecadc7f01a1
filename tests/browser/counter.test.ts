import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { formatCents } from '@/lib/money/rules';
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
    const rows = await page
      .getByRole('list', { name: 'Found' })
      .getByRole('button')
      .allInnerTexts();
    for (const row of rows) {
      const count = /(\d+) here$/m.exec(row);
      const sku = /[A-Z0-9]+(?:-[A-Z0-9]+)+/.exec(row);
      if (count && sku && here(Number(count[1]))) return sku[0];
    }
  }
  throw new Error('The demo has no such piece at the counter.');
}

async function countOf(page: Page, sku: string): Promise<number> {
  await page.goto(`/counter?find=${sku}&typing=1`);
  const row = page
    .getByRole('list', { name: 'Found' })
    .getByRole('button')
    .filter({ hasText: sku });
  const text = await row.first().innerText();
  return Number(/(\d+) here/.exec(text)?.[1] ?? '0');
}

/** As a scanner does it: fast, at wherever the cursor is, with Enter at the end. */
async function scan(page: Page, code: string): Promise<void> {
  await page.keyboard.type(code, { delay: 4 });
  await page.keyboard.press('Enter');
}

/** The counter, with one of these scanned onto a new slip. */
async function slipWith(page: Page, sku: string): Promise<void> {
  await page.goto('/counter');
  await find(page).waitFor();
  await scan(page, sku);
  await page.getByRole('list', { name: 'On the slip' }).waitFor();
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
      .getByRole('button')
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
    await slipWith(till, sku);
    await till.getByLabel('Card', { exact: true }).check();
    await till.getByLabel(/^Slip number, never/).fill('4111 1111 1111 1111');
    await till.getByRole('button', { name: 'Take the money' }).click();
    await till.getByRole('alert').getByText('That looks like the number of a card').waitFor();
    await noAxeViolations(till);
  });
});

describe('a sale of one scanned piece', () => {
  test('takes two touches in cash: the scan, and “just right”', async () => {
    const sku = await aPieceWith(till, (count) => count >= 2);
    await till.goto('/counter');
    await find(till).waitFor();
    let touches = 0;
    const begun = Date.now();
    await scan(till, sku);
    touches += 1;
    await till.getByRole('button', { name: 'Just right' }).click();
    touches += 1;
    await till.getByRole('heading', { name: 'Sold' }).waitFor();
    console.log(`one piece sold in ${Date.now() - begun} ms`);
    expect(touches).toBeLessThanOrEqual(4);
  });

  test('is paid in parts: some by cheque, and the card takes what is left', async () => {
    await slipWith(till, await aPieceWith(till, (count) => count >= 2));
    const cents = Number(await total(till).getAttribute('value'));
    await till.getByLabel('Other, or several').check();
    await till.locator('select[name="way1"]').selectOption('cheque');
    await till.locator('input[name="amount1"]').fill('1.00');
    const left = BigInt(cents) - 100n;
    await till.getByText(`${formatCents(left)} left to pay`).waitFor();
    await till.locator('select[name="way2"]').selectOption('card');
    await till.getByRole('button', { name: 'Take the money' }).click();
    await till
      .getByText('by card and by cheque')
      .or(till.getByText('by cheque and by card'))
      .waitFor();
  });
});

describe('two tills', () => {
  test('the last one is sold once; the other is told who sold it and when', async () => {
    const last = await aPieceWith(till, (count) => count === 1);
    await slipWith(till, last);
    await slipWith(secondTill, last);
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

  test('pressed twice, it is one sale; the same for the next visitor is another', async () => {
    const sku = await aPieceWith(till, (count) => count >= 3);
    const before = await countOf(till, sku);
    await slipWith(till, sku);
    await till.getByRole('button', { name: 'Just right' }).dblclick();
    const receipt = till.getByRole('link', { name: /^Receipt \d+$/ });
    const first = await receipt.innerText();
    await scan(till, sku);
    await till.getByRole('button', { name: 'Just right' }).click();
    await receipt.waitFor();
    expect(await receipt.innerText()).not.toBe(first);
    expect(await countOf(till, sku)).toBe(before - 2);
  });
});

describe('hands that hold something', () => {
  test('everything on the counter is at least 56 pixels high, on a phone too', async () => {
    const sku = await aPieceWith(till, (count) => count >= 2);
    for (const size of [
      { width: 1440, height: 900 },
      { width: 390, height: 844 },
    ]) {
      await till.setViewportSize(size);
      await slipWith(till, sku);
      const small = await till
        .locator(
          'main :is(a, button, summary, select, label:has(input[type="radio"]), input:not([type="radio"]))',
        )
        .evaluateAll((parts) =>
          parts
            .filter((part) => part.getClientRects().length > 0 && !part.closest('nav'))
            .filter((part) => part.getBoundingClientRect().height < 55.5)
            .map((part) => part.outerHTML.slice(0, 120)),
        );
      expect(small).toEqual([]);
      const over = await till.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over).toBeLessThanOrEqual(0);
    }
    await till.setViewportSize({ width: 1440, height: 900 });
  });

  test('without any script, a piece is found and sold all the same', async () => {
    const sku = await aPieceWith(till, (count) => count >= 2);
    const state = await till.context().storageState();
    const base = new URL(till.url()).origin;
    const context = await browser.newContext({
      ...{ javaScriptEnabled: false, storageState: state, baseURL: base },
    });
    const plain = await context.newPage();
    await plain.goto('/counter');
    await find(plain).fill(sku);
    await plain.getByRole('button', { name: 'Find' }).click();
    await plain.getByRole('list', { name: 'On the slip' }).waitFor();
    await plain.getByLabel('Given').fill('1');
    await plain.getByRole('button', { name: 'Take the money' }).click();
    await plain.getByText('$1.00 is not enough').first().waitFor();
    expect(await plain.getByLabel('Given').inputValue()).toBe('1');
    await plain.getByRole('button', { name: 'Just right' }).click();
    await plain.getByRole('heading', { name: 'Sold' }).waitFor();
    await context.close();
  });
});

describe('the books and the receipts of the day', () => {
  test('the sums agree, an entry leads to its receipt, and the file is a file', async () => {
    const desk = await openPage(browser);
    await signInAs(desk, 'books');
    await desk.goto('/receipts');
    await noAxeViolations(desk);
    await desk.goto('/books');
    const sums = desk.getByRole('region', { name: 'Trial balance' }).locator('tfoot data');
    const [debits, credits] = await sums.evaluateAll((cells) =>
      cells.map((cell) => cell.getAttribute('value')),
    );
    expect(debits).toBe(credits);
    expect(Number(debits)).toBeGreaterThan(0);
    await noAxeViolations(desk);

    const file = await desk.context().request.get(new URL('/books/journal', desk.url()).href);
    expect(file.headers()['content-type']).toContain('text/csv');
    expect((await file.text()).split('\r\n')[0]).toContain('entry,date,memo,paper,account');

    await desk
      .getByRole('link', { name: /^receipt \d+$/ })
      .first()
      .click();
    await desk.getByRole('article', { name: /^Receipt \d+$/ }).waitFor();
    const paper = await desk.context().request.get(`${desk.url()}/pdf`);
    expect(paper.headers()['content-type']).toBe('application/pdf');
    expect((await paper.body()).subarray(0, 5).toString()).toBe('%PDF-');
    await desk.goto('/counter');
    expect(await desk.getByLabel('Find a piece').count()).toBe(0);
  });
});
