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

async function takeOn(page: Page, name: string, signInName: string): Promise<void> {
  await page.goto('/staff/add');
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Name to sign in with').fill(signInName);
  await page.getByLabel('First password').fill('rain on the inlet');
  await page.getByRole('checkbox', { name: /^Maker/ }).check();
  await page.getByRole('button', { name: 'Take them on' }).click();
  await page.getByText(`${name} can sign in as “${signInName}” from now on.`).waitFor();
}

async function arrive(signInName: string, password: string): Promise<Page> {
  const page = await openPage(browser);
  await page.goto('/sign-in');
  await page.getByLabel('Name', { exact: true }).fill(signInName);
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => url.pathname === '/');
  return page;
}

async function openPerson(page: Page, name: string): Promise<void> {
  await page.goto('/staff');
  await page.getByRole('main').getByRole('link', { name }).click();
  await page.getByRole('heading', { name, level: 1 }).waitFor();
}

test('the owner takes someone on, who comes in, and whose access ends at once', async () => {
  const owner = await openPage(browser);
  await signInAs(owner, 'owner');
  await takeOn(owner, `Sanna Brackwater ${mark}`, `sanna-${mark}`);
  const theirs = await arrive(`sanna-${mark}`, 'rain on the inlet');
  await theirs.goto('/studio');
  expect(new URL(theirs.url()).pathname).toBe('/studio');

  const form = await theirs.context().newPage();
  await form.goto('/staff/you');
  await form.getByLabel('The password you have now').fill('rain on the inlet');
  await form.getByLabel('The new one').fill('otters in the wake');

  await openPerson(owner, `Sanna Brackwater ${mark}`);
  await noAxeViolations(owner);
  await owner.getByRole('button', { name: 'Stop their access' }).click();
  await owner.getByText('No longer works here.').waitFor();
  await form.getByRole('button', { name: 'Change it' }).click();
  await form.getByText('You were signed out in the meantime.').waitFor();
  await theirs.goto('/studio');
  expect(new URL(theirs.url()).pathname).toBe('/sign-in');
});

test('the owner signs one browser out, and the other stays', async () => {
  const owner = await openPage(browser);
  await signInAs(owner, 'owner');
  await takeOn(owner, `Ottoline Reef ${mark}`, `ottoline-${mark}`);
  const first = await arrive(`ottoline-${mark}`, 'rain on the inlet');
  const second = await arrive(`ottoline-${mark}`, 'rain on the inlet');
  await openPerson(owner, `Ottoline Reef ${mark}`);
  // The list has the latest used first.
  await owner.getByRole('button', { name: 'Sign out', exact: true }).first().click();
  await owner.waitForFunction(
    () => document.querySelectorAll('form[aria-label="Sign this browser out"]').length === 1,
  );
  await Promise.all([first.goto('/studio'), second.goto('/studio')]);
  const paths = [first, second].map((page) => new URL(page.url()).pathname);
  expect(paths.toSorted()).toEqual(['/sign-in', '/studio']);
});

test('a taken name is told beside its field, and what was typed stays', async () => {
  const owner = await openPage(browser);
  await signInAs(owner, 'owner');
  await owner.goto('/staff/add');
  await owner.getByLabel('Name', { exact: true }).fill('Another Tomas');
  await owner.getByLabel('Name to sign in with').fill('tomas');
  await owner.getByLabel('First password').fill('rain on the inlet');
  await owner.getByRole('checkbox', { name: /^Books/ }).check();
  await owner.getByRole('button', { name: 'Take them on' }).click();
  const field = owner.getByLabel('Name to sign in with');
  await owner.getByText('Somebody here signs in as “tomas” already').first().waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  expect(await owner.getByLabel('Name', { exact: true }).inputValue()).toBe('Another Tomas');
  expect(await owner.getByRole('checkbox', { name: /^Books/ }).isChecked()).toBe(true);
});

test('the last owner is told to make someone else an owner first', async () => {
  const owner = await openPage(browser);
  await signInAs(owner, 'owner');
  await openPerson(owner, 'Maren Tidewell');
  await owner.getByRole('button', { name: 'Stop their access' }).click();
  await owner.getByText('Maren Tidewell is the last owner who can sign in').waitFor();
});

test.each(['gallery', 'maker', 'books'])('the staff room is not the room of %s', async (role) => {
  const page = await openPage(browser);
  await signInAs(page, role);
  for (const path of ['/staff', '/staff/add', '/settings']) {
    const answer = await page.goto(path);
    expect(answer?.status()).toBe(403);
    await page.getByRole('heading', { name: 'This is not your room' }).waitFor();
  }
  await noAxeViolations(page);
});

test.each([
  ['/staff', { width: 1440, height: 900 }],
  ['/staff/add', { width: 390, height: 844 }],
  ['/staff/you', { width: 1440, height: 900 }],
  ['/staff/you', { width: 390, height: 844 }],
  ['/settings', { width: 1440, height: 900 }],
  ['/settings', { width: 390, height: 844 }],
])('everyone can use %s, at %o', async (path, size) => {
  const page = await openPage(browser, size);
  await signInAs(page, 'owner');
  await page.goto(path);
  await noAxeViolations(page);
  const overflow = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overflow).toBeLessThanOrEqual(0);
});

test('one changes one’s own password and comes in by it', async () => {
  const owner = await openPage(browser);
  await signInAs(owner, 'owner');
  await takeOn(owner, `Perrin Tideline ${mark}`, `perrin-${mark}`);
  const theirs = await arrive(`perrin-${mark}`, 'rain on the inlet');
  await theirs.goto('/staff/you');
  await theirs.getByLabel('The password you have now').fill('rain on the inlet');
  await theirs.getByLabel('The new one').fill('otters in the wake');
  await theirs.getByRole('button', { name: 'Change it' }).click();
  await theirs.getByText('Your new password holds from now on.').waitFor();
  await theirs.goto('/studio');
  expect(new URL(theirs.url()).pathname).toBe('/studio');
  await arrive(`perrin-${mark}`, 'otters in the wake');
});
