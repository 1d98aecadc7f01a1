import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  page = await openPage(browser, { width: 1280, height: 800 });
  await signInAs(page, 'gallery');
});

afterAll(() => browser.close());

/** A piece of which many are free, so that no other story misses the one that is held. */
async function choosePlenty(): Promise<void> {
  for (const letters of ['sword', 'chant', 'otter', 'kelp', 'stone', 'tern']) {
    await page.goto(`/holds/new?find=${letters}`);
    const found = page.getByRole('list', { name: 'Pieces' }).getByRole('link');
    for (const [at, words] of (await found.allInnerTexts()).entries()) {
      if (Number(/(\d+) free/.exec(words)?.[1] ?? '0') < 4) continue;
      await found.nth(at).click();
      await page.waitForURL(/pieces=/);
      return;
    }
  }
  throw new Error('The demo has no piece of which four are free.');
}

describe('a hold', () => {
  test('is made by name, stands on its page, goes onto a slip, and is let go', async () => {
    await page.goto('/holds');
    await page.getByRole('heading', { name: 'Holds', exact: true }).waitFor();
    await noAxeViolations(page);

    await choosePlenty();
    const form = page.getByRole('form', { name: 'Hold it' });
    await form.getByLabel('For whom').fill('Leocadia Brandt');
    await form.getByLabel('Until the day').fill('2020-01-01');
    await form.getByRole('button', { name: 'Hold it' }).click();
    await form.getByRole('alert').waitFor();
    expect(await form.getByLabel('For whom').inputValue()).toBe('Leocadia Brandt');
    const year = new Date().getUTCFullYear() + 1;
    await form.getByLabel('Until the day').fill(`${year}-01-05`);
    await form.getByRole('button', { name: 'Hold it' }).click();
    await page.waitForURL(/\/holds\/\d+$/);
    await noAxeViolations(page);
    const held = page.url();

    await page.goto('/holds');
    await page.getByText('Leocadia Brandt').first().waitFor();
    await page.goto(held);
    await page.getByRole('button', { name: 'Put it on a slip' }).click();
    await page.waitForURL(/\/counter\?slip=/);

    await page.goto(held);
    await page.getByRole('button', { name: 'Let it go' }).click();
    await page.getByText('It ended').waitFor();
  }, 60_000);
});
