import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

// A collector's page while somebody else acts at the same time: what was typed is never lost, and
// nothing is written that they were not allowed to write.

let browser: Browser;
let owner: Page;
let collector: Page;
let sheet: string;

beforeAll(async () => {
  browser = await openBrowser();
  owner = await openPage(browser);
  collector = await openPage(browser, { width: 390, height: 844 });
  await signInAs(owner, 'owner');
  await owner.goto('/commissions/new');
  await owner.getByLabel('A title to find it by').fill('Kelp for the landing');
  await owner.getByLabel('Their name').fill('Anneke Halvard');
  await owner.getByLabel('Height').first().fill('24');
  await owner.getByLabel('Width').first().fill('24');
  await owner.getByRole('button', { name: 'Write the request down' }).click();
  await owner.waitForURL(/\/commissions\/\d+\?done=logged/);
  sheet = new URL(owner.url()).pathname;
});

afterAll(() => browser.close());

async function sendProposal() {
  await owner.goto(`${sheet}/proposal/new`);
  await owner.getByRole('button', { name: 'Keep this proposal' }).click();
  await owner.waitForURL(/\/proposal$/);
  await owner.getByRole('button', { name: 'It goes out now' }).click();
  await owner.waitForURL(/done=proposal-sent/);
}

async function makeAddress(): Promise<string> {
  await owner.goto(`${sheet}/their-page`);
  await owner.getByRole('button', { name: 'Make the address' }).click();
  await owner
    .getByText(/\/c\/[\w-]{43}/)
    .first()
    .waitFor();
  return /\/c\/[\w-]{43}/.exec(await owner.content())?.[0] ?? '';
}

async function withdrawAll() {
  await owner.goto(`${sheet}/their-page`);
  await owner.getByRole('button', { name: /^Withdraw/ }).click();
  await owner
    .getByText(/withdrawn/)
    .first()
    .waitFor();
}

test('an answer without a choice is marked, and what was typed is kept', async () => {
  await sendProposal();
  await collector.goto(`${await makeAddress()}/proposal`);
  await collector.getByLabel('Anything you want to say').fill('We love the middle part.');
  await collector.getByRole('button', { name: 'Send my answer' }).click();
  await collector.getByText('Not yet: please look again at what is marked below.').waitFor();
  expect(await collector.getByLabel('Anything you want to say').inputValue()).toBe(
    'We love the middle part.',
  );
  await noAxeViolations(collector);
});

test('a new version that went out meanwhile is told, and nothing is accepted', async () => {
  await sendProposal();
  await collector.getByText('Yes, I accept this proposal').click();
  await collector.getByRole('button', { name: 'Send my answer' }).click();
  await collector.locator('main').getByRole('alert').waitFor();
  await owner.goto(sheet);
  expect(await owner.getByRole('region', { name: 'What is next' }).innerText()).toContain(
    'answer proposal 2',
  );
});

test('an address withdrawn while the form was open lets nothing through, and then opens no page', async () => {
  await collector.reload();
  await collector.getByText('Yes, I accept this proposal').click();
  await collector.getByLabel('Anything you want to say').fill('Yes, with joy.');
  await withdrawAll();
  await collector.getByRole('button', { name: 'Send my answer' }).click();
  await collector.getByText('This address no longer opens the page.').waitFor();
  expect(await collector.getByLabel('Anything you want to say').inputValue()).toBe(
    'Yes, with joy.',
  );
  const answer = await collector.reload();
  expect(answer?.status()).toBe(404);
  await noAxeViolations(collector);
  expect(await collector.getByText('Kelp for the landing').count()).toBe(0);
});

test('without scripts the proposal is read and accepted all the same', async () => {
  const plain = await browser.newContext({
    javaScriptEnabled: false,
    baseURL: new URL(owner.url()).origin,
  });
  const page = await plain.newPage();
  await page.goto(`${await makeAddress()}/proposal`);
  await page.getByText('Yes, I accept this proposal').click();
  await page.getByRole('button', { name: 'Send my answer' }).click();
  await page.getByText('Yes to proposal 2').waitFor();
  await plain.close();
});
