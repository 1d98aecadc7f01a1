import { randomUUID } from 'node:crypto';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const mark = randomUUID().slice(0, 4);
const title = {
  touch: `Rain bowls ${mark}, one touch`,
  few: `Rain bowls ${mark}, a few`,
  two: `Rain bowls ${mark}, two at once`,
  plain: `Rain bowls ${mark}, no scripts`,
};
const tablet = { width: 820, height: 1180 };
const phone = { width: 390, height: 844 };

/** A job of our own on the bench, opened as a maker does; its page is open afterwards. */
async function beginBowls(page: Page, called: string): Promise<void> {
  await page.goto('/studio/new');
  await page.getByLabel('What is made').fill(called);
  await page.getByLabel('thrown').check();
  await page.getByLabel('How many are to come out good').fill('6');
  await page.getByLabel('How many to begin').fill('6');
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await page.getByRole('heading', { name: called, level: 1 }).waitFor();
}

/** The places of a job on the bench: one article for each step where pieces of it stand. */
function onBench(page: Page, called: string): Locator {
  return page.getByRole('article').filter({ hasText: called });
}

async function told(page: Page): Promise<string> {
  return page.getByRole('complementary', { name: 'What was just moved' }).innerText();
}

test('a maker moves a job on with one touch, and takes it back with the next', async () => {
  const page = await openPage(browser, tablet);
  await signInAs(page, 'maker');
  await beginBowls(page, title.touch);
  await page.goto('/studio');
  const move = onBench(page, title.touch).getByRole('button', { name: /^Move / });
  expect(await move.innerText()).toBe('Move 6 on to throwing');
  expect((await move.boundingBox())?.height).toBeGreaterThanOrEqual(64);
  await move.click();
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  expect(await told(page)).toContain('6 pieces moved to throwing.');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('6 pieces are not begun again.').waitFor();
  expect(await move.innerText()).toBe('Move 6 on to throwing');
  await noAxeViolations(page);
});

test('some pieces go on and the job’s page tells who moved what when', async () => {
  const page = await openPage(browser, phone);
  await signInAs(page, 'maker');
  await beginBowls(page, title.few);
  await page.getByRole('button', { name: 'Move on to throwing' }).click();
  await page.getByText('6 pieces at throwing').waitFor();
  await page.getByLabel('How many', { exact: true }).fill('7');
  await page.getByRole('button', { name: 'Move on to trimming' }).click();
  await page.getByText('Only 6 of the 7 stand at throwing.').waitFor();
  await page.getByLabel('How many', { exact: true }).fill('2');
  await page.getByRole('button', { name: 'Move on to trimming' }).click();
  await page.getByText('2 pieces at trimming').waitFor();
  await page.getByText('4 pieces at throwing').waitFor();
  const history = page.getByRole('region').or(page.locator('section')).filter({
    hasText: 'Who moved what when',
  });
  expect(await history.last().innerText()).toContain('Oriel Sandray');
  await noAxeViolations(page);
  const wide = await page.evaluate('document.documentElement.scrollWidth - window.innerWidth');
  expect(wide).toBe(0);
});

test('who comes second to the same pieces is told so in words', async () => {
  const [first, second] = [await openPage(browser, tablet), await openPage(browser, tablet)];
  await signInAs(first, 'maker');
  await signInAs(second, 'owner');
  await beginBowls(first, title.two);
  await first.goto('/studio');
  await second.goto('/studio');
  await onBench(first, title.two).getByRole('button').click();
  await first.getByText('6 pieces moved to throwing.').waitFor();
  await onBench(second, title.two).getByRole('button').click();
  await second.getByText('No piece is left to begin. Somebody moved them before you.').waitFor();
});

test('moving on works where scripts do not run', async () => {
  const page = await openPage(browser, tablet);
  await signInAs(page, 'maker');
  await beginBowls(page, title.plain);
  const context = await browser.newContext({
    baseURL: new URL(page.url()).origin,
    javaScriptEnabled: false,
    storageState: await page.context().storageState(),
  });
  const plain = await context.newPage();
  await plain.goto('/studio');
  await onBench(plain, title.plain).getByRole('button').click();
  await plain.getByText('6 pieces moved to throwing.').waitFor();
  await plain.getByRole('button', { name: 'Undo' }).click();
  await plain.getByText('6 pieces are not begun again.').waitFor();
});

test('the gallery looks and moves nothing; whoever keeps the books has no studio', async () => {
  const gallery = await openPage(browser);
  await signInAs(gallery, 'gallery');
  await gallery.goto('/studio');
  await gallery.getByRole('heading', { name: 'Studio', level: 1 }).waitFor();
  expect(await gallery.getByRole('button', { name: /^Move / }).count()).toBe(0);
  expect(await gallery.getByRole('link', { name: 'Begin something new' }).count()).toBe(0);
  expect((await gallery.goto('/studio/new'))?.status()).toBe(403);
  const books = await openPage(browser);
  await signInAs(books, 'books');
  expect(await books.getByRole('link', { name: 'Studio', exact: true }).count()).toBe(0);
  expect((await books.goto('/studio'))?.status()).toBe(403);
  expect((await books.goto('/studio/1'))?.status()).toBe(403);
});

test('the first page of the day says whose turn it is, to each in their own way', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'maker');
  await page.goto('/');
  const first = await page.getByRole('heading', { level: 2 }).first().innerText();
  expect(first).toBe('The studio’s turn');
  expect(await page.getByText('sold yet today').count()).toBe(0);
  await noAxeViolations(page);
  const owner = await openPage(browser, phone);
  await signInAs(owner, 'owner');
  await owner.goto('/');
  expect(await owner.getByRole('heading', { level: 2 }).allInnerTexts()).toContain(
    'Waiting for the collector',
  );
  await noAxeViolations(owner);
});
