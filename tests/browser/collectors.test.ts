import { randomUUID } from 'node:crypto';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;
/** So that this story can be told again in the same gallery. */
const mark = randomUUID().slice(0, 6);

beforeAll(async () => {
  browser = await openBrowser();
});

afterAll(() => browser.close());

test('a designer’s certificate turns the words green, and the owner says what they get', async () => {
  const clerk = await openPage(browser, { width: 1280, height: 800 });
  await signInAs(clerk, 'gallery');
  await clerk.goto('/collectors/new');
  await clerk.getByLabel('Name', { exact: true }).fill(`Alder & Wick ${mark}`);
  await clerk.getByText('a designer', { exact: true }).click();
  await clerk.getByRole('button', { name: 'Add to the address book' }).click();
  await clerk.getByRole('link', { name: 'Certificates and terms' }).click();
  await clerk.waitForURL((url) => url.pathname.endsWith('/trade'));
  await clerk.getByText('No resale certificate is on file. Tax is charged.').waitFor();
  const path = new URL(clerk.url()).pathname;

  await clerk.getByLabel('Number of the permit').fill('4111 1111 1111 1111');
  await clerk.getByRole('button', { name: 'Put it on file' }).click();
  await clerk.getByText('That looks like the number of a card, which is never kept.').waitFor();
  await clerk.getByLabel('Number of the permit').fill(`AW-${mark}`);
  await clerk.getByRole('button', { name: 'Put it on file' }).click();
  await clerk.getByText('On file, good for Alderland, does not run out.').waitFor();
  expect(await clerk.getByText('Agree on something').count()).toBe(0);
  await noAxeViolations(clerk);

  const owner = await openPage(browser, { width: 390, height: 844 });
  await signInAs(owner, 'owner');
  await owner.goto(path);
  await owner.getByLabel('How much').fill('15');
  await owner.getByRole('button', { name: 'Keep this' }).click();
  await owner.getByText('They get a trade discount of 15 in 100').waitFor();
  await noAxeViolations(owner);

  await clerk.getByRole('button', { name: 'Withdraw' }).click();
  await clerk.getByText('was withdrawn. Tax is charged.').waitFor();
});
