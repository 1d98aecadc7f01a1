import { randomUUID } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;
/** So that these stories can be told again in the same gallery. */
const mark = randomUUID().slice(0, 6);

beforeAll(async () => {
  browser = await openBrowser();
});

afterEach(async () => {
  await Promise.all(browser.contexts().map((context) => context.close()));
});

afterAll(() => browser.close());

async function keepRate(page: Page, authority: string, percent: string): Promise<void> {
  const form = page.getByRole('form', { name: 'A rate from a day on' });
  await form.getByLabel('Authority').fill(authority);
  await form.getByLabel('Rate', { exact: true }).fill(percent);
  await form.getByRole('button', { name: 'Keep this rate' }).click();
}

test('the owner keeps a place in another state, its rate, what it taxes, and its threshold', async () => {
  const owner = await openPage(browser, { width: 1280, height: 800 });
  await signInAs(owner, 'owner');
  await owner.goto('/settings/tax');
  await owner.getByLabel('Place', { exact: true }).fill(`Otter Ferry ${mark}`);
  await owner.getByLabel('State', { exact: true }).fill(`Marrow ${mark}`);
  await owner.getByRole('button', { name: 'Add this place' }).click();
  await owner.getByText(`The gallery is not registered in Marrow ${mark}`).waitFor();

  await keepRate(owner, 'Ferry District', '-4');
  await owner.getByText('Write a rate from 0 to 100').waitFor();
  expect(await owner.getByLabel('Authority').inputValue()).toBe('Ferry District');
  await keepRate(owner, 'Ferry District', '4.125');
  await owner.getByText(/^Ferry District: 4.125 % from /).waitFor();
  await owner.getByText('Today they come to 4.125 % together.').waitFor();

  await owner.getByText('Not taxed when it is a line of its own', { exact: true }).click();
  await owner.getByRole('button', { name: 'Keep this', exact: true }).click();
  await owner.getByText(`Kept for Marrow ${mark}: delivery, from`).waitFor();

  await owner.goto('/settings/tax/states');
  const state = owner.locator('section', { hasText: `Marrow ${mark}` }).first();
  await state.getByText('Change this').click();
  await state.getByLabel('Must register from this much').fill('100,000');
  await state.getByRole('button', { name: 'Keep this state' }).click();
  await state.getByText('$100,000.00 in this calendar year or the last').waitFor();
  await noAxeViolations(owner);
});

test('what holds at the counter is kept, and a slip of the pen is told at its field', async () => {
  const owner = await openPage(browser, { width: 390, height: 844 });
  await signInAs(owner, 'owner');
  await owner.goto('/settings/counter');
  await noAxeViolations(owner);
  const hours = owner.getByLabel('Hours that a piece is held without money');
  const before = await hours.inputValue();
  await hours.fill('0');
  await owner.getByRole('button', { name: 'Keep this' }).click();
  await owner.getByText('Write a whole number of hours from 1 to 2160.').waitFor();
  await hours.fill(before);
  await owner.getByRole('button', { name: 'Keep this' }).click();
  await owner.getByText('It holds from the next slip on.').waitFor();
});

test('the gallery sees what is charged where, and has nothing to change there', async () => {
  const clerk = await openPage(browser, { width: 390, height: 844 });
  await signInAs(clerk, 'gallery');
  for (const path of ['/settings/tax', '/settings/tax/states']) {
    expect((await clerk.goto(path))?.status()).toBe(200);
    expect(await clerk.getByRole('main').getByRole('button').count()).toBe(0);
    await noAxeViolations(clerk);
  }
  expect((await clerk.goto('/settings/counter'))?.status()).toBe(403);
});
